-- Which line of the formulas a part comes from, so that taking off again neither doubles a changed part nor restores a removed one.
alter table part
    -- Name of the line, with its number where several share the name; empty for a part listed by hand.
    add rule text not null default '' constraint part_rule_length check (length(rule) <= 140);

select set_config('tallywright.person', 'shop', true), set_config('tallywright.at', now()::text, true);
update part p set rule = k.rule
from (
    select id, name || case when n = 1 then '' else ' #' || n end as rule
    from (select id, name, row_number() over (partition by piece_id, name order by position, id) as n
          from part where not by_hand) x
    union all
    -- Changed by hand and not taken off again since: its line still has no other part.
    select id, name || case when n = 1 then '' else ' #' || n end
    from (select id, name, row_number() over (partition by piece_id, name order by position, id) as n
          from part c where by_hand and slot <> ''
              and not exists (select 1 from part o where o.piece_id = c.piece_id and o.name = c.name and not o.by_hand)) y) k
where k.id = p.id;
create unique index part_rule_once on part (piece_id, rule) where rule <> '';

-- A line of the formulas that somebody left out of a piece.
create table part_left_out (
    id       uuid primary key,
    job_id   uuid not null,
    piece_id uuid not null,
    rule     text not null constraint part_left_out_rule_given check (length(rule) between 1 and 140),
    constraint part_left_out_once unique (piece_id, rule),
    constraint part_left_out_piece_of_job_fk foreign key (piece_id, job_id) references piece (id, job_id) on delete cascade
);
create index part_left_out_piece_idx on part_left_out (piece_id, job_id);
create index part_left_out_job_idx on part_left_out (job_id);
create trigger part_left_out_audit after insert or update or delete on part_left_out
    for each row execute function write_audit_entry();
