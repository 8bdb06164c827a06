-- A review says which closing of the job it belongs to, and its figures never change; a lesson may be added to it later.
alter table review add column closing int not null default 1
    constraint review_closing_positive check (closing >= 1);
alter table review add constraint review_lesson_length check (length(lesson) <= 500);
alter table review add constraint review_one_per_closing unique (job_id, closing);
drop index review_job_idx;

create function keep_review_frozen() returns trigger language plpgsql as $$
begin
    if (to_jsonb(new) - array['lesson', 'version']) is distinct from (to_jsonb(old) - array['lesson', 'version']) then
        raise exception 'the figures of a review do not change' using errcode = 'TW002';
    end if;
    return new;
end $$;
create trigger review_frozen before update on review for each row execute function keep_review_frozen();
