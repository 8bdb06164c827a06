-- What was copied, as one id that follows from all of it: the same copy sent again is a repeat, another one under its id is not.
-- Null for copies that were made before this was kept.
alter table past_copy add column content uuid;

-- Copies that were taken out, so that an old page does not put one back unasked.
create table past_copy_taken_out (
    id     uuid primary key,
    job_id uuid not null constraint past_copy_taken_out_job_fk references job (id)
);
create index past_copy_taken_out_job_idx on past_copy_taken_out (job_id);

create trigger past_copy_taken_out_audit after insert or update or delete on past_copy_taken_out
    for each row execute function write_audit_entry();
