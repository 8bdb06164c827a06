package org.tallywright.calibration;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.tallywright.calibration.engine.Draws;
import org.tallywright.calibration.engine.MaterialYields;
import org.tallywright.calibration.engine.YieldForecast;
import org.tallywright.calibration.engine.YieldObservation;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Yield;

/**
 * What yield to expect of a material next time, learnt from finished jobs and shrunk to the starting yield while there
 * are few. Learnt anew from the rows given; nothing is kept.
 */
public final class YieldBook {
    private final MaterialYields yields;

    private YieldBook(MaterialYields yields) {
        this.yields = yields;
    }

    public static YieldBook learn(List<Seen> past) {
        return new YieldBook(
                MaterialYields.learn(past.stream().map(Seen::observation).toList()));
    }

    /** A material never seen answers with its starting yield and a wide range. */
    public Expected of(UUID material, Yield starting) {
        YieldForecast forecast =
                yields.forecast(material.toString(), "", starting.amount().doubleValue());
        return new Expected(
                share(forecast.yield().median()),
                share(forecast.yield().low80()),
                share(forecast.yield().high80()),
                forecast.observations(),
                Percent.of(Math.round(forecast.startingShare() * 100)));
    }

    /** The same as draws, for money. */
    Draws draws(UUID material, double starting) {
        return yields.draws(material.toString(), "", starting);
    }

    /** Finished jobs behind a material. */
    int jobs(UUID material) {
        return yields.observationsOf(material.toString());
    }

    private static BigDecimal share(double yield) {
        return BigDecimal.valueOf(Math.round(yield * 100), 2);
    }

    /**
     * One material on one finished job.
     *
     * @param charged what the job consumed of it, in its own unit, above 0
     * @param net what is in the finished work, same unit
     */
    public record Seen(UUID material, UUID job, BigDecimal charged, BigDecimal net, BigDecimal starting, LocalDate on) {
        private YieldObservation observation() {
            return new YieldObservation(
                    material.toString(),
                    "",
                    job.toString(),
                    charged.doubleValue(),
                    net.doubleValue(),
                    starting.doubleValue(),
                    on);
        }
    }

    /**
     * The likely yield and the range that holds four times in five, as a share of 1.
     *
     * @param jobs finished jobs behind it
     * @param stillStarting how much of it is still the starting yield
     */
    public record Expected(BigDecimal likely, BigDecimal low, BigDecimal high, int jobs, Percent stillStarting) {}
}
