-- Owner: materials. One row: one material on one job. Quantities in the material's own unit, amounts in the shop's currency.
-- charged_quantity = bought for the job + taken from stock - sent back - kept as offcut: what the job consumed.
-- cost_amount = purchases with freight + stock at its price when taken - credits.
-- net_quantity is what is in the finished work, null until somebody said so; the yield is net_quantity / charged_quantity.
create or replace view job_material as
with moved as (
    select job_id, material_id, quantity as bought, amount as bought_amount, 0::numeric as stock, 0::numeric as stock_amount,
           0::numeric as returned, 0::numeric as kept, 0::numeric as credit, null::numeric as taken, null::numeric as net
    from purchase where job_id is not null
    union all
    select job_id, material_id, 0, 0, case when source = 'stock' then quantity else 0 end,
           case when source = 'stock' then round(quantity * unit_price, 2) else 0 end, 0, 0, 0, quantity, net_quantity
    from material_use
    union all
    select job_id, material_id, 0, 0, 0, 0, quantity, 0, credit_amount, null, null from material_return where job_id is not null
    union all
    select job_id, material_id, 0, 0, 0, 0, 0, quantity, credit_amount, null, null from offcut where job_id is not null
)
select job_id, material_id,
       sum(bought) as bought_quantity,
       sum(bought_amount) as bought_amount,
       sum(stock) as stock_quantity,
       sum(stock_amount) as stock_amount,
       sum(returned) as returned_quantity,
       sum(kept) as kept_quantity,
       sum(credit) as credit_amount,
       sum(taken) as taken_quantity,
       sum(net) as net_quantity,
       sum(bought) + sum(stock) - sum(returned) - sum(kept) as charged_quantity,
       sum(bought_amount) + sum(stock_amount) - sum(credit) as cost_amount
from moved
group by job_id, material_id;
