-- Options of one group exclude each other: the client takes one of them, or none.
alter table estimate_option
    add column one_of text not null default '' constraint estimate_option_group_length check (length(one_of) <= 60);
alter table bid
    add column one_of text not null default '' constraint bid_group_length check (length(one_of) <= 60),
    add constraint bid_group_is_of_an_option check (one_of = '' or kind = 'option');
create unique index bid_one_of_a_group on bid (option_of, lower(one_of)) where state = 'accepted' and one_of <> '';
