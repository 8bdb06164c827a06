package org.tallywright.jobs.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.jobs.JobHead;
import org.tallywright.jobs.JobPhotos;
import org.tallywright.web.Tag;

/** A job's page as one reader may see it; what is not his is not in here. */
record JobPage(
        JobHead head,
        Rights may,
        List<Fact> facts,
        @Nullable String note,
        List<TaskLine> next,
        int openTasks,
        List<StageTasks> stages,
        List<Caution> cautions,
        List<WaitLine> waits,
        List<PieceBlock> pieces,
        List<MeasureLine> roomMeasures,
        JobPhotos.Shown photos,
        List<PunchLine> punchList,
        List<EventLine> events,
        @Nullable String hoursOnNoTask) {

    public String number() {
        return head.job().number();
    }

    /**
     * @param plan change the job, its pieces, tasks and stages
     * @param work start and finish tasks, measure, move waits
     * @param punch raise and finish punch list items, on a closed job too
     * @param decide award, lose, close, reopen
     * @param seesHours estimated hours and everybody's logged hours
     */
    record Rights(boolean plan, boolean work, boolean punch, boolean signOff, boolean decide, boolean seesHours) {}

    /** @param href where the value leads, or null */
    record Fact(String name, String value, @Nullable String href) {}

    /**
     * @param what quantity and unit
     * @param piece the piece and its sizes, empty for the whole job
     * @param hours logged of estimated, or a helper's own; empty where there are none
     * @param advice what usually comes first and is not done
     */
    record TaskLine(
            UUID id,
            String name,
            String stage,
            String what,
            String piece,
            String sizes,
            String plan,
            String hours,
            boolean over,
            Tag state,
            boolean open,
            boolean planned,
            String advice) {}

    record StageTasks(UUID id, String name, Tag state, String code, String hours, List<TaskLine> tasks) {}

    record Caution(String text, String source) {}

    record WaitLine(UUID id, String task, String what, String text, boolean running, Tag tag, String started) {}

    record PieceBlock(
            UUID id, String name, String kind, String sizes, int count, String note, List<MeasureLine> measures) {}

    record MeasureLine(UUID id, String name, String length, String by, String note) {}

    record PunchLine(
            UUID id,
            String text,
            String raisedBy,
            String doneBy,
            String signedBy,
            Tag state,
            boolean ticked,
            boolean signed) {}

    record EventLine(String day, String person, String text, String note) {}
}
