-- Who the work is for and where it is done.
create table client (
    id      uuid primary key,
    name    text not null constraint client_name_given check (length(btrim(name)) between 1 and 120),
    phone   text not null default '',
    email   text not null default '',
    note    text not null default '',
    version int not null
);
create index client_name_idx on client (lower(name));

create table site (
    id              uuid primary key,
    client_id       uuid not null constraint site_client_fk references client (id),
    address         text not null constraint site_address_given check (length(btrim(address)) between 1 and 300),
    access_note     text not null default '',
    one_way_minutes int constraint site_one_way_in_range check (one_way_minutes between 0 and 1440),
    -- Conditions that drive hours on site; ticked at the measure.
    occupied        boolean not null default false,
    out_of_square   boolean not null default false,
    stairs          boolean not null default false,
    version         int not null,
    constraint site_of_client_key unique (id, client_id)
);
create index site_client_idx on site (client_id);
