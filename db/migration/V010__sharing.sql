-- What the client may see, and by which link.
create table client_link (
    id         uuid primary key,
    job_id     uuid not null constraint client_link_job_fk references job (id),
    -- SHA-256 of the token; the token itself is shown once.
    token_hash bytea not null constraint client_link_token_key unique,
    label      text not null default '',
    created_at timestamptz not null,
    created_by uuid not null constraint client_link_created_by_fk references person (id),
    expires_at timestamptz not null,
    revoked_at timestamptz,
    revoked_by uuid constraint client_link_revoked_by_fk references person (id),
    last_seen_at timestamptz,
    views      int not null default 0,
    version    int not null,
    constraint client_link_ends_after_start check (expires_at > created_at)
);
create index client_link_job_idx on client_link (job_id);

create table client_note (
    id         uuid primary key,
    job_id     uuid not null constraint client_note_job_fk references job (id),
    on_date    date not null,
    text       text not null constraint client_note_text_given check (length(btrim(text)) between 1 and 2000),
    shown      boolean not null default false,
    written_by uuid constraint client_note_written_by_fk references person (id),
    version    int not null
);
create index client_note_job_idx on client_note (job_id, on_date);

-- The next visit as a range of days, for the client's page.
create table next_visit (
    job_id    uuid primary key constraint next_visit_job_fk references job (id),
    from_date date not null,
    to_date   date not null,
    note      text not null default '',
    version   int not null,
    constraint next_visit_ordered check (to_date >= from_date)
);
