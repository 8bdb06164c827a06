-- A day is saved as a whole: two entries may swap their times in one save, so overlaps are judged when it is complete.
alter table time_entry drop constraint time_entry_no_overlap;
alter table time_entry add constraint time_entry_no_overlap exclude using gist (
    person_id with =,
    tsrange(on_date + starts_at, on_date + ends_at) with &&) where (starts_at is not null)
    deferrable initially deferred;

-- A question answered once is not asked again, and a repeated save stores the answer once.
alter table day_answer add constraint day_answer_once unique (person_id, on_date, question);
drop index day_answer_day_idx;

-- The day sheet looks for a person's own open tasks and for those under way.
create index task_assigned_idx on task (assigned_to) where state in ('planned', 'started');
create index task_started_idx on task (started_on) where state = 'started';
