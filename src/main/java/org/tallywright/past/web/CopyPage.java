package org.tallywright.past.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The preview of a copy: what could come, ticked as somebody left it.
 *
 * @param number of the job that it goes into
 * @param source number of the past job
 * @param piece name of the past piece, null for a whole job
 * @param besides hours of the past job on no piece, which stay behind; empty where there are none
 * @param targets pieces that the job has, by id; empty where there are none to take lines
 * @param costs for the owner only
 * @param action where the form goes
 */
record CopyPage(
        UUID copy,
        String number,
        String title,
        String source,
        String sourceTitle,
        @Nullable String piece,
        String besides,
        Map<String, String> targets,
        List<Group> groups,
        List<CostRow> costs,
        boolean money,
        String lengthUnit,
        String action) {

    /**
     * @param id of the past piece, null for the whole job's own lines
     * @param there its sizes of then
     * @param into the piece of the job that takes its lines, empty for a new one
     * @param seen what the quantities are worked out for, sent back with the form
     * @param parts what of its takeoff goes along, empty where there is none
     */
    record Group(
            @Nullable UUID id,
            String name,
            String there,
            boolean ticked,
            String into,
            String seen,
            Map<String, String> boxes,
            String parts,
            boolean withParts,
            List<TaskRow> tasks,
            List<MaterialRow> materials) {}

    /**
     * @param seen what is offered, sent back with the form
     * @param choices of the hours, code to words
     */
    record TaskRow(
            UUID id,
            String name,
            String notes,
            boolean ticked,
            String quantity,
            String unit,
            String seen,
            Map<String, String> choices,
            String chosen) {}

    record MaterialRow(UUID id, String name, String notes, boolean ticked, String quantity, String unit, String seen) {}

    record CostRow(UUID id, String name, String notes, String amount, boolean ticked, String seen) {}
}
