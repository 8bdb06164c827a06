-- The day sheet looks for what was waiting and is ready; waits ended by hand pile up over the years.
create index wait_ended_idx on wait (ended_at) where ended_at is not null;
