-- What a new bid's payment plan starts from, and how much may be asked before work where the shop is: law differs by state.
alter table shop
    add column bid_payments text not null default '' constraint shop_bid_payments_length check (length(bid_payments) <= 2000),
    add column deposit_limit_percent numeric(7, 3)
        constraint shop_deposit_limit_percent_in_range check (deposit_limit_percent >= 0 and deposit_limit_percent <= 100),
    add column deposit_limit_amount numeric(12, 2)
        constraint shop_deposit_limit_amount_not_negative check (deposit_limit_amount >= 0),
    add column deposit_limit_place text not null default ''
        constraint shop_deposit_limit_place_length check (length(deposit_limit_place) <= 80);
