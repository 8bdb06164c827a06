-- A task that the client has been, or will be, asked about and has not agreed to: it is no part of the job's plan until he does.
alter table task
    drop constraint task_state_known,
    add constraint task_state_known check (state in ('offered', 'planned', 'started', 'done', 'dropped'));

-- Options that nobody decided about, and change orders that are out, declined, withdrawn or past their date.
update task t set state = 'offered'
where t.state = 'planned'
    and not exists (select 1 from bid_task l join bid b on b.id = l.bid_id where l.task_id = t.id and b.state = 'accepted')
    and (exists (select 1 from estimate_option_line o where o.task_id = t.id)
        or exists (select 1 from bid_task l join bid b on b.id = l.bid_id left join bid f on f.id = b.option_of
            where l.task_id = t.id and coalesce(f.kind, b.kind) = 'change order'));

-- Whether an option was taken is asked by what it was copied from.
create index bid_option_idx on bid (option_id) where option_id is not null;
