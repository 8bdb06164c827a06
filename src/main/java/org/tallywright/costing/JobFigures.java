package org.tallywright.costing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.MoneyFormat;

/**
 * All that a review shows of a job, with the words of its day; kept as it is when the job closes. Holds wages and margin:
 * for the owner only. Amounts in the shop's currency, minutes whole, quantities in the unit named beside them.
 *
 * @param form version of this record; a later one must still read the older
 * @param asOf entries up to and with this day
 * @param money how amounts were written
 * @param basis what the plan was taken from
 * @param planned null where there is no rate to plan with
 * @param unpricedMinutes logged by people without a wage on the day; they cost nothing in these figures
 * @param split why cost left the plan; empty without a plan
 * @param slack null without a price or a planned hour
 */
public record JobFigures(
        int form,
        LocalDate asOf,
        boolean closed,
        MoneyFormat money,
        Basis basis,
        List<Agreed> agreed,
        @Nullable CostSums planned,
        CostSums actual,
        BigDecimal overheadRate,
        int plannedMinutes,
        int unpricedMinutes,
        List<TaskFigures> tasks,
        List<Part> classes,
        List<Part> people,
        List<Loose> loose,
        List<Again> again,
        List<MaterialFigures> materials,
        List<Other> others,
        List<SplitLine> split,
        @Nullable Slack slack) {

    /** The version that is written now. */
    static final int FORM = 1;

    public JobFigures {
        agreed = List.copyOf(agreed);
        tasks = List.copyOf(tasks);
        classes = List.copyOf(classes);
        people = List.copyOf(people);
        loose = List.copyOf(loose);
        again = List.copyOf(again);
        materials = List.copyOf(materials);
        others = List.copyOf(others);
        split = List.copyOf(split);
    }

    /** The tasks and materials behind the lines of {@link #split}; worked out from what is kept, so that it never changes. */
    public List<SplitShare> shares() {
        return planned == null ? List.of() : CostSplit.shares(tasks, materials, closed);
    }

    /** Where planned figures come from. */
    public enum Basis {
        /** The accepted bid and its change orders. */
        BID,
        /** The working sum, as it stands. */
        ESTIMATE
    }

    /**
     * An accepted bid or change order.
     *
     * @param amounts its frozen sums
     * @param cushion contingency + margin + rounding
     */
    public record Agreed(UUID bidId, String number, CostSums amounts, BigDecimal contingency, BigDecimal cushion) {}

    /** Minutes and labour of one hour class or person; {@code key} is the class's code or the person's id. */
    public record Part(String key, String name, int minutes, BigDecimal labour) {}

    /**
     * Hours on no estimate line: on a task that no accepted bid has, or on no task at all.
     *
     * @param taskId null: on no task
     */
    public record Loose(@Nullable UUID taskId, String name, String hourClass, int minutes, BigDecimal labour) {}

    /** One rework or call-back entry. */
    public record Again(
            UUID entryId, LocalDate on, String person, String task, String hourClass, int minutes, String reason) {}

    /** Delivery, disposal and the like. */
    public record Other(String name, BigDecimal planned, BigDecimal actual) {}
}
