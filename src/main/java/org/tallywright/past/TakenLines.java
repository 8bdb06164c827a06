package org.tallywright.past;

/** Which lines of an estimate the client took, for SQL: a condition on a line {@code l}. */
final class TakenLines {
    static final String TASKS = option("task_id");
    static final String MATERIALS = option("estimate_material_id") + change("bid_material", "estimate_material_id");
    static final String OTHERS = option("estimate_other_id") + change("bid_other", "estimate_other_id");

    private TakenLines() {}

    /** An option's line counts only where the client chose the option. */
    private static String option(String column) {
        return """
            not exists (select 1 from estimate_option_line o where o.%s = l.id and not exists (
                select 1 from bid b where b.option_id = o.option_id and b.state = 'accepted'))""".formatted(column);
    }

    /**
     * A line that was offered by a change order counts only where something that holds it was accepted; one that was in no
     * change order counts, as work goes on without papers too. Tasks need none of this: they say so by their state.
     */
    private static String change(String table, String column) {
        return """

            and (not exists (select 1 from %1$s x join bid b on b.id = x.bid_id left join bid f on f.id = b.option_of
                    where x.%2$s = l.id and coalesce(f.kind, b.kind) = 'change order')
                or exists (select 1 from %1$s x join bid b on b.id = x.bid_id where x.%2$s = l.id and b.state = 'accepted'))""".formatted(table, column);
    }
}
