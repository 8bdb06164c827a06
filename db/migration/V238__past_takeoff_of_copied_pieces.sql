-- What somebody had typed of the takeoff of a copied piece when it came, so that what is typed afterwards is told from it and
-- is not deleted with the copy.
alter table past_copy_line
    -- Of a piece: its answers as they came, one "name = value" a line; empty for all else.
    add answers text not null default '' constraint past_copy_line_answers_length check (length(answers) <= 8000),
    add constraint past_copy_line_answers_of_piece check (answers = '' or piece_id is not null);

-- Of copies made before this was kept, what is answered now counts as what came; their parts by hand count as listed since.
select set_config('tallywright.person', 'shop', true), set_config('tallywright.at', now()::text, true);
update past_copy_line l set answers = t.answers from piece_takeoff t where t.id = l.piece_id;

-- A part listed or changed by hand that came in by a copy; goes with the part itself.
alter table part add constraint part_of_job_key unique (id, job_id);
create table past_copy_part (
    -- The part.
    id           uuid primary key,
    copy_id      uuid not null,
    job_id       uuid not null,
    -- The part's as it came; a later one was changed here.
    part_version int not null,
    constraint past_copy_part_part_fk foreign key (id, job_id) references part (id, job_id) on delete cascade,
    constraint past_copy_part_copy_fk foreign key (copy_id, job_id) references past_copy (id, job_id) on delete cascade
);
create index past_copy_part_part_idx on past_copy_part (id, job_id);
create index past_copy_part_copy_idx on past_copy_part (copy_id, job_id);
create trigger past_copy_part_audit after insert or update or delete on past_copy_part
    for each row execute function write_audit_entry();
