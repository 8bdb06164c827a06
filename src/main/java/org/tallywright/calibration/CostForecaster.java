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
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
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
     * @param laidOut what a layout gives instead of net / yield; null for none
     */
    public record Need(
            UUID material,
            BigDecimal net,
            BigDecimal yield,
            BigDecimal starting,
            BigDecimal step,
            BigDecimal price,
            BigDecimal freight,
            @Nullable LaidOut laidOut) {}

    /**
     * @param likely bought half the time at most, above nothing
     * @param safe bought four times in five at most, no less
     * @param covered of the need, before anything is bought
     */
    public record LaidOut(BigDecimal likely, BigDecimal safe, BigDecimal covered) {}

    /**
     * @param cents what the job costs in each draw, in hundredths, ascending
     * @param materialCents the mean of the materials alone
     * @param materials different ones that net / yield gives
     * @param yields how many of them have a finished job behind their yield
     * @param laidOut lines that a layout gives
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
            int laidOut,
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
        Set<UUID> byYield = needs.stream()
                .filter(need -> need.laidOut() == null)
                .map(Need::material)
                .collect(Collectors.toSet());
        boolean mixed = hour.crew().stream().map(Worker::rate).distinct().count() > 1;
        return new Cost(
                Arrays.stream(drawn.total().values())
                        .mapToLong(CostForecaster::cents)
                        .sorted()
                        .toArray(),
                cents(drawn.materials().mean()),
                byYield.size(),
                (int) byYield.stream().filter(m -> past.jobs(m) > 0).count(),
                materials.stream().mapToInt(past::priceSteps).sum(),
                (int) needs.stream().filter(need -> need.laidOut() != null).count(),
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
                        purchase(need, past, known),
                        need.price().doubleValue(),
                        past.priceScatter(need.material()),
                        need.freight().doubleValue()))
                .toList();
    }

    private static CostModel.Purchase purchase(Need need, CostPast past, Map<List<Object>, Draws> known) {
        LaidOut laidOut = need.laidOut();
        if (laidOut != null) {
            return new CostModel.LaidOut(
                    laidOut.likely().doubleValue(),
                    laidOut.safe().doubleValue(),
                    laidOut.covered().doubleValue());
        }
        return new CostModel.ByYield(
                need.net().doubleValue(),
                known.computeIfAbsent(
                        List.of(need.material(), need.yield()),
                        key -> past.yields(
                                need.material(),
                                need.starting().doubleValue(),
                                need.yield().doubleValue())),
                need.step().doubleValue());
    }

    private static long cents(double amount) {
        return Math.round(100 * amount);
    }
}
