-- An offcut that a job's buy list uses may be held for it, so that no other job counts on it.
create table offcut_hold (
    -- The offcut; held for one job at most.
    id      uuid primary key constraint offcut_hold_offcut_fk references offcut (id) on delete cascade,
    job_id  uuid not null constraint offcut_hold_job_fk references job (id),
    held_on date not null,
    held_by uuid constraint offcut_hold_by_fk references person (id),
    version int not null
);
create index offcut_hold_job_idx on offcut_hold (job_id);
create index offcut_hold_by_idx on offcut_hold (held_by);
create trigger offcut_hold_audit after insert or update or delete on offcut_hold for each row execute function write_audit_entry();
