package org.tallywright.sharing;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Reads what a client may see of a job, and nothing else: no query here touches hours, cost or people. */
@Component
@Transactional(readOnly = true)
public class ClientPage {
    private final JdbcClient jdbc;

    ClientPage(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public Job job(UUID job) {
        return jdbc.sql("""
                        select j.number, j.title, c.name as client_name, s.address, j.promised_on, j.state, j.closed_on
                        from job j join client c on c.id = j.client_id join site s on s.id = j.site_id where j.id = ?""").param(job).query(Job.class).single();
    }

    /** The job's stages in order, without those it skips. */
    public List<Stage> stages(UUID job) {
        return jdbc.sql("""
                        select s.name, case when js.done_on is not null then 'done' when js.entered_on is not null then 'entered'
                            else 'ahead' end as state, js.entered_on, js.done_on
                        from job_stage js join stage s on s.id = js.stage_id
                        where js.job_id = ? and not js.skipped order by s.position""").param(job).query(Stage.class).list();
    }

    /** @param all the owner reads hidden ones too */
    public List<Note> notes(UUID job, boolean all) {
        return jdbc.sql("""
                        select id, on_date, text, shown from client_note
                        where job_id = ? and (shown or ?) order by on_date desc, id desc""").params(job, all).query(Note.class).list();
    }

    public @Nullable Visit visit(UUID job) {
        return jdbc.sql("select from_date, to_date, note, version from next_visit where job_id = ?")
                .param(job)
                .query(Visit.class)
                .optional()
                .orElse(null);
    }

    /** Items of the punch list that are done or open, without who raised them. */
    public List<PunchItem> punchList(UUID job) {
        return jdbc.sql("""
                        select p.text, coalesce(i.name, '') as piece, p.done_on, p.signed_off_on
                        from punch_item p left join piece i on i.id = p.piece_id
                        where p.job_id = ? order by p.signed_off_on nulls first, p.raised_on, p.id""").param(job).query(PunchItem.class).list();
    }

    public record Job(
            String number,
            String title,
            String clientName,
            String address,
            @Nullable LocalDate promisedOn,
            String state,
            @Nullable LocalDate closedOn) {}

    public record Stage(
            String name,
            String state,
            @Nullable LocalDate enteredOn,
            @Nullable LocalDate doneOn) {}

    public record Note(UUID id, LocalDate onDate, String text, boolean shown) {}

    public record Visit(LocalDate fromDate, LocalDate toDate, String note, int version) {}

    public record PunchItem(
            String text,
            String piece,
            @Nullable LocalDate doneOn,
            @Nullable LocalDate signedOffOn) {}
}
