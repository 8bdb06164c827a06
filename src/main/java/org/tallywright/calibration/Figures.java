package org.tallywright.calibration;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The figures of a calibration, kept with it.
 *
 * @param engine which engine judged the past ({@link Fitted#ENGINE}); null in older ones
 * @param level how far a common task runs over its starting rate, on the scale of ln: 0.1 is about 10 %
 * @param slope change of it per unit of ln(hours); negative: small tasks run over more
 * @param offLine mean share of hours on no line, over hours on lines, by hour class
 * @param offLineShare mean share of all of them, the starting share included
 * @param offLineStarting how much of that is still the starting share, 0 to 1
 * @param noted tasks left out or cut, with the reason in words
 */
record Figures(
        @Nullable Integer engine,
        int tasks,
        int jobs,
        double level,
        double slope,
        double residualSd,
        double kindSd,
        double workerSd,
        double jobSd,
        List<KindRate> kinds,
        Map<String, Double> offLine,
        double offLineShare,
        double offLineStarting,
        List<Noted> noted,
        List<Copied> copied) {

    /**
     * One task kind, hours per unit.
     *
     * @param starting the starting rate it was compared with
     * @param size person-hours at the starting rate for which the range is given: the middle one of the shop's own tasks
     * @param tasks finished tasks of the kind
     * @param startingShare how much of it is still the starting rate, 0 to 1
     */
    record KindRate(
            UUID kind,
            double starting,
            double size,
            int tasks,
            int jobs,
            double low,
            double median,
            double high,
            double startingShare) {}

    record Noted(String task, String job, String what) {}

    /** How often a person's hours were the estimate to the minute; suspicious: more than a third of at least six. */
    record Copied(UUID person, int tasks, int equal, boolean suspicious) {}
}
