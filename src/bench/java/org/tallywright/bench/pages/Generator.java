package org.tallywright.bench.pages;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * Fills an empty shop with made-up work of twelve people, the same from run to run and always up to yesterday. Every won
 * job has the same size, whatever the number of years: 20 tasks, 73 time entries, 8 purchases and 8 uses. The last 24 won
 * jobs run; 6 jobs are leads and 6 are being bid for.
 */
final class Generator {
    private static final int ENTRIES_PER_JOB = 73;
    private static final int RUNNING = 24;

    private final Connection connection;
    private final int won;
    private final int lost;
    private final int days;

    Generator(Connection connection, int wonJobs, int lostJobs, int days) {
        this.connection = connection;
        this.won = wonJobs;
        this.lost = lostJobs;
        this.days = days;
    }

    /** Triggers and foreign keys are made for people; row by row they are slow for 200,000 rows that keep the rules. */
    void people(String signInName, String passwordHash) throws SQLException {
        trusted();
        run("""
            insert into shop (id, name, time_zone, overhead_rate, created_at, version)
            values (1, 'Ten Year Joinery', 'UTC', 15, now(), 0)""");
        run("""
            insert into person (id, name, role, created_at, version)
            select md5('person' || n)::uuid, 'Person ' || n,
                case n when 1 then 'owner' when 2 then 'lead' else 'helper' end, now(), 0
            from generate_series(1, 12) n""");
        run("""
            insert into wage (id, person_id, from_date, wage_amount, burden_percent, version)
            select md5('wage' || n || '.' || y)::uuid, md5('person' || n)::uuid, current_date - 365 * y, 20 + n - y * 0.5, 30, 0
            from generate_series(1, 12) n, generate_series(0, 10) y""");
        try (PreparedStatement account = connection.prepareStatement("""
                insert into account (person_id, sign_in_name, password_hash, created_at, version)
                values (md5('person1')::uuid, ?, ?, now(), 0)""")) {
            account.setString(1, signInName);
            account.setString(2, passwordHash);
            account.executeUpdate();
        }
    }

    void work() throws SQLException {
        trusted();
        // Both take a lock for each row: right for people, slow for 200,000 rows that keep the rules.
        run("alter table time_entry disable trigger time_entry_day_possible");
        run("alter table time_entry disable trigger time_entry_fixed_week");
        jobs();
        tasks();
        bids();
        materials();
        hours();
        rest();
        run("vacuum analyze");
    }

    private void jobs() throws SQLException {
        run("""
            insert into client (id, name, version)
            select md5('client' || n)::uuid, 'Client ' || n, 0 from generate_series(1, %d) n""".formatted(clients()));
        run("""
            insert into site (id, client_id, address, one_way_minutes, version)
            select md5('site' || n)::uuid, md5('client' || n)::uuid, n || ' Long Lane', 25, 0
            from generate_series(1, %d) n""".formatted(clients()));
        // A won job is over 31 days after it opened; the lost ones lie between them.
        run("""
            create temporary table made as
            select 'w' || n as code, md5('jobw' || n)::uuid as id, n as seq,
                current_date - 31 - ((%1$d - n)::bigint * %3$d / %1$d)::int as opened,
                case when n > %1$d - %4$d then 'running' else 'closed' end as state
            from generate_series(1, %1$d) n
            union all
            select 'l' || n, md5('jobl' || n)::uuid, n, current_date - 40 - ((%2$d - n)::bigint * %3$d / %2$d)::int, 'lost'
            from generate_series(1, %2$d) n
            union all
            select 'o' || n, md5('jobo' || n)::uuid, n, current_date - n, case when n %% 2 = 0 then 'lead' else 'bidding' end
            from generate_series(1, 12) n""".formatted(won, lost, days, RUNNING));
        run("""
            insert into job (id, year, sequence, number, client_id, site_id, title, state, opened_on, accepted_on, promised_on,
                closed_on, version)
            select id, year, sequence, lpad((year %% 100)::text, 2, '0') || '-' || lpad(sequence::text, greatest(3, length(sequence::text)), '0'),
                md5('client' || client)::uuid, md5('site' || client)::uuid, 'Built-ins ' || code, state, opened,
                case when state in ('running', 'closed') then opened + 2 end, opened + 45,
                case when state = 'closed' then opened + 31 end, 0
            from (select *, extract(year from opened)::int as year, 1 + abs(hashtext(code)) %% %1$d as client,
                row_number() over (partition by extract(year from opened) order by opened, code) as sequence from made) m""".formatted(clients()));
        run("""
            insert into job_stage (job_id, stage_id, entered_on, done_on, version)
            select m.id, s.id, m.opened + s.position * 2,
                case when m.state = 'closed' or s.position < 6 then m.opened + s.position * 2 + 2 end, 0
            from made m, stage s where m.code like 'w%' and (m.state = 'closed' or s.position <= 6)""");
        run("""
            insert into job_stage (job_id, stage_id, version)
            select m.id, s.id, 0 from made m, stage s where true on conflict do nothing""");
    }

