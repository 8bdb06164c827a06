-- Owner: costing. One row: one task beside what the accepted bids of its job say of it (several lines where a change order
-- added to it). Minutes whole, quantities in the task's unit, bid_labour_amount in the shop's currency, not rounded:
-- each line's minutes x the labour rate of its bid. bid_lines is 0 for a task in no accepted bid.
create or replace view costing_task as
select t.id as task_id, t.job_id, t.task_kind_id, t.name, coalesce(p.name, '') as piece_name,
       s.name as stage_name, s.position as stage_position, t.position,
       t.unit, t.state, t.never_needed, t.quantity, t.unit_hours, t.starting_unit_hours, t.estimated_minutes,
       t.quantity_done, t.quantity_confirmed, t.done_on,
       b.bid_lines, b.bid_minutes, b.bid_quantity, b.bid_labour_amount
from task t
join stage s on s.id = t.stage_id
left join piece p on p.id = t.piece_id
cross join lateral (
    select count(*)::int as bid_lines, coalesce(sum(l.estimated_minutes), 0)::int as bid_minutes,
           coalesce(sum(l.quantity), 0) as bid_quantity,
           coalesce(sum(l.estimated_minutes * b.labour_rate / 60), 0) as bid_labour_amount
    from bid_task l join bid b on b.id = l.bid_id
    where l.task_id = t.id and b.state = 'accepted') b;
