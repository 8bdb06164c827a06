-- Owner: costing. One row: one time entry on a job, priced. minutes: whole minutes; burdened_rate: shop's currency for an
-- hour, wage x (1 + burden / 100) in force on the day, to the cent; amount: minutes x burdened_rate / 60, to the cent for
-- each entry, so that sums by task, stage, person and hour class all add up. Rate and amount are null for somebody
-- without a wage on that day.
create or replace view costing_entry as
select e.id, e.job_id, e.task_id, e.person_id, e.on_date, e.hour_class, e.minutes, e.reason, e.note, e.logged_at,
       w.burdened_rate,
       round(e.minutes * w.burdened_rate / 60, 2) as amount
from time_entry e
left join lateral (
    select round(wage_amount * (1 + burden_percent / 100), 2) as burdened_rate
    from wage where person_id = e.person_id and from_date <= e.on_date
    order by from_date desc limit 1) w on true
where e.job_id is not null;
