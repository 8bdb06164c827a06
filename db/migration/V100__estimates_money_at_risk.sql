-- What a bid was said to cost and to leave on the day it was issued, at its price before tax; never changed. A bid from
-- before this, or one without a task, has none.
create table bid_cost (
    bid_id          uuid primary key constraint bid_cost_bid_fk references bid (id),
    -- The price was made at it: 80 = the cost that four in five such jobs stay under. Null: the named percentage.
    confidence      int constraint bid_cost_confidence_known check (confidence in (50, 80, 90)),
    -- What many such jobs come to, each.
    expected_amount numeric(12, 2) not null,
    -- Four times in five between low and high; as often over as under likely; four times in five under p80.
    low_amount      numeric(12, 2) not null,
    likely_amount   numeric(12, 2) not null,
    high_amount     numeric(12, 2) not null,
    p80_amount      numeric(12, 2) not null,
    -- Of a hundred such jobs, how many cost more than the price.
    loss_percent    numeric(7, 3) not null constraint bid_cost_loss_in_range check (loss_percent between 0 and 100),
    -- Price - expected cost.
    profit_amount   numeric(12, 2) not null,
    -- What stood behind it.
    draws           int not null,
    seed            bigint not null,
    jobs            int not null,
    starting_percent int not null,
    materials       int not null,
    yields          int not null,
    price_steps     int not null,
    crew_matters    boolean not null,
    crew_jobs       int not null,
    constraint bid_cost_ordered check (low_amount <= likely_amount and likely_amount <= p80_amount
        and p80_amount <= high_amount)
);
create trigger bid_cost_frozen before update on bid_cost for each row execute function keep_bid_line_frozen();
create trigger bid_forecast_frozen before update on bid_forecast for each row execute function keep_bid_line_frozen();
