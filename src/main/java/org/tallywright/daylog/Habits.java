package org.tallywright.daylog;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.tallywright.daylog.LikelyTask.Why;
import org.tallywright.shared.ShopAccount;

/**
 * What a person is likely to have worked on that day, by a rule that a page can say in a sentence: what is planned for the
 * day, what the person worked on the last day, what was waiting and is ready, what the person often logs on that weekday,
 * then what is left over, the person's own or under way. The numbers in it are common practice, no source.
 *
 * <p>Candidates and their details are two plain queries: planning one that joined everything took longer than running it.
 */
@Repository
class Habits {
    private static final int MOST = 8;
    private static final int MOST_CANDIDATES = 24;
    /** Days of the same weekday among the last six that make a habit. */
    private static final int HABIT = 2;

    private static final String CANDIDATES = """
            select id as task_id, null::uuid as job_id, null as account, case when planned_on = :date then 'PLANNED' else 'LEFT_OVER' end as why,
                planned_on as last_on, null::date as worked_on, 0 as same_days
            from task where state in ('planned', 'started') and planned_on between :date::date - 14 and :date
                and (assigned_to is null or assigned_to = :person)
            union all
            select id, null, null, 'YOURS', null, null, 0
            from task where state in ('planned', 'started') and assigned_to = :person
            union all
            (select t.id, null, null, 'READY', coalesce(w.ended_at, w.ends_at)::date, null, 0
            from wait w
            join task done on done.id = w.task_id
            join task t on t.job_id = w.job_id and t.piece_id is not distinct from done.piece_id
            where (w.ended_at is null and w.ends_at between :since and :until or w.ended_at between :since and :until)
                and t.state in ('planned', 'started') and t.position > done.position
                and (t.assigned_to is null or t.assigned_to = :person)
            order by coalesce(w.ended_at, w.ends_at), t.position limit 6)
            union all
            (select id, null, null, 'UNDER_WAY', null, null, 0
            from task where state = 'started' and started_on <= :date and assigned_to is null
            order by started_on desc, id limit 40)
            union all
            select e.task_id, case when e.task_id is null then e.job_id end, e.account, 'RECENT', max(e.on_date),
                max(e.on_date) filter (where e.on_date < :date),
                (count(distinct e.on_date) filter (where extract(isodow from e.on_date) = extract(isodow from :date::date)
                    and e.on_date < :date))::int
            from time_entry e left join task t on t.id = e.task_id
            where e.person_id = :person and e.on_date between :date::date - 42 and :date
                and (t.id is null or t.state in ('planned', 'started') or t.state = 'done' and t.done_on >= :date)
            group by e.task_id, case when e.task_id is null then e.job_id end, e.account""";

    private static final String SO_FAR = """
            select task_id, sum(minutes)::int as minutes from time_entry
            where task_id = any(:tasks::uuid[]) and person_id = :person group by task_id""";

    private final JdbcClient jdbc;
    private final Places places;

    Habits(JdbcClient jdbc, Places places) {
        this.jdbc = jdbc;
        this.places = places;
    }

    private record Candidate(
            Target target,
            Why why,
            @Nullable LocalDate lastOn,
            @Nullable LocalDate workedOn,
            int sameDays) {}

    /** @param until what waits ended before that, at most three days ago, counts as ready */
    List<LikelyTask> likely(UUID person, LocalDate date, Instant until) {
        List<Candidate> found = jdbc.sql(CANDIDATES)
                .param("person", person)
                .param("date", date)
                .param("since", Timestamp.from(until.minusSeconds(3 * 86_400L)))
                .param("until", Timestamp.from(until))
                .query(Habits::read)
                .list();
        List<Candidate> ranked = ranked(found, date);
        List<Target> targets = ranked.stream().map(Candidate::target).toList();
        Map<Target, Place> known = places.of(targets);
        Map<UUID, Integer> soFar = soFar(person, targets);
        return ranked.stream()
                .filter(one -> open(known.get(one.target())))
                .limit(MOST)
                .map(one -> new LikelyTask(
                        known.getOrDefault(one.target(), Place.ofShop(ShopAccount.MAINTENANCE)),
                        one.target().taskId() == null
                                ? 0
                                : soFar.getOrDefault(one.target().taskId(), 0),
                        one.why(),
                        one.lastOn()))
                .toList();
    }

    private static boolean open(@Nullable Place place) {
        return place != null && !place.closed() && !place.lost();
    }

    /** Each thing once, for its best reason; ties by the day it is about, latest first, then in one order for all time. */
    private static List<Candidate> ranked(List<Candidate> found, LocalDate date) {
        LocalDate lastDay = found.stream()
                .map(Candidate::workedOn)
                .filter(day -> day != null)
                .max(Comparator.naturalOrder())
                .orElse(LocalDate.MIN);
        Map<Target, Candidate> best = new HashMap<>();
        for (Candidate one : found) {
            Candidate judged = judged(one, lastDay, date);
            if (judged != null) {
                best.merge(one.target(), judged, (a, b) -> ORDER.compare(a, b) <= 0 ? a : b);
            }
        }
        List<Candidate> ranked = new ArrayList<>(best.values());
        ranked.sort(ORDER);
        return ranked.subList(0, Math.min(ranked.size(), MOST_CANDIDATES));
    }

    private static final Comparator<Candidate> ORDER = Comparator.comparing(Candidate::why)
            .thenComparing(one -> one.lastOn() == null ? LocalDate.MIN : one.lastOn(), Comparator.reverseOrder())
            .thenComparing(one -> one.target().code());

    /** What was logged before becomes the last day's work, a habit of the weekday, or recent work; else it is no reason. */
    private static @Nullable Candidate judged(Candidate one, LocalDate lastDay, LocalDate date) {
        if (one.why() != Why.RECENT) {
            return one;
        }
        boolean task = one.target().taskId() != null;
        LocalDate worked = one.workedOn();
        if (task && lastDay.equals(worked)) {
            return new Candidate(one.target(), Why.LAST_DAY, worked, worked, one.sameDays());
        }
        if (one.sameDays() >= HABIT) {
            return new Candidate(one.target(), Why.WEEKDAY, one.lastOn(), worked, one.sameDays());
        }
        LocalDate last = one.lastOn();
        return task && last != null && !last.isBefore(date.minusDays(10)) ? one : null;
    }

    private Map<UUID, Integer> soFar(UUID person, List<Target> targets) {
        List<UUID> tasks = new ArrayList<>();
        for (Target target : targets) {
            if (target.taskId() != null) {
                tasks.add(target.taskId());
            }
        }
        Map<UUID, Integer> minutes = new HashMap<>();
        jdbc.sql(SO_FAR)
                .param("tasks", Columns.ids(tasks))
                .param("person", person)
                .query(row -> {
                    minutes.put(row.getObject("task_id", UUID.class), row.getInt("minutes"));
                });
        return minutes;
    }

    private static Candidate read(ResultSet row, int n) throws SQLException {
        String account = row.getString("account");
        return new Candidate(
                new Target(
                        row.getObject("task_id", UUID.class),
                        row.getObject("job_id", UUID.class),
                        account == null ? null : ShopAccount.of(account)),
                Why.valueOf(row.getString("why")),
                row.getObject("last_on", LocalDate.class),
                row.getObject("worked_on", LocalDate.class),
                row.getInt("same_days"));
    }
}
