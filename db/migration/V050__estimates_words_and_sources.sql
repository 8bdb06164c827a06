-- What an estimate and its bids say in words, which working line a frozen line was copied from, and the trail of
-- changes to the working sum.
alter table estimate
    -- What the contingency is for, where the shop names it: "old house, unknown walls".
    add column contingency_name text not null default ''
        constraint estimate_contingency_name_length check (length(contingency_name) <= 80),
    add column exclusions text not null default '',
    -- One estimate a job: its own id is the job's. The trail finds its subject by it.
    add column id uuid generated always as (job_id) stored;

alter table bid
    add column title text not null default '' constraint bid_title_length check (length(title) <= 160),
    add column contingency_name text not null default '',
    add column tax_percent numeric(7, 3) not null default 0
        constraint bid_tax_in_range check (tax_percent between 0 and 100),
    add constraint bid_co_mark_form check ((kind = 'change order') = (mark ~ '^CO-[0-9]+$'));

-- No foreign key: the working line may be removed later, the copy stays. A line that is in an accepted bid, or in one
-- that is out, is not sold a second time by a change order.
alter table bid_material add column estimate_material_id uuid;
alter table bid_other add column estimate_other_id uuid;
create index bid_material_source_idx on bid_material (estimate_material_id);
create index bid_other_source_idx on bid_other (estimate_other_id);

create trigger estimate_audit after insert or update or delete on estimate
    for each row execute function write_audit_entry();
create trigger estimate_crew_audit after insert or update or delete on estimate_crew
    for each row execute function write_audit_entry();
create trigger estimate_material_audit after insert or update or delete on estimate_material
    for each row execute function write_audit_entry();
create trigger estimate_other_audit after insert or update or delete on estimate_other
    for each row execute function write_audit_entry();
