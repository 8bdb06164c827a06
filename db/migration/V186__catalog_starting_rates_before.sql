-- Starting rates that were in force once, each until the moment it was changed; what is in force today stands in task_kind. A job
-- is judged by the rate that its bid could know. Written by the trigger alone, from a change that is in the trail as well.
create table starting_rate_before (
    id           uuid primary key default gen_random_uuid(),
    task_kind_id uuid not null constraint starting_rate_before_kind_fk references task_kind (id) on delete cascade,
    unit         text not null,
    unit_hours   numeric(12, 5) not null constraint starting_rate_before_positive check (unit_hours > 0),
    until_at     timestamptz not null,
    -- Of two changes in one moment the first says what was in force before it.
    constraint starting_rate_before_moment_key unique (task_kind_id, until_at)
);

create function keep_starting_rate_before() returns trigger language plpgsql as $$
declare
    moment text := current_setting('tallywright.at', true);
begin
    -- A change that names no moment has none that could be kept.
    if moment is not null and moment <> '' then
        insert into starting_rate_before (task_kind_id, unit, unit_hours, until_at)
        values (old.id, old.unit, old.unit_hours, moment::timestamptz)
        on conflict on constraint starting_rate_before_moment_key do nothing;
    end if;
    return null;
end $$;

create trigger task_kind_rate_before after update on task_kind
    for each row when (old.unit_hours is distinct from new.unit_hours or old.unit is distinct from new.unit)
    execute function keep_starting_rate_before();

-- Those of before this table, from the trail.
insert into starting_rate_before (task_kind_id, unit, unit_hours, until_at)
select k.id, e.before ->> 'unit', (e.before ->> 'unit_hours')::numeric, e.at
from audit_entry e join task_kind k on k.id::text = e.subject_id
where e.subject = 'task_kind' and e.act = 'update'
and (e.before ->> 'unit_hours' is distinct from e.after ->> 'unit_hours' or e.before ->> 'unit' is distinct from e.after ->> 'unit')
order by e.at
on conflict on constraint starting_rate_before_moment_key do nothing;
