-- An issued bid is not taken out, and no line is put into it or taken from it later: its rows come and go only in the transaction that
-- wrote or answered it. (Updates are refused since the tables were made; their functions also named deletes, which never reached them.)
create function keep_issued_bid() returns trigger language plpgsql as $$
begin
    if exists (select from bid where id = old.id and xmin <> pg_current_xact_id()::xid) then
        raise exception 'an issued bid is not taken out' using errcode = 'TW002';
    end if;
    return old;
end $$;
create trigger bid_stays before delete on bid for each row execute function keep_issued_bid();

create function keep_lines_of_issued_bid() returns trigger language plpgsql as $$
declare
    line record := case when tg_op = 'DELETE' then old else new end;
begin
    if exists (select from bid where id = line.bid_id and xmin <> pg_current_xact_id()::xid) then
        raise exception 'an issued bid keeps its lines' using errcode = 'TW002';
    end if;
    return line;
end $$;
create trigger bid_task_stays before insert or delete on bid_task
    for each row execute function keep_lines_of_issued_bid();
create trigger bid_material_stays before insert or delete on bid_material
    for each row execute function keep_lines_of_issued_bid();
create trigger bid_other_stays before insert or delete on bid_other
    for each row execute function keep_lines_of_issued_bid();
