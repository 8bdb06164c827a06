-- What one press copied from a piece or a job of the past into a job that is being estimated. The id is made by the page.
create table past_copy (
    id            uuid primary key,
    job_id        uuid not null constraint past_copy_job_fk references job (id),
    from_job_id   uuid not null constraint past_copy_from_job_fk references job (id),
    -- Null for a whole job, and once the piece there is gone.
    from_piece_id uuid,
    -- Where it comes from in words of that day: "25-007, Bookcase".
    what          text not null constraint past_copy_what_given check (length(btrim(what)) between 1 and 300),
    copied_on     date not null,
    copied_by     uuid not null constraint past_copy_copied_by_fk references person (id),
    constraint past_copy_of_job_key unique (id, job_id),
    constraint past_copy_from_another_job check (job_id <> from_job_id),
    constraint past_copy_from_piece_fk foreign key (from_piece_id, from_job_id) references piece (id, job_id)
        on delete set null (from_piece_id)
);
create index past_copy_job_idx on past_copy (job_id, id);
create index past_copy_from_piece_idx on past_copy (from_piece_id, from_job_id);

-- A piece, task, material line or other cost that came in by it; goes with the thing itself.
create table past_copy_line (
    copy_id              uuid not null,
    job_id               uuid not null,
    piece_id             uuid,
    task_id              uuid,
    estimate_material_id uuid,
    estimate_other_id    uuid,
    id                   uuid generated always as (coalesce(piece_id, task_id, estimate_material_id, estimate_other_id)) stored primary key,
    -- What it was there: "As in 25-007, Bookcase: 14 h 30 there for 22 sf". Hours and quantities, no money.
    origin               text not null constraint past_copy_line_origin_length check (length(origin) <= 500),
    constraint past_copy_line_is_one_thing check (num_nonnulls(piece_id, task_id, estimate_material_id, estimate_other_id) = 1),
    constraint past_copy_line_copy_fk foreign key (copy_id, job_id) references past_copy (id, job_id) on delete cascade,
    constraint past_copy_line_piece_fk foreign key (piece_id, job_id) references piece (id, job_id) on delete cascade,
    constraint past_copy_line_task_fk foreign key (task_id, job_id) references task (id, job_id) on delete cascade,
    constraint past_copy_line_material_fk foreign key (estimate_material_id, job_id)
        references estimate_material (id, job_id) on delete cascade,
    constraint past_copy_line_other_fk foreign key (estimate_other_id, job_id)
        references estimate_other (id, job_id) on delete cascade
);
create index past_copy_line_copy_idx on past_copy_line (copy_id, job_id);
create index past_copy_line_job_idx on past_copy_line (job_id);

create trigger past_copy_audit after insert or update or delete on past_copy
    for each row execute function write_audit_entry();
create trigger past_copy_line_audit after insert or update or delete on past_copy_line
    for each row execute function write_audit_entry();
