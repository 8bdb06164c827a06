-- Hours: what each person's minutes went into, day by day.
create table time_entry (
    id          uuid primary key,
    person_id   uuid not null constraint time_entry_person_fk references person (id),
    on_date     date not null,
    job_id      uuid constraint time_entry_job_fk references job (id),
    task_id     uuid,
    -- Hours on no job: the shop's own account.
    account     text constraint time_entry_account_known check (account in ('maintenance', 'selling', 'lost bids')),
    hour_class  text not null constraint time_entry_hour_class_known check (hour_class in
        ('direct', 'set-up', 'rework', 'call-back', 'travel', 'supply run', 'standby', 'clean-up', 'office')),
    minutes     int not null constraint time_entry_minutes_in_range check (minutes between 1 and 1440),
    starts_at   time,
    ends_at     time,
    note        text not null default '' constraint time_entry_note_length check (length(note) <= 500),
    reason      text not null default '' constraint time_entry_reason_length check (length(reason) <= 300),
    logged_by   uuid not null constraint time_entry_logged_by_fk references person (id),
    logged_at   timestamptz not null,
    version     int not null,
    constraint time_entry_on_job_or_account check ((job_id is null) <> (account is null)),
    constraint time_entry_task_needs_job check (task_id is null or job_id is not null),
    constraint time_entry_task_of_job_fk foreign key (task_id, job_id) references task (id, job_id),
    constraint time_entry_rework_has_reason check (hour_class <> 'rework' or length(btrim(reason)) > 0),
    constraint time_entry_times_together check ((starts_at is null) = (ends_at is null)),
    -- 24:00 is the end of the day; a time to midnight is entered so.
    constraint time_entry_ends_after_start check (ends_at is null or ends_at > starts_at),
    constraint time_entry_no_overlap exclude using gist (
        person_id with =,
        tsrange(on_date + starts_at, on_date + ends_at) with &&) where (starts_at is not null)
);
create index time_entry_person_day_idx on time_entry (person_id, on_date);
create index time_entry_job_idx on time_entry (job_id, on_date);
create index time_entry_task_idx on time_entry (task_id);

-- A person's day has 24 hours. The advisory lock makes two devices saving the same day wait for each other.
create function keep_day_possible() returns trigger language plpgsql as $$
declare
    total int;
begin
    perform pg_advisory_xact_lock(hashtext(new.person_id::text), new.on_date - date '2000-01-01');
    select sum(minutes) into total from time_entry where person_id = new.person_id and on_date = new.on_date;
    if total > 1440 then
        raise exception 'more than 24 hours on one day' using errcode = 'TW003';
    end if;
    return null;
end $$;
create constraint trigger time_entry_day_possible after insert or update on time_entry
    deferrable initially deferred for each row execute function keep_day_possible();
create trigger time_entry_audit after insert or update or delete on time_entry for each row execute function write_audit_entry();

-- Ids of deleted entries: a late repeat of the save that made one must not bring it back.
create table deleted_time_entry (
    id         uuid primary key,
    person_id  uuid not null constraint deleted_time_entry_person_fk references person (id),
    on_date    date not null,
    deleted_by uuid not null constraint deleted_time_entry_deleted_by_fk references person (id),
    deleted_at timestamptz not null
);

-- An answered question ("it is right") about an unlikely day or entry.
create table day_answer (
    id          uuid primary key,
    person_id   uuid not null constraint day_answer_person_fk references person (id),
    on_date     date not null,
    question    text not null,
    answer      text not null,
    answered_by uuid not null constraint day_answer_answered_by_fk references person (id),
    answered_at timestamptz not null
);
create index day_answer_day_idx on day_answer (person_id, on_date);

-- Days without work on purpose, so that a gap is a gap.
create table day_mark (
    person_id uuid not null constraint day_mark_person_fk references person (id),
    on_date   date not null,
    kind      text not null constraint day_mark_kind_known check (kind in ('leave', 'sick', 'off')),
    note      text not null default '',
    marked_by uuid not null constraint day_mark_marked_by_fk references person (id),
    version   int not null,
    primary key (person_id, on_date)
);
