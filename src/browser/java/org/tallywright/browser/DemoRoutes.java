package org.tallywright.browser;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Every page that an owner can open, from the files that state who may open what, with ids of the demo shop put in. A
 * page for which the shop has nothing is named, so that it is not left out unseen.
 */
final class DemoRoutes {
    private static final Path FILES = Path.of("src/test/resources/authorisation");
    private static final Pattern HOLE = Pattern.compile("\\{(\\w+)(?::([^}]*))?}");
    /** Downloads, and pages that need a token made in the page; those are opened on their own. */
    private static final Pattern NO_PAGE =
            Pattern.compile(".*(\\.csv|\\.ics|/file|\\{token}.*|^/setup|^/sign-in|^/signal)$");

    /** What a page below a job shows, and where that is kept. */
    private static final Map<String, String> OF_JOB = Map.of(
            "pieces", "piece",
            "measures", "site_measure",
            "tasks", "task",
            "openings", "opening",
            "air-readings", "air_reading",
            "solid-parts", "solid_part",
            "waits", "wait",
            "estimate/tasks", "task",
            "estimate/materials", "estimate_material",
            "estimate/others", "estimate_other");

    private static final Map<String, String> OF_SHOP = Map.ofEntries(
            Map.entry("task-kinds", "task_kind"),
            Map.entry("rates", "task_kind"),
            Map.entry("stages", "stage"),
            Map.entry("catalog/materials", "material"),
            Map.entry("materials/prices", "material"),
            Map.entry("piece-kinds", "piece_kind"),
            Map.entry("crew", "person"),
            Map.entry("entries", "time_entry"),
            Map.entry("bids", "bid"),
            Map.entry("clients", "client"),
            Map.entry("materials/purchases", "purchase"),
            Map.entry("materials/uses", "material_use"),
            Map.entry("materials/returns", "material_return"),
            Map.entry("materials/offcuts", "offcut"));

    private final JdbcClient jdbc;
    final List<String> empty = new ArrayList<>();

    DemoRoutes(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Address by pattern. */
    Map<String, String> all() {
        Map<String, String> addresses = new LinkedHashMap<>();
        for (String pattern : patterns()) {
            for (String address : addresses(pattern)) {
                addresses.put(pattern + " as " + address.replaceAll("[0-9a-f-]{36}", "*"), address);
            }
        }
        return addresses;
    }

    private static List<String> patterns() {
        try (Stream<Path> files = Files.list(FILES)) {
            List<String> patterns = new ArrayList<>();
            for (Path file : files.sorted().toList()) {
                for (String line : Files.readAllLines(file)) {
                    String[] cells = line.split(",");
                    if (cells[0].equals("GET")
                            && cells[2].contains("owner")
                            && !NO_PAGE.matcher(cells[1]).matches()) {
                        patterns.add(cells[1]);
                    }
                }
            }
            return patterns;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<String> addresses(String pattern) {
        Matcher hole = HOLE.matcher(pattern);
        if (hole.find() && hole.group(2) != null) {
            List<String> all = new ArrayList<>();
            for (String value : hole.group(2).split("\\|")) {
                all.addAll(addresses(pattern.replace(hole.group(), value)));
            }
            return all;
        }
        return filled(pattern);
    }

    private List<String> filled(String pattern) {
        List<String> row = ids(pattern);
        if (row.isEmpty()) {
            empty.add(pattern);
            return List.of();
        }
        String address = pattern;
        for (String id : row) {
            address = HOLE.matcher(address).replaceFirst(id);
        }
        return List.of(address);
    }

    /** The values of a pattern's holes, in their order; none when the shop has no such row. */
    private List<String> ids(String pattern) {
        if (!pattern.contains("{")) {
            return List.of("");
        }
        if (pattern.startsWith("/jobs/{number}/")) {
            String rest = pattern.substring("/jobs/{number}/".length());
            for (Map.Entry<String, String> part : OF_JOB.entrySet()) {
                if (rest.startsWith(part.getKey() + "/{id}")) {
                    return row("select j.number, x.id::text from " + part.getValue()
                            + " x join job j on j.id = x.job_id order by j.state = 'running' desc, "
                            + (part.getValue().equals("task") ? "x.state in ('planned', 'started') desc, " : "")
                            + (part.getValue().equals("wait") ? "x.ended_at is null desc, x.ends_at desc, " : "")
                            + "x.id limit 1");
                }
            }
        }
        if (pattern.startsWith("/jobs/{number}")) {
            return row("select number from job where state = 'running' order by number limit 1");
        }
        if (pattern.contains("{clientId}")) {
            return row("select client_id::text, id::text from site limit 1");
        }
        if (pattern.contains("{taskKindId}")) {
            return row("select piece_kind_id::text, task_kind_id::text from piece_kind_task limit 1");
        }
        if (pattern.startsWith("/days/{date}") || pattern.startsWith("/weeks/{date}")) {
            return row("select max(on_date)::text from time_entry");
        }
        for (Map.Entry<String, String> part : OF_SHOP.entrySet()) {
            if (pattern.contains("/" + part.getKey() + "/{id}")) {
                return row("select id::text from " + part.getValue() + " order by id limit 1");
            }
        }
        return List.of();
    }

    private List<String> row(String sql) {
        return jdbc
                .sql(sql)
                .query((row, n) -> {
                    List<String> values = new ArrayList<>();
                    for (int column = 1; column <= row.getMetaData().getColumnCount(); column++) {
                        values.add(row.getString(column));
                    }
                    return values;
                })
                .list()
                .stream()
                .findFirst()
                .orElse(List.of());
    }
}