    private void tasks() throws SQLException {
        run("""
            insert into piece (id, job_id, name, width, height, depth, count, position, version)
            select md5('piece' || m.code || '.' || n)::uuid, m.id, 'Bookcase ' || n, 292608, 731520, 97536, 1, n, 0
            from made m, generate_series(1, 3) n""");
        run("""
            insert into task (id, job_id, piece_id, task_kind_id, stage_id, name, quantity, unit, starting_unit_hours, unit_hours,
                estimated_minutes, state, planned_on, assigned_to, started_on, done_on, done_by, quantity_done,
                quantity_confirmed, position, version)
            select md5('task' || m.code || '.' || n)::uuid, m.id, md5('piece' || m.code || '.' || 1 + n % 3)::uuid, k.id, k.stage_id,
                k.name, 4, k.unit, k.unit_hours, k.unit_hours, round(4 * k.unit_hours * 60)::int, s.state,
                case when m.state = 'running' then current_date + n - 16 end,
                case when m.state = 'running' then md5('person' || 1 + (m.seq + n) % 12)::uuid end,
                case when s.state in ('done', 'started') then m.opened + n end,
                case when s.state = 'done' then m.opened + n + 5 end,
                case when s.state = 'done' then md5('person' || 1 + n % 12)::uuid end,
                case when s.state = 'done' then 4 end, s.state = 'done', n, 0
            from made m, generate_series(1, 20) n
            join (select *, row_number() over (order by code) as nr, count(*) over () as all_kinds from task_kind) k on true
            cross join lateral (select case when m.state = 'closed' then 'done' when m.state <> 'running' then 'planned'
                when n <= 10 then 'done' when n <= 15 then 'started' else 'planned' end as state) s
            where k.nr = 1 + (n * 7 + m.seq) % k.all_kinds""");
        run("""
            insert into job_event (id, job_id, task_id, kind, from_state, to_state, on_date, at, person_id)
            select md5('event' || id)::uuid, job_id, id, 'task', 'started', 'done', done_on, done_on::timestamp at time zone 'UTC', done_by
            from task where state = 'done'""");
        run("""
            insert into wait (id, job_id, task_id, what, started_at, minutes, ends_at, version)
            select md5('wait' || m.code || '.' || n)::uuid, m.id, md5('task' || m.code || '.' || n)::uuid, 'finish cures', x.at, 2880,
                x.at + interval '2 days', 0
            from made m, generate_series(1, 2) n
            cross join lateral (select case when m.state = 'running' then now() - interval '1 day' * n - interval '1 hour'
                else m.opened + n + interval '17 hours' end as at) x
            where m.code like 'w%'""");
        run("""
            insert into punch_item (id, job_id, text, raised_on, done_on, version)
            select md5('punch' || m.code || '.' || n)::uuid, m.id, 'Touch up edge ' || n, m.opened + 28,
                case when m.state = 'closed' then m.opened + 30 end, 0
            from made m, generate_series(1, 3) n where m.code like 'w%'""");
    }

