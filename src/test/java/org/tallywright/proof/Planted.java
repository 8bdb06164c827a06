package org.tallywright.proof;

import static org.tallywright.proof.Reader.BOOKKEEPER;
import static org.tallywright.proof.Reader.HELPER;
import static org.tallywright.proof.Reader.LEAD;
import static org.tallywright.proof.Reader.STRANGER;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.shared.Ids;

/**
 * A figure or phrase that is in the shop once, how it could be spelled on a page, and who must never read it. The
 * stranger is the client with his link. A figure that nobody may read is no one's to find, so the owner is not asked for it.
 */
record Planted(String what, Pattern spellings, Set<Reader> hiddenFrom, boolean ownerReads) {

    static final List<Planted> ALL = List.of(
            figure("a wage", "41[.,]?17|\\$41", LEAD, HELPER, STRANGER),
            figure("a burdened hour", "49[.,]?12", LEAD, HELPER, STRANGER),
            figure("the helper's wage", "23[.,]?89", LEAD, HELPER, STRANGER),
            figure("a labour rate", "63[.,]?79", LEAD, HELPER, STRANGER),
            figure("overhead per hour", "16[.,]83", LEAD, HELPER, STRANGER),
            figure("a price to the client", "9[.,' \\u00a0\\u202f\\u2009]?413", LEAD, HELPER),
            figure("a margin", "27[.,]37|27[.,]4", LEAD, HELPER, BOOKKEEPER, STRANGER),
            figure("a margin in money", "2[.,' \\u00a0\\u202f\\u2009]?571[.,]43", LEAD, HELPER, BOOKKEEPER, STRANGER),
            figure("an expected profit", "1[.,' \\u00a0\\u202f\\u2009]?846[.,]29", LEAD, HELPER, BOOKKEEPER, STRANGER),
            figure("an expected cost", "7[.,' \\u00a0\\u202f\\u2009]?566[.,]71", LEAD, HELPER, BOOKKEEPER, STRANGER),
            phrase("how often a price loses money", "Loses money|in 100\\b", LEAD, HELPER, BOOKKEEPER, STRANGER),
            figure("another cost", "487[.,]?31", LEAD, HELPER, STRANGER),
            figure("estimated hours", "10 ?h ?13|10:13|613|10[.,]22|10[.,]2 ?h", HELPER, BOOKKEEPER, STRANGER),
            figure("another's minutes", "2 ?h ?17|2:17|137|2[.,]28", HELPER, STRANGER),
            figure("a purchase price", "17[.,]93|233[.,]09", HELPER, STRANGER),
            phrase("the job's internal note", "Ogre keeps the change", HELPER, BOOKKEEPER, STRANGER),
            phrase("a client's internal note", "Ogre pays late", HELPER, BOOKKEEPER, STRANGER),
            phrase("another's note on an entry", "Ogre bent a chisel", HELPER, BOOKKEEPER, STRANGER),
            phrase("the caption of a photo", "Ogre at the saw", BOOKKEEPER, STRANGER),
            phrase("the caption of a photo for the client", "Ogre's door is hung|Ogre&#39;s door is hung", BOOKKEEPER),
            phrase("a note not shown to the client", "Ogre draft", HELPER, BOOKKEEPER, STRANGER),
            new Planted("a password hash", Pattern.compile("argon2"), Set.of(Reader.values()), false),
            new Planted(
                    "an answer of another's query",
                    Pattern.compile("token_hash|\\\\x[0-9a-f]{64}"),
                    Set.of(Reader.values()),
                    false));

    /** Not inside a longer number, id or word. */
    private static Planted figure(String what, String spellings, Reader... hiddenFrom) {
        return new Planted(
                what,
                Pattern.compile("(?<![\\w.,-])[$-]?(?:" + spellings + ")(?![\\w]|[.,][0-9]*[1-9])"),
                Set.of(hiddenFrom),
                true);
    }

    private static Planted phrase(String what, String words, Reader... hiddenFrom) {
        return new Planted(what, Pattern.compile(words, Pattern.CASE_INSENSITIVE), Set.of(hiddenFrom), true);
    }

    /** Inside a transaction with triggers off: bids are frozen, and nobody is named. */
    static void into(JdbcClient jdbc, UUID job, UUID owner, UUID helper) {
        UUID task = jdbc.sql(
                        "select id from task where job_id = ? and state <> 'dropped' order by state = 'started' desc, id limit 1")
                .param(job)
                .query(UUID.class)
                .single();
        money(jdbc, job, owner, helper);
        jdbc.sql(
                        "insert into punch_item (id, job_id, text, raised_on, raised_by, version) values (?, ?, 'Gap at the scribe', '2026-11-24', ?, 0)")
                .params(Ids.next(), job, owner)
                .update();
        hours(jdbc, job, task, owner, helper);
        photo(jdbc, job, helper, "Ogre at the saw", false);
        photo(jdbc, job, helper, "Ogre's door is hung", true);
        jdbc.sql(
                        "insert into estimate_option (id, job_id, name, words, position, version) values (?, ?, 'Brass hooks', 'Six of them', 1, 0)")
                .params(Ids.next(), job)
                .update();
        jdbc.sql("update job set note = 'Ogre keeps the change' where id = ?")
                .param(job)
                .update();
        jdbc.sql("update client set note = 'Ogre pays late' where id = (select client_id from job where id = ?)")
                .param(job)
                .update();
        jdbc.sql("""
                        insert into client_note (id, job_id, on_date, text, shown, written_by, version)
                        select ?, id, opened_on, 'Ogre draft', false, ?, 0 from job where id = ?""").params(Ids.next(), owner, job).update();
    }

