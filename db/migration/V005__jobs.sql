-- A job from measure to close: pieces, measures, tasks, waits, punch list, and the dated record of what changed.
create table job (
    id           uuid primary key,
    year         int not null constraint job_year_in_range check (year between 2000 and 2199),
    sequence     int not null constraint job_sequence_positive check (sequence between 1 and 9999),
    -- 26-014: year and sequence.
    number       text not null constraint job_number_key unique,
    client_id    uuid not null constraint job_client_fk references client (id),
    site_id      uuid not null,
    title        text not null constraint job_title_given check (length(btrim(title)) between 1 and 160),
    state        text not null constraint job_state_known check (state in ('lead', 'bidding', 'running', 'closed', 'lost')),
    opened_on    date not null,
    accepted_on  date,
    promised_on  date,
    closed_on    date,
    -- Internal: never shown to helper, bookkeeper or client.
    note         text not null default '',
    version      int not null,
    constraint job_year_sequence_key unique (year, sequence),
    constraint job_number_form check (number = lpad((year % 100)::text, 2, '0') || '-' || lpad(sequence::text, greatest(3, length(sequence::text)), '0')),
    constraint job_site_of_client_fk foreign key (site_id, client_id) references site (id, client_id),
    constraint job_closed_has_date check ((state = 'closed') = (closed_on is not null))
);
create index job_client_idx on job (client_id);
create index job_site_idx on job (site_id);
create index job_state_idx on job (state, opened_on desc);

-- The job's own run through the shop's stages.
create table job_stage (
    job_id     uuid not null constraint job_stage_job_fk references job (id) on delete cascade,
    stage_id   uuid not null constraint job_stage_stage_fk references stage (id),
    skipped    boolean not null default false,
    entered_on date,
    entered_by uuid constraint job_stage_entered_by_fk references person (id),
    done_on    date,
    done_by    uuid constraint job_stage_done_by_fk references person (id),
    version    int not null,
    primary key (job_id, stage_id)
);
create index job_stage_stage_idx on job_stage (stage_id);

create table piece (
    id            uuid primary key,
    job_id        uuid not null constraint piece_job_fk references job (id),
    piece_kind_id uuid constraint piece_piece_kind_fk references piece_kind (id),
    name          text not null constraint piece_name_given check (length(btrim(name)) between 1 and 120),
    -- Lengths are whole units of 3.125 micrometres: 1/64 in = 127, 0.1 mm = 32. Up to 100 m.
    width         bigint constraint piece_width_in_range check (width between 1 and 32000000),
    height        bigint constraint piece_height_in_range check (height between 1 and 32000000),
    depth         bigint constraint piece_depth_in_range check (depth between 1 and 32000000),
    count         int not null default 1 constraint piece_count_in_range check (count between 1 and 999),
    note          text not null default '',
    position      int not null default 0,
    version       int not null,
    constraint piece_of_job_key unique (id, job_id)
);
create index piece_job_idx on piece (job_id);

create table site_measure (
    id          uuid primary key,
    job_id      uuid not null constraint site_measure_job_fk references job (id),
    piece_id    uuid,
    name        text not null constraint site_measure_name_given check (length(btrim(name)) between 1 and 120),
    length      bigint not null constraint site_measure_length_in_range check (length between 0 and 32000000),
    measured_on date not null,
    measured_by uuid constraint site_measure_measured_by_fk references person (id),
    note        text not null default '',
    version     int not null,
    constraint site_measure_piece_of_job_fk foreign key (piece_id, job_id) references piece (id, job_id)
);
create index site_measure_job_idx on site_measure (job_id);

