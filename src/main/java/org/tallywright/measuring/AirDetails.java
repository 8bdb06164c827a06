package org.tallywright.measuring;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;

/** The air of a room on a day. Temperature to four places of a degree Celsius, humidity to a tenth of a percent. */
public record AirDetails(String place, LocalDate takenOn, BigDecimal celsius, BigDecimal humidity, String note) {
    public AirDetails {
        celsius = celsius.setScale(4, RoundingMode.HALF_UP);
        humidity = humidity.setScale(1, RoundingMode.HALF_UP);
    }

    public Air air() {
        return new Air(celsius, humidity);
    }
}
