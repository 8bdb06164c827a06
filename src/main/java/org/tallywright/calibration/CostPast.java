package org.tallywright.calibration;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.tallywright.calibration.engine.CrewScatter;
import org.tallywright.calibration.engine.Draws;
import org.tallywright.calibration.engine.PriceScatter;

/** What finished jobs and paid receipts say of the money that hours and material may cost. Nothing is kept of it. */
public final class CostPast {
    private final YieldBook yields;
    private final PriceScatter prices;
    private final CrewScatter crew;

    private CostPast(YieldBook yields, PriceScatter prices, CrewScatter crew) {
        this.yields = yields;
        this.prices = prices;
        this.crew = crew;
    }

    /**
     * Steps between consecutive purchases of one material.
     *
     * @param steps how many
     * @param squares sum of the squared ln(unit price / the one before)
     */
    public record PriceSteps(UUID material, int steps, double squares) {}

    /**
     * One person of a finished job.
     *
     * @param planned share of the hours the job was priced with, in percent
     * @param minutes really logged
     */
    public record CrewHours(UUID job, UUID person, BigDecimal planned, long minutes) {}

    public static CostPast learn(List<YieldBook.Seen> yields, List<PriceSteps> prices, List<CrewHours> crews) {
        return new CostPast(
                YieldBook.learn(yields),
                PriceScatter.learn(prices.stream()
                        .map(step -> new PriceScatter.Steps(step.material().toString(), step.steps(), step.squares()))
                        .toList()),
                CrewShares.learn(crews));
    }

    /** Of one material: with no finished job of its own, the yield of the line in the middle of the starting range. */
    Draws yields(UUID material, double starting, double ofLine) {
        return yields.draws(material, yields.jobs(material) == 0 ? ofLine : starting);
    }

    int jobs(UUID material) {
        return yields.jobs(material);
    }

    double priceScatter(UUID material) {
        return prices.of(material.toString());
    }

    int priceSteps(UUID material) {
        return prices.steps(material.toString());
    }

    double crewSpread() {
        return crew.spread();
    }

    int crewJobs() {
        return crew.jobs();
    }
}
