package org.tallywright.calibration;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.calibration.engine.CostModel;
import org.tallywright.calibration.engine.Draws;

/** Forecasts what a job costs the shop, hours and material together: as many draws as its hours have. */
@Service
public class CostForecaster {
    private final Forecaster forecaster;
    private final CostModel model = new CostModel(Fitted.SETTINGS.totals());

    CostForecaster(Forecaster forecaster) {
        this.forecaster = forecaster;
    }

    /**
     * What an hour costs.
     *
     * @param rate planned, burdened
     * @param crew who it is made of; empty where it was given by hand
     */
    public record Hour(BigDecimal rate, List<Worker> crew, BigDecimal overhead) {}

    /** @param share in percent */
    public record Worker(UUID person, BigDecimal share, BigDecimal rate) {}

    /**
     * One line of material, quantities in its unit.
     *
     * @param yield of the line
     * @param starting the catalogue's
     * @param step smallest quantity that can be bought
     */
    public record Need(
            UUID material,
            BigDecimal net,
            BigDecimal yield,
            BigDecimal starting,
            BigDecimal step,
            BigDecimal price,
            BigDecimal freight) {}

    /**
     * @param cents what the job costs in each draw, in hundredths, ascending
     * @param materialCents the mean of the materials alone
     * @param yields how many of the materials have a finished job behind their yield
     * @param priceSteps from one purchase to the next, of these materials
     * @param crewJobs finished jobs behind who does the hours; 0 also where it makes no difference
     * @param crewMatters whether people of different cost share the hours
     */
    public record Cost(
            long[] cents,
            long materialCents,
            int materials,
            int yields,
            int priceSteps,
            int crewJobs,
            boolean crewMatters,
            long seed) {}

    /** @param tasks may be empty: then it is all material and other costs */
    @Transactional(readOnly = true)
    public Cost of(Collection<UUID> tasks, Hour hour, List<Need> needs, BigDecimal other, CostPast past) {
        CostModel.Cost drawn = model.draws(
                forecaster.draws(tasks),
                new CostModel.Hour(
                        hour.rate().doubleValue(),
                        hour.crew().stream().map(CostForecaster::worker).toList(),
                        past.crewSpread(),
                        hour.overhead().doubleValue()),
                lines(needs, past),
                other.doubleValue());
        Set<UUID> materials = new HashSet<>();
        needs.forEach(need -> materials.add(need.material()));
        boolean mixed = hour.crew().stream().map(Worker::rate).distinct().count() > 1;
        return new Cost(
                Arrays.stream(drawn.total().values())
                        .mapToLong(CostForecaster::cents)
                        .sorted()
                        .toArray(),
                cents(drawn.materials().mean()),
                materials.size(),
                (int) materials.stream().filter(m -> past.jobs(m) > 0).count(),
                materials.stream().mapToInt(past::priceSteps).sum(),
                mixed ? past.crewJobs() : 0,
                mixed,
                Fitted.SETTINGS.totals().seed());
    }

    private static CostModel.Worker worker(Worker worker) {
        return new CostModel.Worker(
                worker.person().toString(),
                worker.share().doubleValue() / 100,
                worker.rate().doubleValue());
    }

    /** A material that is on many lines at one yield is drawn once. */
    private static List<CostModel.Material> lines(List<Need> needs, CostPast past) {
        Map<List<Object>, Draws> known = new HashMap<>();
        return needs.stream()
                .map(need -> new CostModel.Material(
                        need.material().toString(),
                        need.net().doubleValue(),
                        known.computeIfAbsent(
                                List.of(need.material(), need.yield()),
                                key -> past.yields(
                                        need.material(),
                                        need.starting().doubleValue(),
                                        need.yield().doubleValue())),
                        need.step().doubleValue(),
                        need.price().doubleValue(),
                        past.priceScatter(need.material()),
                        need.freight().doubleValue()))
                .toList();
    }

    private static long cents(double amount) {
        return Math.round(100 * amount);
    }
}
