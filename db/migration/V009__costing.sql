-- The review of a job, frozen when it was closed. A reopened job gets a new row at its next closing.
create table review (
    id        uuid primary key,
    job_id    uuid not null constraint review_job_fk references job (id),
    closed_on date not null,
    closed_at timestamptz not null,
    closed_by uuid not null constraint review_closed_by_fk references person (id),
    figures   jsonb not null,
    lesson    text not null default '',
    version   int not null
);
create index review_job_idx on review (job_id, closed_at desc);
create trigger review_audit after insert or update or delete on review for each row execute function write_audit_entry();
