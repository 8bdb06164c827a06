-- What was said of a running job's hours at the end of a day on which something about it had changed. Written by the shop's own
-- clock, never by looking at a page; never changed.
create table running_forecast (
    id             uuid primary key,
    job_id         uuid not null constraint running_forecast_job_fk references job (id),
    on_date        date not null,
    made_at        timestamptz not null,
    -- Null with jobs_known = 0: the starting rates. Null otherwise: that calibration is no longer kept.
    calibration_id uuid constraint running_forecast_calibration_fk references calibration (id) on delete set null,
    jobs_known     int not null,
    -- Share of the estimated hours that finished tasks held, 0 to 1.
    share_done     double precision not null constraint running_forecast_share_known check (share_done between 0 and 1),
    hours_so_far   double precision not null,
    hours_on_no_line double precision not null,
    -- 25, 50 or 75: the first forecast of the job with about that share done, to be judged when it is closed.
    stage          int constraint running_forecast_stage_known check (stage in (25, 50, 75)),
    -- 200 ascending quantiles: the person-hours still to come before the shop's own record corrected them, and all hours at the end as said.
    unwidened      double precision[] not null,
    at_end         double precision[] not null,
    -- [{"id", "name", "done", "hours"}]: what each task took, or may come to on the mean.
    tasks          jsonb not null,
    constraint running_forecast_day_key unique (job_id, on_date)
);
create unique index running_forecast_stage_key on running_forecast (job_id, stage) where stage is not null;
create index running_forecast_calibration_idx on running_forecast (calibration_id);

-- A calibration that a bid was forecast with is not deleted.
alter table bid_forecast add constraint bid_forecast_calibration_fk foreign key (calibration_id) references calibration (id);
create index bid_forecast_calibration_idx on bid_forecast (calibration_id);
