-- Where the price of a material line comes from, and what a layout says of its quantity.
alter table estimate_material
    -- Somebody wrote this price; else it is the catalogue's and follows it when the buy list is put again.
    add price_typed boolean not null default false,
    -- Laid out: four times in five no more than this is charged, and half the time no more than the purchase quantity.
    -- Null: the purchase is net / yield.
    add safe_quantity numeric(14, 4),
    -- Of the purchase quantity, what is taken from stock at its price.
    add stock_quantity numeric(14, 4) not null default 0,
    add constraint estimate_material_safe_not_below_purchase check (safe_quantity >= purchase_quantity),
    add constraint estimate_material_stock_within_purchase check (stock_quantity between 0 and purchase_quantity);

-- A price that the catalogue never had was typed.
select set_config('tallywright.person', 'shop', true), set_config('tallywright.at', now()::text, true);
update estimate_material e set price_typed = true
where not exists (select 1 from material_price p where p.material_id = e.material_id and p.unit_price = e.unit_price);

alter table bid_cost
    -- Of the materials' lines, how many were laid out and so bought as laid out.
    add laid_out int not null default 0 constraint bid_cost_laid_out_not_negative check (laid_out >= 0);
