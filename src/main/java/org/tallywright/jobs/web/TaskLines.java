package org.tallywright.jobs.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.tallywright.jobs.JobHead;
import org.tallywright.jobs.LoggedHours;
import org.tallywright.jobs.ShopDates;
import org.tallywright.jobs.TaskState;
import org.tallywright.shared.Hours;

/** Makes the lines of tasks; what others logged and what was estimated stay out where the reader sees no hours. */
final class TaskLines {
    private final Wording wording;
    private final ShopDates dates;
    private final Map<UUID, JobPageRows.PieceRow> pieces;
    private final List<JobPageRows.TaskRow> tasks;
    private final Map<UUID, Set<UUID>> before;
    private final LoggedHours.OnJob hours;
    private final boolean seesHours;

    TaskLines(
            Wording wording,
            ShopDates dates,
            Map<UUID, JobPageRows.PieceRow> pieces,
            List<JobPageRows.TaskRow> tasks,
            Map<UUID, Set<UUID>> before,
            LoggedHours.OnJob hours,
            boolean seesHours) {
        this.wording = wording;
        this.dates = dates;
        this.pieces = pieces;
        this.tasks = tasks;
        this.before = before;
        this.hours = hours;
        this.seesHours = seesHours;
    }

    JobPage.TaskLine of(JobPageRows.TaskRow task) {
        JobPageRows.PieceRow piece = task.pieceId() == null ? null : pieces.get(task.pieceId());
        int logged = hours.byTask().getOrDefault(task.id(), 0);
        return new JobPage.TaskLine(
                task.id(),
                task.name(),
                task.stage(),
                what(task),
                piece == null ? "" : piece.name(),
                piece == null ? "" : wording.sizes(piece.width(), piece.height(), piece.depth()),
                plan(task),
                hours(task, logged),
                seesHours && logged > task.estimatedMinutes(),
                StateTags.of(task.state(), task.neverNeeded()),
                task.state().isOpen(),
                task.state() == TaskState.PLANNED,
                task.state().isOpen() ? advice(task) : "");
    }

    private String what(JobPageRows.TaskRow task) {
        if (task.quantityDone() != null) {
            return Wording.quantity(task.quantityDone(), task.unit()) + (task.confirmed() ? "" : ", not counted");
        }
        return Wording.quantity(task.quantity(), task.unit());
    }

    private String plan(JobPageRows.TaskRow task) {
        List<String> parts = new ArrayList<>();
        if (task.doneOn() != null) {
            parts.add(dates.day(task.doneOn()));
        } else if (task.plannedOn() != null) {
            parts.add(dates.day(task.plannedOn()));
        }
        if (task.assignee() != null) {
            parts.add(task.assignee());
        }
        if (task.onSite()) {
            parts.add("on site");
        }
        return String.join(", ", parts);
    }

    private String hours(JobPageRows.TaskRow task, int logged) {
        if (seesHours) {
            return JobHead.used(Hours.ofMinutes(logged), Hours.ofMinutes(task.estimatedMinutes()));
        }
        return logged == 0 ? "" : "yours " + Hours.ofMinutes(logged);
    }

    /** Only tasks of the same piece, or of the whole job, come before one another. */
    private String advice(JobPageRows.TaskRow task) {
        Set<UUID> first = before.getOrDefault(task.kindId(), Set.of());
        return tasks.stream()
                .filter(t -> first.contains(t.kindId()) && t.state().isOpen())
                .filter(t -> t.pieceId() == null
                        || task.pieceId() == null
                        || t.pieceId().equals(task.pieceId()))
                .map(JobPageRows.TaskRow::name)
                .distinct()
                .collect(Collectors.joining(", "));
    }
}
