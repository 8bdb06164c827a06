package org.tallywright.takeoff;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.tallywright.cutting.Grain;
import org.tallywright.takeoff.formula.Amount;
import org.tallywright.takeoff.formula.Formula;

/** The formulas of one kind of piece: from its sizes to settings, from settings to parts, from parts to quantities. */
public record Recipe(
        List<Setting> settings, List<Slot> slots, List<PartRule> parts, List<TaskRule> tasks, List<Supply> supplies) {

    /** A named length or number that a piece may answer otherwise. */
    public record Setting(int line, String name, String label, Formula formula) {}

    /** A material by the name that the parts call it, with the code of the catalogue's material to start from. */
    public record Slot(int line, String name, String label, String code) {}

    /**
     * Parts that are alike.
     *
     * @param longEdges how many of the two long edges are banded; likewise the short ones
     * @param faces how many of the two faces are sanded and finished
     * @param joints that each of them takes
     */
    public record PartRule(
            int line,
            String name,
            String slot,
            Formula quantity,
            Formula length,
            Formula width,
            Grain grain,
            String matched,
            Formula longEdges,
            Formula shortEdges,
            Formula faces,
            Formula joints) {}

    /**
     * The quantity of a task kind, by its code.
     *
     * @param formula for one piece
     * @param together how those add up where whole ones are counted over several pieces: of {@code sum}, what all pieces alike
     *     come to, {@code before}, what the pieces before it in the job do, and {@code job}, what all of them do; null: times
     *     the pieces alike
     */
    public record TaskRule(
            int line,
            String code,
            Formula formula,
            @Nullable Formula together) {
        /** @param sums by name: sum, before, job */
        Amount together(Map<String, Amount> totals, Map<String, Amount> sums) {
            if (together == null) {
                return sums.getOrDefault("sum", Amount.ZERO);
            }
            Map<String, Amount> known = new HashMap<>(totals);
            known.putAll(sums);
            return together.value(known);
        }
    }

    /** What is bought beside the parts: hardware, edge band. */
    public record Supply(int line, String slot, Formula formula) {}

    boolean hasSlot(String name) {
        return slots.stream().anyMatch(slot -> slot.name().equals(name));
    }
}
