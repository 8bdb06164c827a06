package org.tallywright.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Fills the variables of a pattern with what is in the shop, so that a route can be called. The key is the part of the
 * path before the variable: {@code tasks} in {@code /jobs/{number}/tasks/{id}}. A new kind of address needs a line here.
 */
final class RouteValues {
    private static final Pattern VARIABLE = Pattern.compile("([^/]*)/\\{(\\w+)(?::([^}]*))?}");

    private static final Map<String, String> OF_JOB = Map.ofEntries(
            Map.entry("tasks", "select id from task where job_id = :job order by estimated_minutes = 613 desc, id"),
            Map.entry(
                    "pieces",
                    "select id from piece p where job_id = :job order by exists (select from part where piece_id = p.id) desc, id"),
            Map.entry("parts", "select id from part where job_id = :job order by piece_id, id"),
            Map.entry("measures", "select id from site_measure where job_id = :job order by id"),
            Map.entry("openings", "select id from opening where job_id = :job order by id"),
            Map.entry("air-readings", "select id from air_reading where job_id = :job order by id"),
            Map.entry("solid-parts", "select id from solid_part where job_id = :job order by id"),
            Map.entry("waits", "select id from wait where job_id = :job order by ended_at nulls first, id"),
            Map.entry(
                    "stages",
                    "select stage_id from job_stage where job_id = :job order by done_on nulls first, stage_id"),
            Map.entry("punch-items", "select id from punch_item where job_id = :job order by id"),
            Map.entry(
                    "estimate/tasks",
                    "select id from task where job_id = :job order by estimated_minutes = 613 desc, id"),
            Map.entry("estimate/materials", "select id from estimate_material where job_id = :job order by id"),
            Map.entry("estimate/options", "select id from estimate_option where job_id = :job order by id"),
            Map.entry("others", "select id from estimate_other where job_id = :job order by amount = 487.31 desc, id"),
            Map.entry("links", "select id from client_link where job_id = :job order by id"),
            Map.entry("notes", "select id from client_note where job_id = :job order by shown, id"),
            Map.entry("photos", "select id from photo where job_id = :job order by for_client desc, id"),
            Map.entry("jobs", "select number from job where id = :job"),
            Map.entry("past-pieces", "select id from piece where job_id <> :job order by id"),
            Map.entry("past-jobs", "select number from job where id <> :job order by state = 'closed' desc, id"),
            Map.entry("copies", "select coalesce((select min(id::text)::uuid from past_copy), gen_random_uuid())"),
            Map.entry("bids", "select id from bid where job_id = :job order by accepted_on nulls last, id"),
            Map.entry("purchases", "select id from purchase order by unit_price = 17.93 desc, id"),
            Map.entry("prices", "select material_id from purchase order by unit_price = 17.93 desc, id"),
            Map.entry("uses", "select id from material_use order by job_id = :job desc, id"),
            Map.entry("returns", "select id from material_return order by job_id = :job desc, id"),
            Map.entry("offcuts", "select id from offcut order by job_id = :job desc, id"),
            Map.entry("entries", "select id from time_entry order by person_id = :me desc, on_date desc, id"),
            Map.entry("days", "select max(on_date)::text from time_entry where job_id = :job"),
            Map.entry("weeks", "select max(on_date)::text from time_entry where job_id = :job"),
            Map.entry("crew", "select id from person order by role = 'helper' desc, id"),
            Map.entry(
                    "wages",
                    "select w.id from wage w join person p on p.id = w.person_id where p.role = 'helper' order by w.id"),
            Map.entry("clients", "select client_id from job where id = :job"),
            Map.entry("sites", "select site_id from job where id = :job"),
            Map.entry(
                    "catalog/task-kinds",
                    "select task_kind_id from task where job_id = :job order by estimated_minutes = 613 desc, id"),
            Map.entry("rates", "select task_kind_id from task where state = 'done' order by id"),
            Map.entry("calibration", "select id from calibration order by current desc"),
            Map.entry("import", "select id from past_import order by id"),
            Map.entry("catalog/piece-kinds", "select piece_kind_id from piece_kind_task order by piece_kind_id"),
            Map.entry("piece-kinds/tasks", "select task_kind_id from piece_kind_task order by piece_kind_id, position"),
            Map.entry("catalog/stages", "select id from stage order by position"),
            Map.entry("catalog/materials", "select id from material order by code"));

    private final JdbcClient jdbc;
    private final WholeShop shop;

    RouteValues(JdbcClient jdbc, WholeShop shop) {
        this.jdbc = jdbc;
        this.shop = shop;
    }

    /** One path for each alternative that a variable spells out, as in {@code {kind:purchases|uses}}; else one. */
    List<String> paths(String pattern, Reader reader) {
        Matcher variable = VARIABLE.matcher(pattern);
        if (!variable.find()) {
            return List.of(pattern);
        }
        List<String> paths = new ArrayList<>();
        String before = pattern.substring(0, variable.start(2) - 1);
        for (String value : values(before, variable.group(2), variable.group(3), reader)) {
            paths.addAll(paths(before + value + pattern.substring(variable.end()), reader));
        }
        return paths;
    }

    private List<String> values(
            String before, String name, @org.jspecify.annotations.Nullable String choice, Reader reader) {
        if (choice != null) {
            return List.of(choice.split("\\|"));
        }
        if (name.equals("token")) {
            return List.of(before.startsWith("/c/") ? shop.clientToken() : shop.invitationToken());
        }
        String[] parts = before.substring(1).split("/");
        String last = parts[parts.length - 1];
        String key = key(parts, last);
        String sql = OF_JOB.get(key);
        if (sql == null) {
            throw new IllegalStateException("RouteValues has no value for {" + name + "} after " + before);
        }
        return List.of(jdbc.sql(sql + " limit 1")
                .param("job", shop.job())
                .param("me", shop.idOf(reader))
                .query((row, n) -> row.getString(1))
                .optional()
                .orElseThrow(
                        () -> new IllegalStateException("nothing in the shop for {" + name + "} after " + before)));
    }

    private static String key(String[] parts, String last) {
        if (parts.length > 1 && parts[0].equals("catalog")) {
            return parts.length > 2 ? "piece-kinds/" + last : "catalog/" + last;
        }
        return parts.length > 3 && parts[2].equals("estimate") && !last.equals("others") ? "estimate/" + last : last;
    }
}
