-- Material bought, taken, brought back and kept.
create table purchase (
    id             uuid primary key,
    -- Null: bought to stock.
    job_id         uuid constraint purchase_job_fk references job (id),
    material_id    uuid not null constraint purchase_material_fk references material (id),
    quantity       numeric(14, 4) not null constraint purchase_quantity_positive check (quantity > 0 and quantity <= 1000000),
    unit_price     numeric(14, 4) not null constraint purchase_price_not_negative check (unit_price >= 0),
    freight_amount numeric(12, 2) not null default 0 constraint purchase_freight_not_negative check (freight_amount >= 0),
    -- quantity x unit price + freight, to the cent.
    amount         numeric(12, 2) not null constraint purchase_amount_not_negative check (amount >= 0),
    supplier       text not null default '',
    receipt_number text not null default '',
    bought_on      date not null,
    bought_by      uuid constraint purchase_bought_by_fk references person (id),
    note           text not null default '',
    version        int not null
);
create index purchase_job_idx on purchase (job_id);
create index purchase_material_idx on purchase (material_id, bought_on);
create index purchase_bought_on_idx on purchase (bought_on);

-- Material taken for a job, and how much of it is in the finished work.
create table material_use (
    id           uuid primary key,
    job_id       uuid not null constraint material_use_job_fk references job (id),
    material_id  uuid not null constraint material_use_material_fk references material (id),
    quantity     numeric(14, 4) not null constraint material_use_quantity_positive check (quantity > 0 and quantity <= 1000000),
    net_quantity numeric(14, 4) constraint material_use_net_not_negative check (net_quantity >= 0),
    source       text not null constraint material_use_source_known check (source in ('job', 'stock')),
    -- Price of stock when it was taken; null for material bought for the job.
    unit_price   numeric(14, 4) constraint material_use_price_not_negative check (unit_price >= 0),
    used_on      date not null,
    used_by      uuid constraint material_use_used_by_fk references person (id),
    note         text not null default '',
    version      int not null,
    constraint material_use_net_within_taken check (net_quantity is null or net_quantity <= quantity),
    constraint material_use_stock_is_priced check (source <> 'stock' or unit_price is not null)
);
create index material_use_job_idx on material_use (job_id);
create index material_use_material_idx on material_use (material_id);

-- Sent back to the supplier for a credit.
create table material_return (
    id            uuid primary key,
    job_id        uuid constraint material_return_job_fk references job (id),
    material_id   uuid not null constraint material_return_material_fk references material (id),
    quantity      numeric(14, 4) not null constraint material_return_quantity_positive check (quantity > 0 and quantity <= 1000000),
    credit_amount numeric(12, 2) not null constraint material_return_credit_not_negative check (credit_amount >= 0),
    returned_on   date not null,
    returned_by   uuid constraint material_return_returned_by_fk references person (id),
    note          text not null default '',
    version       int not null
);
create index material_return_job_idx on material_return (job_id);

-- Kept for a later job; the credit lowers this job's cost.
create table offcut (
    id            uuid primary key,
    job_id        uuid constraint offcut_job_fk references job (id),
    material_id   uuid not null constraint offcut_material_fk references material (id),
    size          text not null default '',
    quantity      numeric(14, 4) not null constraint offcut_quantity_positive check (quantity > 0 and quantity <= 1000000),
    credit_amount numeric(12, 2) not null default 0 constraint offcut_credit_not_negative check (credit_amount >= 0),
    kept_on       date not null,
    kept_by       uuid constraint offcut_kept_by_fk references person (id),
    gone_on       date,
    note          text not null default '',
    version       int not null
);
create index offcut_job_idx on offcut (job_id);
create index offcut_here_idx on offcut (material_id) where gone_on is null;

create trigger purchase_audit after insert or update or delete on purchase for each row execute function write_audit_entry();
create trigger material_use_audit after insert or update or delete on material_use for each row execute function write_audit_entry();
create trigger material_return_audit after insert or update or delete on material_return for each row execute function write_audit_entry();
create trigger offcut_audit after insert or update or delete on offcut for each row execute function write_audit_entry();
