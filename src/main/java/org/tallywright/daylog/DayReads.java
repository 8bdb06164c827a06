package org.tallywright.daylog;

import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.tallywright.shared.Ids;
import org.tallywright.shared.ShopClock;

/** What a day sheet shows beside its entries: likely tasks, what cures, marks and answers. */
@Repository
public class DayReads {
    private static final String FACTS = """
            select m.kind, m.note, m.version, coalesce(w.state, 'open') as week,
                (select string_agg(a.question, chr(10)) from day_answer a
                    where a.person_id = x.person and a.on_date = x.on_date) as answers
            from (select cast(? as uuid) as person, cast(? as date) as on_date) x
            left join day_mark m on m.person_id = x.person and m.on_date = x.on_date
            left join work_week w on w.person_id = x.person
                and w.monday = x.on_date - (extract(isodow from x.on_date)::int - 1)""";
    private static final String MISSING = """
            select d.day::date from person p
            cross join generate_series(cast(:from as date), cast(:to as date), interval '1 day') d(day)
            where p.id = :person and extract(isodow from d.day) <= 5 and d.day::date >= least((p.created_at at time zone 'UTC')::date,
                    (select min(e.on_date) from time_entry e where e.person_id = p.id))
                and not exists (select from time_entry e where e.person_id = p.id and e.on_date = d.day::date)
                and not exists (select from day_mark m where m.person_id = p.id and m.on_date = d.day::date)
                and not exists (select from work_week w where w.person_id = p.id and w.state in ('approved', 'locked')
                    and d.day::date between w.monday and w.monday + 6)
            order by 1""";
    private static final String CURING = """
            select w.what, w.ends_at, t.name, p.name as piece_name, j.number
            from wait w
            join task t on t.id = w.task_id
            join job j on j.id = w.job_id
            left join piece p on p.id = t.piece_id
            where w.ended_at is null and w.ends_at > ? and w.started_at <= ? and j.state not in ('closed', 'lost')
            order by w.ends_at, w.id limit 12""";

    private final JdbcClient jdbc;
    private final JdbcTemplate batch;
    private final Entries entries;
    private final Places places;
    private final LooseEnds looseEnds;
    private final Habits habits;
    private final ShopClock clock;

    DayReads(
            JdbcClient jdbc,
            JdbcTemplate batch,
            Entries entries,
            Places places,
            LooseEnds looseEnds,
            Habits habits,
            ShopClock clock) {
        this.jdbc = jdbc;
        this.batch = batch;
        this.entries = entries;
        this.places = places;
        this.looseEnds = looseEnds;
        this.habits = habits;
        this.clock = clock;
    }

    public List<Entry> entries(UUID person, LocalDate date) {
        return entries.ofDay(person, date);
    }

    public Optional<Entry> entry(UUID id) {
        return entries.find(id);
    }

    /** What is unlikely about a day as it is kept and was not answered yet. */
    public List<Question> open(UUID person, LocalDate date, LocalDate today, List<Entry> kept, Set<String> answers) {
        return Stream.concat(DayChecks.ofKept(date, today, kept).stream(), looseEnds.of(person, date).stream())
                .filter(question -> !answers.contains(question.key()))
                .toList();
    }

    public List<LikelyTask> likely(UUID person, LocalDate date) {
        Instant now = clock.now();
        Instant endOfDay = date.plusDays(1).atStartOfDay(clock.zone()).toInstant();
        return habits.likely(person, date, now.isBefore(endOfDay) ? now : endOfDay);
    }

    /** Names of the catalogue's task kinds, each with itself; that of a merged kind with the one that it is counted as. */
    public Map<String, String> kindNames() {
        Map<String, String> names = new LinkedHashMap<>();
        jdbc.sql("""
                        select k.name as said, n.name as now from task_kind k
                        join task_kind n on n.id = coalesce(k.merged_into, k.id) where n.active order by k.name""").query(row -> {
            names.put(row.getString("said"), row.getString("now"));
        });
        return names;
    }

    /** Open tasks of running jobs, at most so many and one more when there are more. */
    public List<Place> openTasks(int most) {
        return places.openTasks(most + 1);
    }

    public List<Place> openJobs() {
        return places.jobs(false, 40);
    }

    public List<Place> closedJobs() {
        return places.jobs(true, 40);
    }

    public java.util.Map<Target, Place> places(java.util.Collection<Target> targets) {
        return places.of(targets);
    }

    /** Why a person did not work that day. */
    public record Mark(String kind, String note, int version) {}

    /** The mark of a day, if any, the questions about it that were answered, and how far its week has come. */
    public record Facts(@Nullable Mark mark, Set<String> answers, WeekState week) {}

    /** Weekdays of a stretch that a person neither logged nor marked, since the first day, in weeks that are still open. */
    public List<LocalDate> missing(UUID person, LocalDate from, LocalDate to) {
        return jdbc.sql(MISSING)
                .param("person", person)
                .param("from", from)
                .param("to", to)
                .query(LocalDate.class)
                .list();
    }

    public Facts facts(UUID person, LocalDate date) {
        return jdbc.sql(FACTS)
                .params(person, date)
                .query((row, n) -> {
                    String kind = row.getString("kind");
                    String answers = row.getString("answers");
                    return new Facts(
                            kind == null ? null : new Mark(kind, row.getString("note"), row.getInt("version")),
                            answers == null
                                    ? Set.of()
                                    : Stream.of(answers.split("\n")).collect(Collectors.toSet()),
                            WeekState.of(row.getString("week")));
                })
                .single();
    }

    Set<String> answers(UUID person, LocalDate date) {
        return facts(person, date).answers();
    }

    void keepAnswers(UUID person, LocalDate date, List<String> questions, UUID by, Instant at) {
        if (!questions.isEmpty()) {
            batch.batchUpdate(
                    """
                    insert into day_answer (id, person_id, on_date, question, answer, answered_by, answered_at)
                    values (?, ?, ?, ?, 'it is right', ?, ?) on conflict on constraint day_answer_once do nothing""",
                    questions.stream()
                            .map(q -> new Object[] {Ids.next(), person, date, q, by, Timestamp.from(at)})
                            .toList());
        }
    }

    /** Something that sets by itself, and until when. */
    public record Curing(String number, String name, String what, Instant until) {}

    public List<Curing> curing(Instant now) {
        return jdbc.sql(CURING)
                .params(Timestamp.from(now), Timestamp.from(now))
                .query((row, n) -> {
                    String piece = row.getString("piece_name");
                    return new Curing(
                            row.getString("number"),
                            row.getString("name") + (piece == null ? "" : ", " + piece),
                            row.getString("what"),
                            row.getTimestamp("ends_at").toInstant());
                })
                .list();
    }

    Optional<DayLog.Removed> deleted(UUID id) {
        return jdbc.sql("""
                        select d.id, d.person_id, d.on_date, coalesce((select (a.before ->> 'version')::int from audit_entry a
                            where a.subject = 'time_entry' and a.subject_id = d.id::text and a.act = 'delete'
                            order by a.id desc limit 1), 0) as version
                        from deleted_time_entry d where d.id = ?""")
                .param(id)
                .query((row, n) -> new DayLog.Removed(
                        row.getObject("id", UUID.class),
                        row.getObject("person_id", UUID.class),
                        row.getObject("on_date", LocalDate.class),
                        row.getInt("version")))
                .optional();
    }
}
