-- What the client answered to a bid, when, how and from where: a no with its reason, a yes with the address it came from.
alter table bid
    add column declined_at timestamptz,
    add column declined_on date,
    add column declined_via text constraint bid_declined_via_known check (declined_via in ('owner', 'link')),
    -- Picked from a list, and in the client's own words; either may be empty.
    add column declined_for text not null default ''
        constraint bid_declined_for_known check (declined_for in ('', 'price', 'dates', 'work', 'elsewhere', 'later')),
    add column declined_words text not null default '' constraint bid_declined_words_length check (length(declined_words) <= 2000),
    -- Network address that a yes or a no by link came from, as the server saw it; empty for what the owner recorded.
    add column answered_from text not null default '' constraint bid_answered_from_length check (length(answered_from) <= 60),
    -- Bids from before this were declined without a day.
    add constraint bid_declined_as_a_whole check ((declined_at is null) = (declined_on is null)
        and (declined_at is null) = (declined_via is null)),
    add constraint bid_declined_is_its_state check (declined_at is null or state = 'declined'),
    add constraint bid_reason_of_a_no check (state = 'declined' or (declined_for = '' and declined_words = '')),
    add constraint bid_answered_by_link check (answered_from = '' or coalesce(accepted_via, declined_via, '') = 'link');

-- As before; the fate of a bid has more columns now.
create or replace function keep_bid_frozen() returns trigger language plpgsql as $$
declare
    fate constant text[] := array['state', 'accepted_at', 'accepted_on', 'accepted_name', 'accepted_via', 'declined_at',
        'declined_on', 'declined_via', 'declined_for', 'declined_words', 'answered_from', 'version'];
begin
    if tg_op = 'DELETE' or (to_jsonb(new) - fate) is distinct from (to_jsonb(old) - fate) then
        raise exception 'an issued bid does not change' using errcode = 'TW002';
    end if;
    return new;
end $$;
