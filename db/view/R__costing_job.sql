-- Owner: costing. One row: one job, what it was sold for and what it cost up to now; read it for one job at a time. Amounts in
-- the shop's currency, minutes whole. price_amount: accepted bid and change orders, before tax; null while nothing is
-- accepted. overhead_rate: of the accepted bid, else the shop's, for each logged hour. Material of the group 'other'
-- (delivery, disposal) counts as other cost. unpriced_minutes: of people without a wage on the day; they cost nothing here.
create or replace view costing_job as
select j.id as job_id, b.price_amount,
       e.minutes, e.unpriced_minutes, e.labour_amount,
       coalesce(b.overhead_rate, s.overhead_rate, 0) as overhead_rate,
       round(e.minutes * coalesce(b.overhead_rate, s.overhead_rate, 0) / 60, 2) as overhead_amount,
       coalesce(m.material_amount, 0) as material_amount, coalesce(m.other_amount, 0) as other_amount
from job j
left join shop s on true
cross join lateral (
    select sum(price_amount) as price_amount,
           coalesce(max(overhead_rate) filter (where kind = 'bid'), max(overhead_rate)) as overhead_rate
    from bid where job_id = j.id and state = 'accepted') b
cross join lateral (
    select coalesce(sum(t.minutes), 0)::int as minutes,
           coalesce(sum(t.minutes) filter (where w.burdened_rate is null), 0)::int as unpriced_minutes,
           coalesce(sum(round(t.minutes * w.burdened_rate / 60, 2)), 0) as labour_amount
    from time_entry t
    left join lateral (
        select round(wage_amount * (1 + burden_percent / 100), 2) as burdened_rate
        from wage where person_id = t.person_id and from_date <= t.on_date
        order by from_date desc limit 1) w on true
    where t.job_id = j.id) e
cross join lateral (
    select sum(x.amount) filter (where c.material_group <> 'other') as material_amount,
           sum(x.amount) filter (where c.material_group = 'other') as other_amount
    from (
        select material_id, amount from purchase where job_id = j.id
        union all
        select material_id, round(quantity * unit_price, 2) from material_use where job_id = j.id and source = 'stock'
        union all
        select material_id, -credit_amount from material_return where job_id = j.id
        union all
        select material_id, -credit_amount from offcut where job_id = j.id) x
    join material c on c.id = x.material_id) m;
