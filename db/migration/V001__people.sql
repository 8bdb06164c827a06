-- People of the shop, how they sign in, and what their hour costs. Ids are made by the page or by the server
-- (UUID, time ordered) so that a repeated save is recognised; `version` carries optimistic locking.
create extension if not exists btree_gist;

create table person (
    id          uuid primary key,
    name        text not null constraint person_name_given check (length(btrim(name)) between 1 and 80),
    role        text not null constraint person_role_known check (role in ('owner', 'lead', 'helper', 'bookkeeper')),
    active      boolean not null default true,
    created_at  timestamptz not null,
    version     int not null
);

create table account (
    person_id     uuid primary key constraint account_person_fk references person (id),
    sign_in_name  text not null constraint account_sign_in_name_given check (length(btrim(sign_in_name)) between 3 and 80),
    password_hash text not null,
    -- Raised by "sign out everywhere", a new password or a role change: older sessions are then refused.
    session_epoch int not null default 0,
    created_at    timestamptz not null,
    version       int not null
);
create unique index account_sign_in_name_key on account (lower(sign_in_name));

create table invitation (
    id          uuid primary key,
    person_id   uuid not null constraint invitation_person_fk references person (id),
    token_hash  bytea not null constraint invitation_token_key unique,
    created_by  uuid not null constraint invitation_created_by_fk references person (id),
    created_at  timestamptz not null,
    expires_at  timestamptz not null,
    used_at     timestamptz,
    revoked_at  timestamptz,
    constraint invitation_ends_after_start check (expires_at > created_at)
);
create index invitation_person_idx on invitation (person_id);

-- Pay of a person from a day on; burden is payroll cost on top of the wage in percent of the wage.
create table wage (
    id             uuid primary key,
    person_id      uuid not null constraint wage_person_fk references person (id),
    from_date      date not null,
    wage_amount    numeric(12, 2) not null constraint wage_amount_in_range check (wage_amount between 0 and 10000),
    burden_percent numeric(7, 3) not null constraint wage_burden_in_range check (burden_percent between 0 and 300),
    version        int not null,
    constraint wage_one_per_day unique (person_id, from_date)
);

-- Failed and successful sign-ins, so that throttling holds over several app instances.
create table sign_in_attempt (
    id      bigint generated always as identity primary key,
    subject text not null,
    at      timestamptz not null,
    failed  boolean not null
);
create index sign_in_attempt_subject_idx on sign_in_attempt (subject, at);
