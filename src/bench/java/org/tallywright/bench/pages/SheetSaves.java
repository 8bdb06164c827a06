package org.tallywright.bench.pages;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Day sheets to be saved, each with a few short new entries of a person on a day of the last week, on open tasks of the shop. */
final class SheetSaves {
    private static final int ROWS = 4;
    private static final int ROUNDS = 3;

    private final int rowsEach;

    /** @param ids of the entries that it makes */
    record Sheet(String path, Map<String, String> fields, List<UUID> ids) {}

    private final Deque<Sheet> sheets = new ArrayDeque<>();

    SheetSaves(Connection connection) throws SQLException {
        this(connection, ROWS, ROUNDS, 6);
    }

    /** @param rounds a sheet each of every person for each of the last days */
    SheetSaves(Connection connection, int rowsEach, int rounds, int days) throws SQLException {
        this.rowsEach = rowsEach;
        List<String> tasks = new ArrayList<>();
        List<String> people = new ArrayList<>();
        LocalDate today = null;
        try (Statement statement = connection.createStatement()) {
            // Work in the shop: work at a site without travel is asked about.
            read(statement, """
                    select 'task:' || t.id from task t join job j on j.id = t.job_id join task_kind k on k.id = t.task_kind_id
                    where j.state = 'running' and k.place = 'shop' and t.state = 'started' and not exists (
                        select from time_entry e where e.task_id = t.id) order by t.id""", tasks);
            read(statement, "select id::text from person order by id", people);
            List<String> day = new ArrayList<>();
            read(statement, "select current_date::text", day);
            today = LocalDate.parse(day.get(0));
        }
        int next = 0;
        for (int round = 0; round < rounds; round++) {
            for (int back = 1; back <= days; back++) {
                for (String person : people) {
                    sheets.add(sheet(today.minusDays(back), person, tasks, next++));
                }
            }
        }
    }

    private static void read(Statement statement, String sql, List<String> into) throws SQLException {
        try (ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                into.add(rows.getString(1));
            }
        }
    }

    private Sheet sheet(LocalDate day, String person, List<String> tasks, int number) {
        Map<String, String> fields = new LinkedHashMap<>();
        List<UUID> ids = new ArrayList<>();
        fields.put("person", person);
        fields.put("act", "save");
        for (int row = 0; row < rowsEach; row++) {
            UUID id = UUID.randomUUID();
            ids.add(id);
            fields.put("row." + row + ".id", id.toString());
            fields.put("row." + row + ".what", tasks.get((number * rowsEach + row) % tasks.size()));
            fields.put("row." + row + ".class", "direct");
            fields.put("row." + row + ".time", "5m");
        }
        return new Sheet("/days/" + day, fields, ids);
    }

    synchronized Sheet next() {
        return sheets.remove();
    }

    /** Takes the entries of a save away, so that its statements can be run once more. */
    static void forget(Connection connection, Sheet sheet) throws SQLException {
        try (Statement name = connection.createStatement();
                PreparedStatement delete = connection.prepareStatement("delete from time_entry where id = any(?)")) {
            name.execute(
                    "select set_config('tallywright.person', 'shop', false), set_config('tallywright.at', now()::text, false)");
            delete.setArray(1, connection.createArrayOf("uuid", sheet.ids().toArray()));
            if (delete.executeUpdate() != sheet.ids().size()) {
                throw new IllegalStateException(
                        "a save did not keep its " + sheet.ids().size() + " entries");
            }
        }
    }
}