    private static void money(JdbcClient jdbc, UUID job, UUID owner, UUID helper) {
        jdbc.sql("update wage set wage_amount = 41.17, burden_percent = 19.3 where person_id = ?")
                .param(owner)
                .update();
        jdbc.sql("update wage set wage_amount = 23.89, burden_percent = 17 where person_id = ?")
                .param(helper)
                .update();
        jdbc.sql("update shop set overhead_rate = 16.83").update();
        jdbc.sql(
                        "update estimate set labour_rate = 63.79, margin_percent = 27.37, overhead_rate = 16.83 where job_id = ?")
                .param(job)
                .update();
        jdbc.sql("""
                        update bid set labour_rate = 63.79, margin_percent = 27.37, margin_amount = 2571.43, overhead_rate = 16.83,
                            labour_amount = 9413 - material_amount - other_amount - overhead_amount - contingency_amount - 2571.43,
                            rounding_amount = 0, price_amount = 9413, tax_amount = 0, total_amount = 9413,
                            document = regexp_replace(document::text, '\\$[0-9,]+\\.[0-9]{2}', '$9,413.00', 'g')::jsonb
                        where job_id = ? and kind = 'bid'""").param(job).update();
        jdbc.sql("""
                        insert into bid_cost (bid_id, confidence, expected_amount, low_amount, likely_amount, high_amount, p80_amount,
                            loss_percent, profit_amount, draws, seed, jobs, starting_percent, materials, yields, price_steps,
                            crew_matters, crew_jobs)
                        select id, 80, 7566.71, 6000, 7500, 9000, 8200, 6.4, 1846.29, 2000, 1, 6, 50, 2, 1, 3, true, 2
                        from bid where job_id = ? and kind = 'bid'
                        on conflict (bid_id) do update set expected_amount = 7566.71, profit_amount = 1846.29""").param(job).update();
        jdbc.sql("""
                        update purchase set quantity = 13, unit_price = 17.93, freight_amount = 0, amount = 233.09
                        where id = (select id from purchase where job_id = ? order by bought_on desc, id limit 1)""").param(job).update();
        jdbc.sql("""
                        insert into material_return (id, job_id, material_id, quantity, credit_amount, returned_on, returned_by, version)
                        select ?, job_id, material_id, 1, 1, bought_on, ?, 0 from purchase where unit_price = 17.93""").params(Ids.next(), owner).update();
        jdbc.sql("""
                        insert into offcut (id, job_id, material_id, quantity, credit_amount, kept_on, kept_by, version)
                        select ?, job_id, material_id, 1, 1, bought_on, ?, 0 from purchase where unit_price = 17.93""").params(Ids.next(), owner).update();
        jdbc.sql("""
                        insert into estimate_other (id, job_id, description, amount, position, version)
                        values (?, ?, 'Skip hire', 487.31, 99, 0)""").params(Ids.next(), job).update();
    }

    private static void photo(JdbcClient jdbc, UUID job, UUID by, String caption, boolean forClient) {
        UUID id = Ids.next();
        jdbc.sql("""
                        insert into photo (id, job_id, taken_at, dated_by, added_at, added_by, caption, for_client, width, height,
                            original_hash, version)
                        values (?, ?, '2026-11-25T15:00:00Z', 'camera', '2026-11-25T15:00:00Z', ?, ?, ?, 320, 240, sha256(?), 0)""")
                .params(id, job, by, caption, forClient, caption.getBytes(StandardCharsets.UTF_8))
                .update();
        jdbc.sql("""
                        insert into photo_picture (photo_id, size, jpeg)
                        select ?, size, '\\xffd8ffd9'::bytea from unnest(array['large', 'small']) size""").param(id).update();
    }

    private static void hours(JdbcClient jdbc, UUID job, UUID task, UUID owner, UUID helper) {
        jdbc.sql("""
                        update task set estimated_minutes = 613, state = 'started', started_on = '2026-11-24', planned_on = '2026-11-25',
                            assigned_to = ?, done_on = null, done_by = null, quantity_done = null where id = ?""").params(helper, task).update();
        jdbc.sql("update bid_task set estimated_minutes = 613 where task_id = ?")
                .param(task)
                .update();
        entry(jdbc, job, task, owner, 137, "Ogre bent a chisel");
        entry(jdbc, job, task, helper, 34, "");
    }

    private static void entry(JdbcClient jdbc, UUID job, UUID task, UUID person, int minutes, String note) {
        jdbc.sql("""
                        insert into time_entry (id, person_id, on_date, job_id, task_id, hour_class, minutes, note, logged_by, logged_at, version)
                        values (?, ?, '2026-11-25', ?, ?, 'direct', ?, ?, ?, '2026-11-25T18:00:00Z', 0)""")
                .params(Ids.next(), person, job, task, minutes, note, person)
                .update();
    }
}
