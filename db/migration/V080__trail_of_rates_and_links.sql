-- The trail also follows prices, rates, tasks, links and the announced visit. A trigger that is given 'when named' is
-- lenient: it writes when the transaction names somebody and lets a change that names nobody pass (work in the
-- background, loading of rows). Further words of a trigger are columns that its trail leaves out.
create or replace function write_audit_entry() returns trigger language plpgsql as $$
declare
    who     text := current_setting('tallywright.person', true);
    moment  text := current_setting('tallywright.at', true);
    hidden  text[] := array['password_hash', 'token_hash'] || coalesce(tg_argv[1:], '{}');
    old_row jsonb := case when tg_op = 'INSERT' then null else to_jsonb(old) - hidden end;
    new_row jsonb := case when tg_op = 'DELETE' then null else to_jsonb(new) - hidden end;
    either  jsonb := coalesce(new_row, old_row);
begin
    if who is null or who = '' then
        if tg_nargs > 0 and tg_argv[0] = 'when named' then
            return null;
        end if;
        raise exception 'a change to % names nobody', tg_table_name using errcode = 'TW001';
    end if;
    if old_row is not distinct from new_row then
        return null;
    end if;
    insert into audit_entry (at, person_id, subject, subject_id, act, before, after)
    values (moment::timestamptz, nullif(who, 'shop')::uuid, tg_table_name,
            coalesce(either ->> 'id', either ->> 'person_id', either ->> 'material_id' || ' ' || (either ->> 'from_date'),
                either ->> 'job_id'),
            lower(tg_op), old_row, new_row);
    return null;
end $$;

create trigger material_price_audit after insert or update or delete on material_price
    for each row execute function write_audit_entry();
create trigger invitation_audit after insert or update or delete on invitation
    for each row execute function write_audit_entry();
create trigger next_visit_audit after insert or update or delete on next_visit
    for each row execute function write_audit_entry();
-- A look of the client is counted without a name and is no change to the link.
create trigger client_link_audit
    after insert or delete or update of job_id, token_hash, label, created_at, created_by, expires_at, revoked_at, revoked_by
    on client_link for each row execute function write_audit_entry();

create trigger task_audit after insert or update or delete on task
    for each row execute function write_audit_entry('when named');
create trigger task_kind_audit after insert or update or delete on task_kind
    for each row execute function write_audit_entry('when named');
-- A calibration that is taken into use; one made in the background names nobody.
create trigger calibration_used_audit after update of current on calibration
    for each row execute function write_audit_entry('when named', 'past', 'figures', 'record');
