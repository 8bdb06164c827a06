-- The one shop of this installation, and the trail of every change to hours, money and roles.
create table shop (
    id                   smallint primary key constraint shop_is_one check (id = 1),
    name                 text not null constraint shop_name_given check (length(btrim(name)) between 1 and 80),
    time_zone            text not null,
    units                text not null default 'imperial' constraint shop_units_known check (units in ('imperial', 'metric')),
    currency             text not null default 'USD' constraint shop_currency_code check (currency ~ '^[A-Z]{3}$'),
    day_minutes          int not null default 480 constraint shop_day_minutes_in_range check (day_minutes between 30 and 1440),
    overhead_rate        numeric(12, 2) not null default 0 constraint shop_overhead_not_negative check (overhead_rate >= 0),
    margin_percent       numeric(7, 3) not null default 15 constraint shop_margin_in_range check (margin_percent >= 0 and margin_percent < 100),
    contingency_percent  numeric(7, 3) not null default 0 constraint shop_contingency_in_range check (contingency_percent between 0 and 100),
    rounding_step_amount numeric(12, 2) not null default 10 constraint shop_rounding_not_negative check (rounding_step_amount >= 0),
    tax_percent          numeric(7, 3) not null default 0 constraint shop_tax_in_range check (tax_percent between 0 and 100),
    tax_label            text not null default '',
    bid_valid_days       int not null default 30 constraint shop_bid_days_in_range check (bid_valid_days between 1 and 365),
    bid_terms            text not null default '',
    contact_lines        text not null default '',
    created_at           timestamptz not null,
    -- When the demo scenario was loaded; a shop with a date here is a demo shop.
    demo_loaded_at       timestamptz,
    version              int not null
);

-- One-time code printed at start while there is no owner.
create table setup_code (
    id        smallint primary key constraint setup_code_is_one check (id = 1),
    code_hash bytea not null,
    made_at   timestamptz not null
);

create table audit_entry (
    id         bigint generated always as identity primary key,
    at         timestamptz not null,
    -- Null only for acts of the server itself (demo, restore).
    person_id  uuid constraint audit_entry_person_fk references person (id),
    subject    text not null,
    subject_id text not null,
    act        text not null constraint audit_entry_act_known check (act in ('insert', 'update', 'delete')),
    before     jsonb,
    after      jsonb
);
create index audit_entry_subject_idx on audit_entry (subject, subject_id, id);

-- Writes the trail. Who is acting, and when, is set for each transaction by the application (Trail); a change
-- to an audited table that names nobody is refused, so that no code path can forget it.
create function write_audit_entry() returns trigger language plpgsql as $$
declare
    who    text := current_setting('tallywright.person', true);
    moment text := current_setting('tallywright.at', true);
    old_row jsonb := case when tg_op = 'INSERT' then null else to_jsonb(old) - 'password_hash' end;
    new_row jsonb := case when tg_op = 'DELETE' then null else to_jsonb(new) - 'password_hash' end;
begin
    if who is null or who = '' then
        raise exception 'a change to % names nobody', tg_table_name using errcode = 'TW001';
    end if;
    if old_row is not distinct from new_row then
        return null;
    end if;
    insert into audit_entry (at, person_id, subject, subject_id, act, before, after)
    values (moment::timestamptz, nullif(who, 'shop')::uuid, tg_table_name,
            coalesce(new_row ->> 'id', old_row ->> 'id', new_row ->> 'person_id', old_row ->> 'person_id'),
            lower(tg_op), old_row, new_row);
    return null;
end $$;

create trigger person_audit after insert or update or delete on person for each row execute function write_audit_entry();
create trigger wage_audit after insert or update or delete on wage for each row execute function write_audit_entry();
create trigger account_audit after insert or update or delete on account for each row execute function write_audit_entry();
create trigger shop_audit after insert or update or delete on shop for each row execute function write_audit_entry();
