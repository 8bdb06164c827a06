package org.tallywright.learning.web;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.tallywright.calibration.Forecaster;
import org.tallywright.calibration.RoundHours;
import org.tallywright.jobs.JobHead;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobState;
import org.tallywright.learning.JobForecasts;
import org.tallywright.learning.Movement;
import org.tallywright.web.Access;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The forecast tab of a job: where its hours will end, what moved that, and plain earned value beside it. */
@Controller
@Access({Role.OWNER, Role.LEAD})
class ForecastController {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    private final JobHeads heads;
    private final JobForecasts forecasts;

    ForecastController(JobHeads heads, JobForecasts forecasts) {
        this.heads = heads;
        this.forecasts = forecasts;
    }

    /** A line of what moved it. */
    record MovedRow(String what, String then, String now, String by) {}

    /**
     * @param allDone no task is open, so there is nothing to forecast
     * @param withoutHours finished tasks that nobody logged on
     * @param earned null where nothing is estimated
     * @param moved how far the likely end moved, in words; null where there is nothing to compare with
     */
    record Page(
            String likely,
            String range,
            String p80,
            String mean,
            String left,
            String soFar,
            String behind,
            String done,
            @Nullable String pace,
            @Nullable String moved,
            String basis,
            List<MovedRow> rows,
            EarnedWords earned,
            boolean allDone,
            int withoutHours,
            boolean reopened) {}

    record EarnedWords(
            String budget, String earned, String actual, String index, String atEnd, boolean any, boolean noise) {}

    @GetMapping("/jobs/{number}/forecast")
    String show(@PathVariable String number, SignedIn me, Model model) {
        JobHead head = heads.find(number, me, "forecast");
        Optional<JobForecasts.Now> now =
                head.job().state() == JobState.RUNNING ? forecasts.of(head.job().id()) : Optional.empty();
        model.addAttribute("head", head);
        model.addAttribute("running", head.job().state() == JobState.RUNNING);
        model.addAttribute("page", now.map(ForecastController::page).orElse(null));
        return "learning/forecast";
    }

    private static Page page(JobForecasts.Now now) {
        Forecaster.Running job = now.running();
        return new Page(
                hours(job.atEnd().median()),
                hours(job.atEnd().low()) + " and " + hours(job.atEnd().high()),
                hours(job.atEnd().p80()),
                hours(job.atEnd().mean()),
                hours(job.left().median()) + " left; four times in five between "
                        + hours(job.left().low()) + " and " + hours(job.left().high()),
                hours(job.soFar()),
                job.jobs() == 0
                        ? "No finished job stands behind it yet: it is the starting rates with a wide range."
                        : "From " + job.jobs() + (job.jobs() == 1 ? " finished job" : " finished jobs") + " and "
                                + job.finished()
                                + (job.finished() == 1 ? " finished task" : " finished tasks") + " of this one.",
                job.finished() + " of " + (job.finished() + job.open()) + " tasks, " + Math.round(100 * job.shareDone())
                        + " % of the estimated hours",
                pace(job),
                now.moved() == null ? null : moved(now.moved()),
                now.moved() == null ? "" : basis(now.moved()),
                now.moved() == null ? List.of() : rows(now.moved()),
                earned(job.earned()),
                job.open() == 0,
                job.withoutHours(),
                now.reopened());
    }

    private static @Nullable String pace(Forecaster.Running job) {
        if (job.finished() == 0) {
            return null;
        }
        long percent = Math.round(100 * (job.pace() - 1));
        String how = percent == 0
                ? "as its kinds of work usually do"
                : Math.abs(percent) + " % " + (percent > 0 ? "over" : "under") + " what its kinds of work usually take";
        return "This job runs " + how + ", judged from " + job.finished()
                + (job.finished() == 1 ? " finished task; one says little." : " finished tasks, with caution.");
    }

    private static String moved(Movement moved) {
        String then = hours(moved.then());
        String now = hours(moved.now());
        String first = "A week ago the likely end was " + then
                + (moved.basis() == Movement.Basis.WORKED_OUT
                        ? " by the calibration of today"
                        : ", as kept at the end of " + DAY.format(moved.on()));
        return then.equals(now) ? first + "; it is the same now." : first + "; now it is " + now + ".";
    }

    private static String basis(Movement moved) {
        return switch (moved.basis()) {
            case SAME_CALIBRATION -> "The calibration is the same on both days.";
            case NEWER_CALIBRATION ->
                "The calibration is a newer one since: the hours and tasks of this week are measured with the one of then, and"
                        + " what the newer one says differently stands on a line of its own.";
            case CALIBRATION_GONE ->
                "The calibration of then is no longer kept, so what a newer one says differently cannot be told apart from"
                        + " the work.";
            case WORKED_OUT ->
                "No forecast was kept a week ago, so both days are worked out with the calibration of today; tasks added or"
                        + " changed since then count on both days.";
        };
    }

    private static String name(Movement.Part part) {
        return switch (part.fate()) {
            case OPEN -> part.name();
            case FINISHED -> part.name() + ", finished";
            case ADDED -> part.name() + ", added";
            case DROPPED -> part.name() + ", dropped";
        };
    }

    private static List<MovedRow> rows(Movement moved) {
        List<MovedRow> rows = new ArrayList<>();
        for (Movement.Part part : moved.tasks()) {
            rows.add(new MovedRow(name(part), hours(part.then()), hours(part.now()), signed(part.hours())));
        }
        if (Math.abs(moved.onNoLine()) >= 0.25) {
            rows.add(new MovedRow("Hours that no line names", "", "", signed(moved.onNoLine())));
        }
        if (Math.abs(moved.rest()) >= 0.5) {
            rows.add(new MovedRow(
                    "Everything else: smaller tasks, and allowance for what no line names",
                    "",
                    "",
                    signed(moved.rest())));
        }
        Double calibration = moved.calibration();
        if (calibration != null && moved.basis() == Movement.Basis.NEWER_CALIBRATION) {
            rows.add(new MovedRow(
                    "Another calibration: what is known of other jobs changed since", "", "", signed(calibration)));
        }
        return rows;
    }

    private static EarnedWords earned(Forecaster.Earned earned) {
        Double index = earned.index();
        Double atEnd = earned.atEnd();
        return new EarnedWords(
                hours(earned.budget()),
                hours(earned.earned()),
                hours(earned.actual()),
                index == null ? "" : String.format(Locale.ROOT, "%.2f", index),
                atEnd == null ? "" : hours(atEnd),
                index != null && atEnd != null,
                earned.noise());
    }

    private static String hours(double hours) {
        return RoundHours.of(hours).toString();
    }

    private static String signed(double hours) {
        return (hours > 0 ? "+" : "") + RoundHours.of(hours);
    }
}
