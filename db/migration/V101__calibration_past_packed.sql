-- What a calibration learnt from is kept packed: in a shop of ten years it is 20 MB of text, of which a compressed copy
-- takes a tenth. Older ones keep theirs as it is.
alter table calibration
    -- Gzip of the same JSON text as past.
    add column past_packed bytea,
    drop constraint calibration_done_is_whole,
    add constraint calibration_done_is_whole check (state <> 'done'
        or (made_at is not null and (past is not null or past_packed is not null) and figures is not null and record is not null));

-- One that is made in the background names nobody: its row is not even unpacked for the trail.
drop trigger calibration_used_audit on calibration;
create trigger calibration_used_audit after update of current on calibration
    for each row when (old.current is distinct from new.current and coalesce(current_setting('tallywright.person', true), '') <> '')
    execute function write_audit_entry('when named', 'past', 'past_packed', 'figures', 'record');
