package org.tallywright.measuring;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * The air of a room.
 *
 * @param celsius degrees, to four places
 * @param humidity relative, in percent
 */
public record Air(BigDecimal celsius, BigDecimal humidity) {
    /** Hand instruments, plus or minus about 19 times in 20: common practice, no source. */
    public static final double THERMOMETER_GOOD_TO_FAHRENHEIT = 2;

    public static final double HYGROMETER_GOOD_TO_PERCENT = 3;

    private static final BigDecimal FREEZING = BigDecimal.valueOf(32);

    public static Air ofFahrenheit(BigDecimal fahrenheit, BigDecimal humidity) {
        BigDecimal celsius = fahrenheit
                .subtract(FREEZING)
                .multiply(BigDecimal.valueOf(5))
                .divide(BigDecimal.valueOf(9), 4, RoundingMode.HALF_UP);
        return new Air(celsius, humidity);
    }

    /** To four places less what the division took: a tenth typed comes back as typed. */
    public BigDecimal fahrenheit() {
        return celsius.multiply(new BigDecimal("1.8")).add(FREEZING);
    }

    /** The moisture of wood that has settled in this air, in percent; empty where the equation was not checked. */
    public Optional<Reckoned> moisture() {
        double[] readings = {fahrenheit().doubleValue(), humidity.doubleValue()};
        if (!EquilibriumMoisture.isKnown(readings[0], readings[1])) {
            return Optional.empty();
        }
        double[] standard = {THERMOMETER_GOOD_TO_FAHRENHEIT / 2, HYGROMETER_GOOD_TO_PERCENT / 2};
        return Optional.of(Propagation.through(r -> EquilibriumMoisture.percent(r[0], r[1]), readings, standard));
    }
}
