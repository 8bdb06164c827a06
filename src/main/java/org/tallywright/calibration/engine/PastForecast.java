package org.tallywright.calibration.engine;

/**
 * A forecast that was stored when it was made, and what came of it.
 *
 * @param stage how far the job was
 * @param probability where the real hours fell in the forecast, 0 (below all of it) to 1
 */
public record PastForecast(Stage stage, double probability) {

    /** How far a job was when it was forecast, in quarters; the order is that of the quarters. */
    public enum Stage {
        AT_BID,
        QUARTER_DONE,
        HALF_DONE,
        THREE_QUARTERS_DONE;

        /** The stage nearest to a share of the estimated hours done. */
        public static Stage of(double shareDone) {
            if (shareDone <= 0) {
                return AT_BID;
            }
            if (shareDone < 0.375) {
                return QUARTER_DONE;
            }
            return shareDone < 0.625 ? HALF_DONE : THREE_QUARTERS_DONE;
        }
    }

    /** From the stored forecast of all hours at bid time. */
    public static PastForecast atBid(Distribution forecast, double actualHours) {
        return new PastForecast(Stage.AT_BID, forecast.probabilityBelow(actualHours));
    }

    /** From the stored forecast of the remaining hours of a running job. */
    public static PastForecast running(double shareDone, Distribution remaining, double hoursStillTaken) {
        return new PastForecast(Stage.of(shareDone), remaining.probabilityBelow(hoursStillTaken));
    }
}