create table task (
    id                  uuid primary key,
    job_id              uuid not null constraint task_job_fk references job (id),
    piece_id            uuid,
    task_kind_id        uuid not null constraint task_task_kind_fk references task_kind (id),
    stage_id            uuid not null constraint task_stage_fk references stage (id),
    name                text not null constraint task_name_given check (length(btrim(name)) between 1 and 120),
    quantity            numeric(14, 4) not null constraint task_quantity_not_negative check (quantity >= 0 and quantity <= 1000000),
    unit                text not null constraint task_unit_known check (unit in
        ('each', 'lf', 'sf', 'bf', 'sheet', 'joint', 'panel', 'part', 'csf', 'trip', 'visit', 'job', 'lm', 'm2', 'm3', 'csm')),
    -- The catalogue's starting rate when the task was made, and the rate that was bid. Learning is against the starting one.
    starting_unit_hours numeric(12, 5) not null constraint task_starting_unit_hours_positive check (starting_unit_hours > 0),
    unit_hours          numeric(12, 5) not null constraint task_unit_hours_positive check (unit_hours > 0 and unit_hours <= 1000),
    -- quantity x unit_hours x 60, to the whole minute.
    estimated_minutes   int not null constraint task_estimated_minutes_in_range check (estimated_minutes between 0 and 10000000),
    state               text not null constraint task_state_known check (state in ('planned', 'started', 'done', 'dropped')),
    planned_on          date,
    assigned_to         uuid constraint task_assigned_to_fk references person (id),
    started_on          date,
    done_on             date,
    done_by             uuid constraint task_done_by_fk references person (id),
    quantity_done       numeric(14, 4) constraint task_quantity_done_not_negative check (quantity_done >= 0),
    quantity_confirmed  boolean not null default false,
    -- Dropped because it was not needed after all: unlike a task nobody logged on.
    never_needed        boolean not null default false,
    position            int not null default 0,
    version             int not null,
    constraint task_of_job_key unique (id, job_id),
    constraint task_piece_of_job_fk foreign key (piece_id, job_id) references piece (id, job_id),
    constraint task_done_has_date check ((state = 'done') = (done_on is not null)),
    constraint task_never_needed_is_dropped check (not never_needed or state = 'dropped')
);
create index task_job_idx on task (job_id);
create index task_kind_idx on task (task_kind_id);
create index task_planned_idx on task (planned_on) where state in ('planned', 'started');

create table wait (
    id         uuid primary key,
    job_id     uuid not null constraint wait_job_fk references job (id),
    task_id    uuid not null,
    position   int not null default 1,
    what       text not null constraint wait_what_given check (length(btrim(what)) between 1 and 120),
    started_at timestamptz not null,
    minutes    int not null constraint wait_minutes_in_range check (minutes between 1 and 525600),
    ends_at    timestamptz not null,
    -- Ended by hand, earlier or later than the catalogue said.
    ended_at   timestamptz,
    started_by uuid constraint wait_started_by_fk references person (id),
    version    int not null,
    constraint wait_task_of_job_fk foreign key (task_id, job_id) references task (id, job_id),
    constraint wait_ends_after_start check (ends_at > started_at)
);
create index wait_job_idx on wait (job_id);
create index wait_ends_idx on wait (ends_at) where ended_at is null;

create table punch_item (
    id            uuid primary key,
    job_id        uuid not null constraint punch_item_job_fk references job (id),
    piece_id      uuid,
    text          text not null constraint punch_item_text_given check (length(btrim(text)) between 1 and 300),
    raised_on     date not null,
    raised_by     uuid constraint punch_item_raised_by_fk references person (id),
    done_on       date,
    done_by       uuid constraint punch_item_done_by_fk references person (id),
    signed_off_on date,
    signed_off_by text not null default '',
    version       int not null,
    constraint punch_item_piece_of_job_fk foreign key (piece_id, job_id) references piece (id, job_id),
    constraint punch_item_signed_off_is_done check (signed_off_on is null or done_on is not null)
);
create index punch_item_job_idx on punch_item (job_id);

-- Stage, task and job state changes, dated and named.
create table job_event (
    id         uuid primary key,
    job_id     uuid not null constraint job_event_job_fk references job (id),
    task_id    uuid,
    stage_id   uuid constraint job_event_stage_fk references stage (id),
    kind       text not null constraint job_event_kind_known check (kind in ('job', 'stage', 'task', 'walk-through')),
    from_state text not null default '',
    to_state   text not null,
    on_date    date not null,
    at         timestamptz not null,
    person_id  uuid constraint job_event_person_fk references person (id),
    note       text not null default '',
    constraint job_event_task_of_job_fk foreign key (task_id, job_id) references task (id, job_id)
);
create index job_event_job_idx on job_event (job_id, at);
