-- The working days that a change order adds to the schedule as a figure, and what they did to the day that was promised.
alter table bid
    add column added_days int not null default 0 constraint bid_added_days_in_range check (added_days between 0 and 365),
    add column promised_before date,
    add column promised_after date,
    add constraint bid_days_of_a_change check (added_days = 0 or kind = 'change order'),
    add constraint bid_promise_moved check ((promised_before is null) = (promised_after is null)
        and (promised_before is null or promised_after > promised_before and state = 'accepted' and added_days > 0));

-- As before, with the moved promise among what may still change.
create or replace function keep_bid_frozen() returns trigger language plpgsql as $$
declare
    fate constant text[] := array['state', 'accepted_at', 'accepted_on', 'accepted_name', 'accepted_via', 'declined_at',
        'declined_on', 'declined_via', 'declined_for', 'declined_words', 'answered_from', 'promised_before', 'promised_after',
        'version'];
begin
    if tg_op = 'DELETE' or (to_jsonb(new) - fate) is distinct from (to_jsonb(old) - fate) then
        raise exception 'an issued bid does not change' using errcode = 'TW002';
    end if;
    return new;
end $$;
