-- A visit taken back and announced again must not start at a version that an older page still shows: each announcement
-- and each change takes the next number of the whole shop.
create sequence next_visit_version as int;
select setval('next_visit_version', coalesce((select max(version) from next_visit), 0) + 1);
