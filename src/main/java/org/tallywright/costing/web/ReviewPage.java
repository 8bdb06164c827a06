package org.tallywright.costing.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A review in the words of its page. Every figure is written already, so that a frozen review prints the same for ever.
 *
 * @param base address of the job
 * @param closed shows frozen figures
 * @param planned there is a plan with money
 * @param basis bid or estimate: what "planned" means here
 * @param unpriced hours of people without a wage; null: none
 * @param overhead hours x rate of the overhead so far
 * @param slack null without a price or a planned hour
 */
record ReviewPage(
        String base,
        boolean closed,
        boolean empty,
        boolean planned,
        String basis,
        String asOf,
        @Nullable String unpriced,
        List<Tile> tiles,
        List<Rung> ladder,
        String overhead,
        List<Stage> stages,
        Sum tasks,
        List<Task> worst,
        List<Part> classes,
        List<Part> people,
        List<LoosePart> loose,
        String looseSum,
        List<Again> again,
        List<Material> materials,
        List<Rung> others,
        List<Cause> causes,
        String difference,
        @Nullable SlackSum slack,
        List<Agreed> agreed) {

    /** A figure at the top; {@code key} names its texts. */
    record Tile(String key, String value, String plan, boolean bad, List<Behind> behind) {}

    /**
     * What a figure is made of, one row of it.
     *
     * @param key of its name among the page's words; empty: {@code name} is it
     * @param note hours, what was planned, or how it was worked out; may be empty
     * @param href where its entries, purchases or lines stand; empty where they stand in the rows above it
     */
    record Behind(String key, String name, String value, String note, String href) {}

    /** Planned, actual and the difference of one kind of cost; {@code href} leads to the entries, empty: the rows above add up to it. */
    record Rung(String key, String planned, String actual, String difference, boolean over, String href) {}

    record Stage(String name, List<Task> tasks, Sum sum) {}

    record Sum(String planned, String actual, String difference, boolean over) {}

    /**
     * @param left what is planned and not logged yet of an open task; empty otherwise
     * @param state key of a word beside the name: open, dropped, unlisted, uncounted; empty for none
     */
    record Task(
            String name,
            String piece,
            String planned,
            String actual,
            String difference,
            String left,
            String percent,
            boolean over,
            String quantity,
            String state,
            String href) {}

    record Part(String name, String hours, String share, String cost, String href) {}

    /** @param name of the task; empty: on none */
    record LoosePart(String name, String hourClass, String hours, String share, String cost, String href) {}

    /** @param href the entry itself */
    record Again(String on, String person, String task, String hours, String reason, String hourClass, String href) {}

    /** @param href its row among the job's material, with purchases and uses below */
    record Material(
            String href,
            String name,
            String unit,
            String plannedNet,
            String plannedYield,
            String plannedQuantity,
            String plannedCost,
            String net,
            String yield,
            String charged,
            String cost,
            String difference,
            boolean over,
            boolean listed) {}

    record Cause(String key, String amount, String hours, boolean over, List<Behind> behind) {}

    record SlackSum(
            String hours,
            String left,
            String remaining,
            String material,
            String other,
            String hour,
            boolean bad,
            List<Behind> behind) {}

    record Agreed(UUID id, String number, String price) {}
}
