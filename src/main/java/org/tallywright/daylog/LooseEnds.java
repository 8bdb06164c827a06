package org.tallywright.daylog;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/**
 * Tasks and hours that do not fit together: a task that was finished without an hour on it, and hours on a task whose
 * state says something else. Each is asked on the day it is about.
 */
@Repository
class LooseEnds {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);
    private static final String QUESTIONS = """
            select 'no hours' as what, t.id, t.name || coalesce(', ' || p.name, '') as name, j.number, t.done_on as on_date
            from task t join job j on j.id = t.job_id left join piece p on p.id = t.piece_id
            where t.done_on = :date and t.done_by = :person and j.state <> 'lost'
                and not exists (select from time_entry e where e.task_id = t.id)
            union all
            select case when t.state = 'dropped' then 'dropped' when t.state in ('planned', 'offered') then 'not begun' else 'done before' end,
                t.id, t.name || coalesce(', ' || p.name, ''), j.number, t.done_on
            from task t join job j on j.id = t.job_id left join piece p on p.id = t.piece_id
            where t.id in (select e.task_id from time_entry e where e.person_id = :person and e.on_date = :date
                    and e.task_id is not null and e.hour_class not in ('rework', 'call-back'))
                and (t.state in ('dropped', 'planned', 'offered') or t.state = 'done' and t.done_on < :date)
            order by 1, 3, 2
            limit 12""";

    private final JdbcClient jdbc;

    LooseEnds(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Question> of(UUID person, LocalDate date) {
        return jdbc.sql(QUESTIONS)
                .param("person", person)
                .param("date", date)
                .query((row, n) -> question(
                        row.getString("what"),
                        row.getObject("id", UUID.class),
                        row.getString("name") + ", " + row.getString("number"),
                        row.getObject("on_date", LocalDate.class)))
                .list();
    }

    private static Question question(String what, UUID task, String name, LocalDate doneOn) {
        String key = what + " " + task;
        return switch (what) {
            case "no hours" ->
                new Question(
                        key,
                        null,
                        name + " is done, but nobody logged an hour on it. Is it right?",
                        new Question.Offer("Log hours on it", "log:" + task));
            case "dropped" -> new Question(key, null, name + " was dropped, but has hours on this day. Is it right?");
            case "not begun" -> new Question(key, null, name + " has hours, but counts as not begun. Is it right?");
            default ->
                new Question(
                        key,
                        null,
                        name + " was done on " + DAY.format(doneOn)
                                + " already. If it was done over, log it as rework. Is it right?");
        };
    }
}
