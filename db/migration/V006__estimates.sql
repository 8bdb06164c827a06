-- The working sum of a job and the bids issued from it. Task lines are the job's tasks; material and other lines are here.
create table estimate (
    job_id              uuid primary key constraint estimate_job_fk references job (id),
    -- Burdened cost of an hour on this job: the crew's shares below, unless a rate is given by hand.
    labour_rate         numeric(12, 2) constraint estimate_labour_rate_not_negative check (labour_rate >= 0),
    overhead_rate       numeric(12, 2) not null constraint estimate_overhead_not_negative check (overhead_rate >= 0),
    contingency_percent numeric(7, 3) not null constraint estimate_contingency_in_range check (contingency_percent between 0 and 100),
    margin_percent      numeric(7, 3) not null constraint estimate_margin_in_range check (margin_percent >= 0 and margin_percent < 100),
    rounding_step_amount numeric(12, 2) not null constraint estimate_rounding_not_negative check (rounding_step_amount >= 0),
    tax_percent         numeric(7, 3) not null default 0 constraint estimate_tax_in_range check (tax_percent between 0 and 100),
    scope               text not null default '',
    terms               text not null default '',
    version             int not null
);

create table estimate_crew (
    job_id        uuid not null constraint estimate_crew_estimate_fk references estimate (job_id) on delete cascade,
    person_id     uuid not null constraint estimate_crew_person_fk references person (id),
    share_percent numeric(7, 3) not null constraint estimate_crew_share_in_range check (share_percent > 0 and share_percent <= 100),
    primary key (job_id, person_id)
);

create table estimate_material (
    id                uuid primary key,
    job_id            uuid not null constraint estimate_material_estimate_fk references estimate (job_id),
    piece_id          uuid,
    material_id       uuid not null constraint estimate_material_material_fk references material (id),
    net_quantity      numeric(14, 4) not null constraint estimate_material_net_positive check (net_quantity > 0),
    yield             numeric(6, 4) not null constraint estimate_material_yield_in_range check (yield > 0 and yield <= 1),
    -- Net / yield in whole purchase units.
    purchase_quantity numeric(14, 4) not null constraint estimate_material_purchase_positive check (purchase_quantity > 0),
    unit_price        numeric(14, 4) not null constraint estimate_material_price_not_negative check (unit_price >= 0),
    freight_amount    numeric(12, 2) not null default 0 constraint estimate_material_freight_not_negative check (freight_amount >= 0),
    amount            numeric(12, 2) not null,
    position          int not null default 0,
    version           int not null,
    constraint estimate_material_piece_of_job_fk foreign key (piece_id, job_id) references piece (id, job_id)
);
create index estimate_material_job_idx on estimate_material (job_id);

create table estimate_other (
    id          uuid primary key,
    job_id      uuid not null constraint estimate_other_estimate_fk references estimate (job_id),
    description text not null constraint estimate_other_description_given check (length(btrim(description)) between 1 and 160),
    amount      numeric(12, 2) not null constraint estimate_other_amount_not_negative check (amount >= 0),
    position    int not null default 0,
    version     int not null
);
create index estimate_other_job_idx on estimate_other (job_id);

