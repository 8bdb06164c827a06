-- What sort of cost a line is. An allowance is a stated sum for a thing not chosen yet: the client reads it in the bid.
alter table estimate_other
    add column sort text not null default 'other' constraint estimate_other_sort_known
        check (sort in ('delivery', 'service', 'rental', 'permit', 'allowance', 'other'));
alter table bid_other
    add column sort text not null default 'other' constraint bid_other_sort_known
        check (sort in ('delivery', 'service', 'rental', 'permit', 'allowance', 'other'));

-- How the price is paid, one step a line, as typed: "40 % to book".
alter table estimate
    add column payments text not null default '' constraint estimate_payments_length check (length(payments) <= 2000);
