-- The day sheet asks which tasks a person finished that day; without this it read every task of the shop.
create index task_done_by_day_idx on task (done_by, done_on) where done_on is not null;
