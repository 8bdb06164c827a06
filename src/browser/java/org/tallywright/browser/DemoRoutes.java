package org.tallywright.browser;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Every page that somebody of a role can open, from the files that state who may open what, with ids of the demo shop put in. A
 * page for which the shop has nothing is named, so that it is not left out unseen.
 */
final class DemoRoutes {
    private static final Path FILES = Path.of("src/test/resources/authorisation");
    private static final Pattern HOLE = Pattern.compile("\\{(\\w+)(?::([^}]*))?}");
    /** Downloads, and pages that need a token made in the page; those are opened on their own. */
    private static final Pattern NO_PAGE = Pattern.compile(
            ".*(\\.csv|\\.pdf|\\.ics|/file|/photos/\\{id}|/photos/\\{id}/small|\\{token}.*|^/setup|^/sign-in|^/signal)$");

    /** What a page below a job shows, and where that is kept. */
    private static final Map<String, String> OF_JOB = Map.ofEntries(
            Map.entry("pieces", "piece"),
            Map.entry("measures", "site_measure"),
            Map.entry("tasks", "task"),
            Map.entry("openings", "opening"),
            Map.entry("air-readings", "air_reading"),
            Map.entry("solid-parts", "solid_part"),
            Map.entry("waits", "wait"),
            Map.entry("estimate/tasks", "task"),
            Map.entry("estimate/materials", "estimate_material"),
            Map.entry("estimate/others", "estimate_other"),
            Map.entry("photos", "photo"),
            Map.entry("estimate/options", "estimate_option"));

    private static final Map<String, String> OF_SHOP = Map.ofEntries(
            Map.entry("task-kinds", "task_kind"),
            Map.entry("rates", "task_kind"),
            Map.entry("calibration", "calibration"),
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
    private final String role;
    final List<String> empty = new ArrayList<>();

    /** @param role as in the files: owner, lead, helper, bookkeeper */
    DemoRoutes(JdbcClient jdbc, String role) {
        this.jdbc = jdbc;
        this.role = role;
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

    private List<String> patterns() {
        try (Stream<Path> files = Files.list(FILES)) {
            List<String> patterns = new ArrayList<>();
            for (Path file : files.sorted().toList()) {
                for (String line : Files.readAllLines(file)) {
                    String[] cells = line.split(",");
                    if (cells[0].equals("GET") && !NO_PAGE.matcher(cells[1]).matches()) {
                        patternFor(cells[1], cells[2]).ifPresent(patterns::add);
                    }
                }
            }
            return patterns;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** {@code helper:uses} opens the pattern for that one of its choices only. */
    private Optional<String> patternFor(String pattern, String roles) {
        for (String allowed : roles.strip().split(" +")) {
            String[] parts = allowed.split(":", 2);
            if (parts[0].equals(role)) {
                return Optional.of(
                        parts.length == 1 ? pattern : HOLE.matcher(pattern).replaceFirst(parts[1]));
            }
        }
        return Optional.empty();
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
        if (pattern.equals("/jobs/{number}/pieces/{id}/parts/{part}")) {
            return row("select j.number, x.piece_id::text, x.id::text from part x join job j on j.id = x.job_id"
                    + " order by j.state = 'running' desc, x.id limit 1");
        }
        if (pattern.equals("/jobs/{number}/past-pieces/{id}")) {
            return row("select j.number, x.id::text from job j join piece x on x.job_id <> j.id"
                    + " where j.state = 'bidding' order by x.id limit 1");
        }
        if (pattern.equals("/jobs/{number}/past-jobs/{other}")) {
            return row("select j.number, x.number from job j join job x on x.state = 'closed'"
                    + " where j.state = 'bidding' order by x.number limit 1");
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
            List<String> day = row("select max(on_date)::text from time_entry");
            return role.equals("bookkeeper") && !day.isEmpty() ? List.of(day.get(0) + ofSomebody()) : day;
        }
        if (pattern.equals("/entries/{id}")) {
            return row("select e.id::text from time_entry e join person p on p.id = e.person_id where p.role = '"
                    + (role.equals("helper") ? "helper" : "owner") + "' order by e.on_date desc, e.id limit 1");
        }
        for (Map.Entry<String, String> part : OF_SHOP.entrySet()) {
            if (pattern.contains("/" + part.getKey() + "/{id}")) {
                return row("select id::text from " + part.getValue() + " order by id limit 1");
            }
        }
        return List.of();
    }

    /** Who logs no hours has no week of his own to open. */
    private String ofSomebody() {
        return "?person="
                + row("select id::text from person where role = 'owner' limit 1")
                        .get(0);
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