    private void bids() throws SQLException {
        run("""
            insert into estimate (job_id, overhead_rate, contingency_percent, margin_percent, rounding_step_amount, version)
            select id, 15, 5, 15, 10, 0 from made""");
        run("""
            insert into estimate_crew (job_id, person_id, share_percent)
            select id, md5('person' || n)::uuid, 50 from made, generate_series(1, 2) n""");
        run("""
            insert into estimate_material (id, job_id, material_id, net_quantity, yield, purchase_quantity, unit_price, amount,
                position, version)
            select md5('line' || m.code || '.' || n)::uuid, m.id, k.id, 8, 0.8, 10, 12, 120, n, 0
            from made m, generate_series(1, 6) n
            join (select id, row_number() over (order by code) as nr, count(*) over () as all_kinds from material) k on true
            where k.nr = 1 + (n * 5 + m.seq) % k.all_kinds""");
        run("""
            insert into bid (id, job_id, kind, mark, number, state, issued_at, issued_on, issued_by, valid_until,
                estimated_minutes, labour_rate, overhead_rate, labour_amount, material_amount, other_amount, overhead_amount,
                contingency_amount, margin_amount, rounding_amount, price_amount, total_amount, contingency_percent,
                margin_percent, document, accepted_at, accepted_on, accepted_name, accepted_via, version)
            select md5('bid' || m.code)::uuid, m.id, 'bid', 'A', j.number || '-A', 'accepted', m.opened + interval '9 hours', m.opened,
                md5('person1')::uuid, m.opened + 30, t.minutes, 32, 15, 2000, 720, 0, 500, 80, 700, 0, 4000, 4000, 5, 15, '{}',
                m.opened + interval '50 hours', m.opened + 2, 'Client', 'owner', 0
            from made m join job j on j.id = m.id
            join (select job_id, sum(estimated_minutes)::int as minutes from task group by job_id) t on t.job_id = m.id
            where m.code like 'w%'""");
        run("""
            insert into bid_task (bid_id, position, job_id, task_id, piece_name, stage_name, name, quantity, unit,
                starting_unit_hours, unit_hours, estimated_minutes)
            select b.id, t.position, t.job_id, t.id, 'Bookcase', 'Build', t.name, t.quantity, t.unit, t.starting_unit_hours,
                t.unit_hours, t.estimated_minutes
            from bid b join task t on t.job_id = b.job_id""");
        run("""
            insert into bid_material (bid_id, position, material_id, name, unit, net_quantity, yield, purchase_quantity,
                unit_price, amount)
            select b.id, l.position, l.material_id, k.name, k.unit, l.net_quantity, l.yield, l.purchase_quantity, l.unit_price,
                l.amount
            from bid b join estimate_material l on l.job_id = b.job_id join material k on k.id = l.material_id""");
    }

    private void materials() throws SQLException {
        run("""
            insert into purchase (id, job_id, material_id, quantity, unit_price, amount, supplier, receipt_number, bought_on,
                bought_by, version)
            select md5('purchase' || m.code || '.' || n)::uuid, m.id, k.id, 6, 12.5, 75, 'Yard', 'R-' || n, m.opened + n,
                md5('person1')::uuid, 0
            from made m, generate_series(1, 8) n
            join (select id, row_number() over (order by code) as nr, count(*) over () as all_kinds from material) k on true
            where k.nr = 1 + (n * 5 + m.seq) % k.all_kinds and m.code like 'w%'""");
        run("""
            insert into material_use (id, job_id, material_id, quantity, net_quantity, source, used_on, used_by, version)
            select md5('use' || p.id)::uuid, job_id, material_id, 5.5, 4.5, 'job', bought_on + 3, bought_by, 0
            from purchase p""");
    }

    private void hours() throws SQLException {
        run("""
            insert into time_entry (id, person_id, on_date, job_id, task_id, hour_class, minutes, reason, logged_by, logged_at, version)
            select md5('entry' || m.code || '.' || k)::uuid, md5('person' || p.nr)::uuid, m.opened + k * 30 / %1$d, m.id,
                md5('task' || m.code || '.' || 1 + k %% 12)::uuid, case when k %% 18 = 17 then 'rework' else 'direct' end,
                15 + 15 * (abs(hashtext(m.code || '.' || k)) %% 6), case when k %% 18 = 17 then 'cut short' else '' end,
                md5('person' || p.nr)::uuid, m.opened + k * 30 / %1$d + interval '17 hours', 0
            from made m, generate_series(0, %1$d - 1) k
            cross join lateral (select 1 + (m.seq * 5 + k) %% 12 as nr) p
            where m.code like 'w%%'""".formatted(ENTRIES_PER_JOB));
    }

    private void rest() throws SQLException {
        run("""
            insert into audit_entry (at, person_id, subject, subject_id, act, after)
            select logged_at, logged_by, 'time_entry', id::text, 'insert', to_jsonb(e) from time_entry e""");
        run("""
            insert into client_note (id, job_id, on_date, text, shown, version)
            select md5('note' || code)::uuid, id, opened + 10, 'The carcasses are together.', true, 0 from made where code like 'w%'""");
    }

    private int clients() {
        return (won + lost) / 4;
    }

    private void trusted() throws SQLException {
        run("set session_replication_role = replica");
    }

    private void run(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
