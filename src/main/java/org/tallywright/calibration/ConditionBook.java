package org.tallywright.calibration;

import java.util.Arrays;
import java.util.List;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.calibration.engine.CalibrationSettings;
import org.tallywright.calibration.engine.ConditionEffect;

/** What site conditions do to the hours, as far as the shop's own finished work says. */
@Service
public class ConditionBook {
    private final Shelf shelf;

    ConditionBook(Shelf shelf) {
        this.shelf = shelf;
    }

    /**
     * A site condition.
     *
     * @param counts whether forecasts know it; if not, there is not enough history on one side of it
     * @param low lower end of what it makes of the hours, four times in five: 0.97 is 3 % less
     * @param missing what is missing for it to count, in finished tasks and jobs with or without it; empty where it counts
     */
    public record Condition(
            SiteCondition condition,
            boolean counts,
            int tasks,
            int jobs,
            double low,
            double typical,
            double high,
            Missing missing) {}

    /** How many more finished tasks and jobs it takes on each side. */
    public record Missing(int tasks, int jobs, int otherTasks, int otherJobs) {}

    /** What each site condition does to the hours, or why that cannot be said yet. */
    @Transactional(readOnly = true)
    public List<Condition> conditions() {
        Fitted fitted = shelf.fitted();
        return Arrays.stream(SiteCondition.values())
                .map(condition -> condition(condition, fitted.model().conditionEffect(condition.key())))
                .toList();
    }

    private static Condition condition(SiteCondition condition, ConditionEffect said) {
        int tasks = Fitted.SETTINGS.base().conditionTasks();
        return new Condition(
                condition,
                said.counts(),
                said.tasks(),
                said.jobs(),
                said.low(),
                said.median(),
                said.high(),
                new Missing(
                        Math.max(0, tasks - said.tasks()),
                        Math.max(0, CalibrationSettings.CONDITION_JOBS - said.jobs()),
                        Math.max(0, tasks - said.otherTasks()),
                        Math.max(0, CalibrationSettings.CONDITION_JOBS - said.otherJobs())));
    }
}
