-- When hours are overtime, and what they cost on top. The default is the federal rule of the United States (29 CFR 778.110):
-- over 40 hours a week, half the regular rate on top. Local law decides.
alter table shop add column overtime_week_minutes int default 2400
    constraint shop_overtime_week_in_range check (overtime_week_minutes between 60 and 10080);
alter table shop add column overtime_day_minutes int
    constraint shop_overtime_day_in_range check (overtime_day_minutes between 60 and 1440);
alter table shop add column overtime_premium_percent numeric(7, 3) not null default 50
    constraint shop_overtime_premium_in_range check (overtime_premium_percent between 0 and 200);
