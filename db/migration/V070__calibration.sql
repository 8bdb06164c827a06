-- What the shop's own past says about hours. Finished tasks are read from jobs and time entries; only what is not there
-- already is kept here.

-- One calibration each. It keeps what it learnt from, so that it can be used again as it was.
create table calibration (
    id          uuid primary key,
    asked_at    timestamptz not null,
    state       text not null constraint calibration_state_known check (state in ('asked', 'running', 'done', 'failed')),
    -- Why it was asked for, and how far it is, in words.
    why         text not null,
    step        text not null default '',
    started_at  timestamptz,
    made_at     timestamptz,
    -- SHA-256 of what it learnt from; the same data make no new calibration.
    fingerprint text not null default '',
    current     boolean not null default false,
    past        jsonb,
    figures     jsonb,
    record      jsonb,
    constraint calibration_done_is_whole check (state <> 'done'
        or (made_at is not null and past is not null and figures is not null and record is not null)),
    constraint calibration_current_is_done check (not current or state = 'done')
);
create unique index calibration_one_asked on calibration (state) where state = 'asked';
create unique index calibration_one_current on calibration (current) where current;
create index calibration_made_idx on calibration (made_at desc);

-- A job that nothing is learnt from, and why. The key is the job's id, or import:batch:job for an imported one.
create table job_left_out (
    id      uuid primary key,
    job_key text not null constraint job_left_out_job_key unique,
    reason  text not null constraint job_left_out_reason_given check (length(btrim(reason)) between 1 and 300),
    left_by uuid not null constraint job_left_out_by_fk references person (id),
    left_at timestamptz not null
);
create trigger job_left_out_audit after insert or update or delete on job_left_out
    for each row execute function write_audit_entry();

-- Finished work from before the shop kept its hours here, as it came in a file.
create table past_import (
    id          uuid primary key,
    file_name   text not null,
    imported_by uuid not null constraint past_import_by_fk references person (id),
    imported_at timestamptz not null
);
create trigger past_import_audit after insert or update or delete on past_import
    for each row execute function write_audit_entry();

create table past_task (
    id             uuid primary key,
    past_import_id uuid not null constraint past_task_import_fk references past_import (id) on delete cascade,
    line           int not null,
    job            text not null,
    task_kind_id   uuid not null constraint past_task_kind_fk references task_kind (id),
    -- In the kind's unit; where the file gave none, estimated hours / the starting rate of the day of the import.
    quantity       numeric(14, 4) not null constraint past_task_quantity_positive check (quantity > 0),
    estimated_minutes int constraint past_task_estimate_positive check (estimated_minutes > 0),
    actual_minutes int not null constraint past_task_actual_positive check (actual_minutes > 0),
    started_on     date,
    done_on        date not null,
    person_id      uuid constraint past_task_person_fk references person (id)
);
create index past_task_import_idx on past_task (past_import_id);
create index past_task_kind_idx on past_task (task_kind_id);
create index past_task_person_idx on past_task (person_id);

-- What was said of a bid's hours on the day it was issued; never changed.
create table bid_forecast (
    bid_id         uuid primary key constraint bid_forecast_bid_fk references bid (id),
    job_id         uuid not null constraint bid_forecast_job_fk references job (id),
    calibration_id uuid,
    made_at        timestamptz not null,
    seed           bigint not null,
    -- Four times in five under it: 80; null: the named percentage was used.
    confidence     int,
    -- 200 ascending quantiles of all person-hours, before and after the shop's own record widened them.
    unwidened      double precision[] not null,
    hours          double precision[] not null
);
create index bid_forecast_job_idx on bid_forecast (job_id);

-- The confidence a job's price is made at; no row: the named percentage of the estimate.
create table price_confidence (
    id      uuid primary key constraint price_confidence_job_fk references job (id),
    percent int not null constraint price_confidence_known check (percent in (50, 80, 90))
);
create trigger price_confidence_audit after insert or update or delete on price_confidence
    for each row execute function write_audit_entry();
