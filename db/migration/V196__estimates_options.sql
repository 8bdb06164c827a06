-- Options: named groups of lines that a client may take or leave. Issued with a bid each becomes a frozen row of its own,
-- priced by the same formula, so that base and chosen options add up, and are budget, wherever accepted bids are read.
alter table estimate_material add constraint estimate_material_of_job_key unique (id, job_id);
alter table estimate_other add constraint estimate_other_of_job_key unique (id, job_id);

create table estimate_option (
    id       uuid primary key,
    job_id   uuid not null constraint estimate_option_estimate_fk references estimate (job_id),
    name     text not null constraint estimate_option_name_given check (length(btrim(name)) between 1 and 120),
    -- What the client reads of it beside its price.
    words    text not null default '' constraint estimate_option_words_length check (length(words) <= 2000),
    position int not null,
    version  int not null,
    constraint estimate_option_of_job_key unique (id, job_id)
);
create index estimate_option_job_idx on estimate_option (job_id, position);

-- A line is in one option at most; lines that are in none are the bid itself.
create table estimate_option_line (
    option_id            uuid not null,
    job_id               uuid not null,
    task_id              uuid,
    estimate_material_id uuid,
    estimate_other_id    uuid,
    id                   uuid generated always as (coalesce(task_id, estimate_material_id, estimate_other_id)) stored primary key,
    constraint estimate_option_line_is_one_line check (num_nonnulls(task_id, estimate_material_id, estimate_other_id) = 1),
    constraint estimate_option_line_option_fk foreign key (option_id, job_id) references estimate_option (id, job_id),
    constraint estimate_option_line_task_fk foreign key (task_id, job_id) references task (id, job_id),
    constraint estimate_option_line_material_fk foreign key (estimate_material_id, job_id)
        references estimate_material (id, job_id) on delete cascade,
    constraint estimate_option_line_other_fk foreign key (estimate_other_id, job_id)
        references estimate_other (id, job_id) on delete cascade
);
create index estimate_option_line_option_idx on estimate_option_line (option_id);

create trigger estimate_option_audit after insert or update or delete on estimate_option
    for each row execute function write_audit_entry();
create trigger estimate_option_line_audit after insert or update or delete on estimate_option_line
    for each row execute function write_audit_entry();

alter table bid
    drop constraint bid_kind_known,
    add constraint bid_kind_known check (kind in ('bid', 'change order', 'option')),
    -- The bid or change order that offers it, and the option it was copied from, which may be gone.
    add column option_of uuid,
    add column option_id uuid,
    add constraint bid_option_of_fk foreign key (option_of, job_id) references bid (id, job_id),
    add constraint bid_option_is_of_a_bid check ((kind = 'option') = (option_of is not null)
        and (kind = 'option') = (option_id is not null)),
    add constraint bid_option_once unique (option_of, option_id);

-- An option has the fate of its bid, but for what the client left out when he accepted: that one is declined.
create function keep_option_with_its_bid() returns trigger language plpgsql as $$
begin
    if new.kind = 'option' and exists (select 1 from bid b where b.id = new.option_of
            and not (b.state = new.state or b.state = 'accepted' and new.state = 'declined'))
        or new.kind <> 'option' and exists (select 1 from bid o where o.option_of = new.id
            and not (o.state = new.state or new.state = 'accepted' and o.state = 'declined')) then
        raise exception 'an option is decided with its bid' using errcode = 'TW002';
    end if;
    return null;
end $$;
create constraint trigger bid_option_with_its_bid after insert or update of state on bid
    deferrable initially deferred for each row execute function keep_option_with_its_bid();
