-- The clock beside the day sheet: when a person began and left off. A run is no hours; hours are the entry it is put in as.
create table clock_run (
    id           uuid primary key,
    person_id    uuid not null constraint clock_run_person_fk references person (id),
    -- The shop's date when it began; what it comes to is offered on this day.
    on_date      date not null,
    job_id       uuid constraint clock_run_job_fk references job (id),
    task_id      uuid,
    account      text constraint clock_run_account_known check (account in ('maintenance', 'selling', 'lost bids')),
    hour_class   text not null constraint clock_run_hour_class_known check (hour_class in
        ('direct', 'set-up', 'rework', 'call-back', 'travel', 'supply run', 'standby', 'clean-up', 'office')),
    started_at   timestamptz not null,
    -- When the person last said that it runs rightly: at the start, then with each "still at it".
    confirmed_at timestamptz not null,
    ended_at     timestamptz,
    -- Whether the end is what the person said. A forgotten clock that was cut off by another start is not, until he says.
    end_known    boolean not null default false,
    -- The entry it was put in as; when that is taken off its day, the run is free again.
    entry_id     uuid constraint clock_run_entry_fk references time_entry (id) on delete set null,
    -- The id of that entry, kept when it is taken off, so that an entry brought back has its runs again.
    taken_as     uuid,
    dropped_at   timestamptz,
    constraint clock_run_on_job_or_account check ((job_id is null) <> (account is null)),
    constraint clock_run_task_needs_job check (task_id is null or job_id is not null),
    constraint clock_run_task_of_job_fk foreign key (task_id, job_id) references task (id, job_id),
    constraint clock_run_ends_after_start check (ended_at is null or ended_at >= started_at),
    constraint clock_run_confirmed_while_it_ran check (confirmed_at >= started_at),
    constraint clock_run_known_end check (not end_known or ended_at is not null),
    constraint clock_run_taken_when_ended check (entry_id is null or (end_known and taken_as is not null and dropped_at is null)),
    constraint clock_run_dropped_when_ended check (dropped_at is null or ended_at is not null),
    -- A run without an end reaches into all that comes, so this alone allows one at most.
    constraint clock_run_no_overlap exclude using gist (
        person_id with =,
        tstzrange(started_at, ended_at) with &&)
);
create unique index clock_run_one_runs on clock_run (person_id) where ended_at is null;
create index clock_run_open_idx on clock_run (person_id, started_at) where entry_id is null and dropped_at is null;
create index clock_run_entry_idx on clock_run (entry_id) where entry_id is not null;
create index clock_run_taken_idx on clock_run (taken_as) where taken_as is not null;
create trigger clock_run_audit after insert or update or delete on clock_run for each row execute function write_audit_entry();
