-- A person's week, Monday to Sunday, from the day it is handed in. A week without a row is open.
create table work_week (
    person_id    uuid not null constraint work_week_person_fk references person (id),
    monday       date not null constraint work_week_starts_on_monday check (extract(isodow from monday) = 1),
    state        text not null constraint work_week_state_known check (state in ('open', 'submitted', 'approved', 'locked')),
    submitted_by uuid constraint work_week_submitted_by_fk references person (id),
    submitted_at timestamptz,
    approved_by  uuid constraint work_week_approved_by_fk references person (id),
    approved_at  timestamptz,
    locked_by    uuid constraint work_week_locked_by_fk references person (id),
    locked_at    timestamptz,
    -- What the week came to when it was approved; corrections after the lock are beside it.
    minutes      int,
    -- Why it was sent back.
    note         text not null default '' constraint work_week_note_length check (length(note) <= 300),
    version      int not null,
    primary key (person_id, monday),
    constraint work_week_approved_is_whole check (state not in ('approved', 'locked')
        or (approved_by is not null and approved_at is not null and minutes is not null)),
    constraint work_week_locked_is_whole check (state <> 'locked' or (locked_by is not null and locked_at is not null))
);
create trigger work_week_audit after insert or update or delete on work_week for each row execute function write_audit_entry();

-- A correction of a locked week: minutes more or less on a day, dated by logged_at, with the reason in `reason`. It is a time
-- entry, so that every sum of hours holds it.
alter table time_entry add column correction boolean not null default false;
alter table time_entry drop constraint time_entry_minutes_in_range;
alter table time_entry add constraint time_entry_minutes_in_range check (
    case when correction then minutes between -1440 and 1440 and minutes <> 0 else minutes between 1 and 1440 end);
alter table time_entry add constraint time_entry_correction_has_reason check (not correction or length(btrim(reason)) > 0);
alter table time_entry add constraint time_entry_correction_has_no_times check (not correction or starts_at is null);

-- The state of the week that a day is in. The lock is the one of a day's save: who changes the day and who approves or locks
-- its week wait for each other, so that what was approved is what is there.
create function hold_day_of_week(person uuid, day date) returns text language plpgsql as $$
declare
    found text;
begin
    perform pg_advisory_xact_lock(hashtext(person::text), day - date '2000-01-01');
    select state into found from work_week
        where person_id = person and monday = day - (extract(isodow from day)::int - 1);
    return coalesce(found, 'open');
end $$;

create function keep_fixed_hours() returns trigger language plpgsql as $$
declare
    week text;
    left_over int;
begin
    if tg_op <> 'INSERT' and hold_day_of_week(old.person_id, old.on_date) in ('approved', 'locked') then
        raise exception 'the week of % is approved or locked', old.on_date using errcode = 'TW005';
    end if;
    if tg_op = 'DELETE' then
        return old;
    end if;
    week := hold_day_of_week(new.person_id, new.on_date);
    if new.correction then
        if tg_op <> 'INSERT' or week <> 'locked' then
            raise exception 'only a locked week is corrected' using errcode = 'TW006';
        end if;
        select coalesce(sum(minutes), 0) + new.minutes into left_over from time_entry
            where person_id = new.person_id and on_date = new.on_date and hour_class = new.hour_class
                and job_id is not distinct from new.job_id and task_id is not distinct from new.task_id
                and account is not distinct from new.account;
        if left_over < 0 then
            raise exception 'a correction takes no more than is there' using errcode = 'TW006';
        end if;
    elsif week in ('approved', 'locked') then
        raise exception 'the week of % is approved or locked', new.on_date using errcode = 'TW005';
    end if;
    return new;
end $$;
create trigger time_entry_fixed_week before insert or update or delete on time_entry
    for each row execute function keep_fixed_hours();

create function keep_fixed_marks() returns trigger language plpgsql as $$
begin
    if tg_op <> 'INSERT' and hold_day_of_week(old.person_id, old.on_date) in ('approved', 'locked') then
        raise exception 'the week of % is approved or locked', old.on_date using errcode = 'TW005';
    end if;
    if tg_op = 'DELETE' then
        return old;
    end if;
    if hold_day_of_week(new.person_id, new.on_date) in ('approved', 'locked') then
        raise exception 'the week of % is approved or locked', new.on_date using errcode = 'TW005';
    end if;
    return new;
end $$;
create trigger day_mark_fixed_week before insert or update or delete on day_mark
    for each row execute function keep_fixed_marks();

-- A locked week stays locked.
create function keep_locked_week() returns trigger language plpgsql as $$
begin
    if tg_op <> 'INSERT' and old.state = 'locked' then
        raise exception 'the week of % is locked', old.monday using errcode = 'TW005';
    end if;
    if tg_op = 'DELETE' then
        return old;
    end if;
    for day in 0..6 loop
        perform pg_advisory_xact_lock(hashtext(new.person_id::text), new.monday + day - date '2000-01-01');
    end loop;
    return new;
end $$;
create trigger work_week_locked before insert or update or delete on work_week
    for each row execute function keep_locked_week();