-- A bid or change order as issued: numbered and frozen. `document` is all that its page prints; nothing is looked up later.
create table bid (
    id                 uuid primary key,
    job_id             uuid not null constraint bid_job_fk references job (id),
    kind               text not null constraint bid_kind_known check (kind in ('bid', 'change order')),
    -- Bids of a job are lettered A, B; change orders CO-1, CO-2.
    mark               text not null,
    number             text not null constraint bid_number_key unique,
    state              text not null constraint bid_state_known check (state in ('issued', 'accepted', 'declined', 'withdrawn')),
    issued_at          timestamptz not null,
    issued_on          date not null,
    issued_by          uuid not null constraint bid_issued_by_fk references person (id),
    valid_until        date not null,
    estimated_minutes  int not null,
    labour_rate        numeric(12, 2) not null,
    overhead_rate      numeric(12, 2) not null,
    labour_amount      numeric(12, 2) not null,
    material_amount    numeric(12, 2) not null,
    other_amount       numeric(12, 2) not null,
    overhead_amount    numeric(12, 2) not null,
    contingency_amount numeric(12, 2) not null,
    margin_amount      numeric(12, 2) not null,
    rounding_amount    numeric(12, 2) not null,
    price_amount       numeric(12, 2) not null,
    tax_amount         numeric(12, 2) not null default 0,
    total_amount       numeric(12, 2) not null,
    contingency_percent numeric(7, 3) not null,
    margin_percent     numeric(7, 3) not null,
    document           jsonb not null,
    accepted_at        timestamptz,
    accepted_on        date,
    accepted_name      text not null default '',
    accepted_via       text constraint bid_accepted_via_known check (accepted_via in ('owner', 'link')),
    version            int not null,
    constraint bid_of_job_key unique (id, job_id),
    constraint bid_mark_key unique (job_id, kind, mark),
    constraint bid_accepted_has_date check ((state = 'accepted') = (accepted_at is not null)),
    -- Price and rounding add up to the cent.
    constraint bid_adds_up check (price_amount = labour_amount + material_amount + other_amount + overhead_amount
        + contingency_amount + margin_amount + rounding_amount),
    constraint bid_total_adds_up check (total_amount = price_amount + tax_amount)
);
create index bid_job_idx on bid (job_id);
create unique index bid_one_accepted on bid (job_id) where kind = 'bid' and state = 'accepted';

create table bid_task (
    bid_id              uuid not null constraint bid_task_bid_fk references bid (id),
    position            int not null,
    job_id              uuid not null,
    task_id             uuid,
    piece_name          text not null,
    stage_name          text not null,
    name                text not null,
    quantity            numeric(14, 4) not null,
    unit                text not null,
    starting_unit_hours numeric(12, 5) not null,
    unit_hours          numeric(12, 5) not null,
    estimated_minutes   int not null,
    primary key (bid_id, position),
    constraint bid_task_bid_of_job_fk foreign key (bid_id, job_id) references bid (id, job_id),
    constraint bid_task_task_of_job_fk foreign key (task_id, job_id) references task (id, job_id)
);
create index bid_task_task_idx on bid_task (task_id);

create table bid_material (
    bid_id            uuid not null constraint bid_material_bid_fk references bid (id),
    position          int not null,
    material_id       uuid constraint bid_material_material_fk references material (id),
    name              text not null,
    unit              text not null,
    net_quantity      numeric(14, 4) not null,
    yield             numeric(6, 4) not null,
    purchase_quantity numeric(14, 4) not null,
    unit_price        numeric(14, 4) not null,
    freight_amount    numeric(12, 2) not null default 0,
    amount            numeric(12, 2) not null,
    primary key (bid_id, position)
);

create table bid_other (
    bid_id      uuid not null constraint bid_other_bid_fk references bid (id),
    position    int not null,
    description text not null,
    amount      numeric(12, 2) not null,
    primary key (bid_id, position)
);

-- An issued bid is a copy: only its fate may change, never its content.
create function keep_bid_frozen() returns trigger language plpgsql as $$
begin
    if tg_op = 'DELETE' or (to_jsonb(new) - array['state', 'accepted_at', 'accepted_on', 'accepted_name', 'accepted_via', 'version'])
        is distinct from (to_jsonb(old) - array['state', 'accepted_at', 'accepted_on', 'accepted_name', 'accepted_via', 'version']) then
        raise exception 'an issued bid does not change' using errcode = 'TW002';
    end if;
    return new;
end $$;
create trigger bid_frozen before update on bid for each row execute function keep_bid_frozen();
create function keep_bid_line_frozen() returns trigger language plpgsql as $$
begin
    raise exception 'a line of an issued bid does not change' using errcode = 'TW002';
end $$;
create trigger bid_task_frozen before update on bid_task for each row execute function keep_bid_line_frozen();
create trigger bid_material_frozen before update on bid_material for each row execute function keep_bid_line_frozen();
create trigger bid_other_frozen before update on bid_other for each row execute function keep_bid_line_frozen();
create trigger bid_audit after insert or update or delete on bid for each row execute function write_audit_entry();
