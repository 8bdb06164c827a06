-- The day sheet offers the open tasks of running jobs. Planned tasks of lost jobs pile up over the years and were read each time.
create index task_open_of_job_idx on task (job_id) where state in ('planned', 'started');
