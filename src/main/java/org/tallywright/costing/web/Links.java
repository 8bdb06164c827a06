package org.tallywright.costing.web;

import org.tallywright.costing.JobFigures;
import org.tallywright.costing.MaterialFigures;
import org.tallywright.costing.SplitSource;
import org.tallywright.costing.TaskFigures;

/** Where the entries, purchases and lines of a job stand; {@code base} is the address of the job. */
record Links(String base) {
    String hours() {
        return base + "/hours";
    }

    /** @param filter of the hours page: class, person */
    String hoursOf(String filter, String key) {
        return hours() + "?" + filter + "=" + key.replace(" ", "+");
    }

    String task(TaskFigures task) {
        return hoursOf("task", task.taskId().toString());
    }

    String loose(JobFigures.Loose part) {
        String task = part.taskId() == null ? "none" : part.taskId().toString();
        return hoursOf("task", task) + "&class=" + part.hourClass().replace(" ", "+");
    }

    String materials() {
        return base + "/materials";
    }

    /** Its row among the job's material, with purchases and uses below. */
    String material(MaterialFigures line) {
        return materials() + (line.materialId() == null ? "" : "#m-" + line.materialId());
    }

    String estimate() {
        return base + "/estimate";
    }

    String bid(JobFigures.Agreed bid) {
        return "/bids/" + bid.bidId() + "/sums";
    }

    String of(SplitSource source) {
        return source instanceof TaskFigures task ? task(task) : material((MaterialFigures) source);
    }

    static String named(SplitSource source) {
        String piece = source instanceof TaskFigures task ? task.piece() : "";
        return source.name() + (piece.isEmpty() ? "" : " (" + piece + ")");
    }
}
