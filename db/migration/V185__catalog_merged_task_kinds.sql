-- A task kind that is counted as another of the same unit from a day on. It keeps its row, and whatever was done of it stays as
-- it was logged.
alter table task_kind
    add column merged_into uuid,
    add column merged_at   timestamptz,
    add column merged_by   uuid constraint task_kind_merged_by_fk references person (id),
    add column merged      boolean not null generated always as (merged_into is not null) stored,
    -- False beside a merged kind, so that the key below never finds one that is merged itself: no chains.
    add column into_merged boolean generated always as (case when merged_into is null then null else false end) stored,
    add constraint task_kind_merged_not_itself check (merged_into <> id),
    add constraint task_kind_merge_is_whole check (num_nulls(merged_into, merged_at, merged_by) in (0, 3)),
    add constraint task_kind_merged_out_of_use check (merged_into is null or not active),
    add constraint task_kind_merge_key unique (id, unit, merged),
    add constraint task_kind_merged_into_fk foreign key (merged_into, unit, into_merged) references task_kind (id, unit, merged);
create index task_kind_merged_into_idx on task_kind (merged_into) where merged_into is not null;
create index task_kind_merged_by_idx on task_kind (merged_by) where merged_by is not null;
