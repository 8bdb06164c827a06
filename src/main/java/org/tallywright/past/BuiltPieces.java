package org.tallywright.past;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.Money;

/** Finds pieces the shop has built, and what they took: one query each, however many pieces. */
@Component
@Transactional(readOnly = true)
public class BuiltPieces {
    /** More than a small shop builds in its life. */
    private static final int MOST = 5_000;

    private static final String FIND = """
            select p.*, j.number, j.title, c.name as client, coalesce(k.name, '') as kind, j.state = 'closed' as closed,
                coalesce(j.closed_on, t.done_on) as finished, coalesce(t.done > 0 and t.open = 0, false) as built
            from piece p
            join job j on j.id = p.job_id
            join client c on c.id = j.client_id
            left join piece_kind k on k.id = p.piece_kind_id
            left join (select piece_id, count(*) filter (where state = 'done') as done, max(done_on) as done_on,
                    count(*) filter (where state in ('planned', 'started')) as open
                from task where piece_id is not null group by piece_id) t on t.piece_id = p.id
            where %s
            order by coalesce(j.closed_on, t.done_on) desc nulls last, p.id desc
            limit :most""";

    private static final String TOOK = """
            with asked as materialized (select p.id, p.job_id from piece p where p.id in (:pieces)),
            frozen as (
                select x."taskId" as task_id, x."rateMinutes" as minutes
                from (select distinct on (r.job_id) r.figures from review r join job j on j.id = r.job_id and j.state = 'closed'
                    where r.job_id in (select job_id from asked) order by r.job_id, r.closing desc) r
                cross join lateral jsonb_to_recordset(r.figures -> 'tasks') as x("taskId" uuid, "rateMinutes" int)),
            logged as (
                select e.task_id, sum(e.minutes) filter (where e.hour_class not in (%s)) as minutes,
                    sum(e.minutes) filter (where e.hour_class = 'rework') as rework,
                    sum(e.minutes) filter (where e.hour_class = 'call-back') as call_back,
                    sum(e.minutes) filter (where e.hour_class = 'standby') as standby
                from time_entry e join task t on t.id = e.task_id
                where t.piece_id in (select id from asked) group by e.task_id)
            select t.piece_id, coalesce(sum(t.estimated_minutes) filter (where t.state not in ('dropped', 'offered')), 0) as estimated,
                coalesce(sum(coalesce(f.minutes, l.minutes)), 0) as minutes, coalesce(sum(l.rework), 0) as rework,
                coalesce(sum(l.call_back), 0) as call_back, coalesce(sum(l.standby), 0) as standby
            from task t left join frozen f on f.task_id = t.id left join logged l on l.task_id = t.id
            where t.piece_id in (select id from asked) group by t.piece_id""".formatted(PastJobs.BESIDE);

    /**
     * By the share of each line that was estimated; the only piece of a job has all of its material. Where a job of several has
     * some that was given to none of them, what one took is not known, and its pieces are left out.
     */
    private static final String MATERIAL = """
            with asked as materialized (
                select p.id, p.job_id, (select count(*) from piece q where q.job_id = p.job_id) = 1 as alone
                from piece p where p.id in (:pieces)),
            line as (
                select l.job_id, l.piece_id, l.material_id, sum(l.net_quantity) as net,
                    sum(sum(l.net_quantity)) over (partition by l.job_id, l.material_id) as all_net
                from estimate_material l where l.job_id in (select job_id from asked) and %s group by 1, 2, 3),
            named as (
                select job_id, material_id, count(*) = count(piece_id) as by_piece from line group by job_id, material_id),
            astray as (
                select m.job_id from job_material m join material c on c.id = m.material_id and c.material_group <> 'other'
                left join named n on n.job_id = m.job_id and n.material_id = m.material_id
                where m.job_id in (select job_id from asked where not alone) and m.cost_amount <> 0 and n.by_piece is not true)
            select a.id, sum(m.cost_amount * case when a.alone then 1 else l.net / l.all_net end) as cost
            from asked a
            join job_material m on m.job_id = a.job_id
            join material c on c.id = m.material_id and c.material_group <> 'other'
            left join line l on l.job_id = a.job_id and l.piece_id = a.id and l.material_id = m.material_id
            where a.alone or l.net is not null and a.job_id not in (select job_id from astray)
            group by a.id""".formatted(TakenLines.MATERIALS);

    private static final String BESIDES = """
            select e.job_id, sum(e.minutes) as minutes from time_entry e left join task t on t.id = e.task_id
            where e.job_id in (:jobs) and t.piece_id is null and e.hour_class not in (%s)
            group by e.job_id""".formatted(PastJobs.BESIDE);

    private final JdbcClient jdbc;

    BuiltPieces(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The nearest in size first where sizes are asked for, else the latest. */
    public List<BuiltPiece> find(BuiltSearch search) {
        List<BuiltPiece> found = jdbc.sql(FIND.formatted(conditions(search)))
                .param("kind", search.kind())
                .param("like", search.like())
                .param("not", search.not())
                .param("most", MOST)
                .query(BuiltPieces::piece)
                .list();
        return search.hasSizes()
                ? found.stream()
                        .sorted(Comparator.comparingDouble(search::distance))
                        .toList()
                : found;
    }

    /** Put together from fixed text; what was typed stays a parameter. */
    private static String conditions(BuiltSearch search) {
        List<String> all = new ArrayList<>();
        all.add("true");
        if (search.kind() != null) {
            all.add("p.piece_kind_id = :kind");
        }
        if (!search.words().isEmpty()) {
            all.add("(lower(p.name) like :like or j.number like :like or lower(j.title) like :like"
                    + " or lower(c.name) like :like or lower(k.name) like :like)");
        }
        if (search.not() != null) {
            all.add("p.job_id <> :not");
        }
        if (!search.all()) {
            all.add("t.done > 0 and t.open = 0");
        }
        return String.join(" and ", all);
    }

    private static BuiltPiece piece(ResultSet row, int n) throws SQLException {
        return new BuiltPiece(
                row.getObject("id", UUID.class),
                row.getObject("job_id", UUID.class),
                row.getString("number"),
                row.getString("title"),
                row.getString("client"),
                row.getString("kind"),
                new PieceDetails(
                        row.getObject("piece_kind_id", UUID.class),
                        row.getString("name"),
                        PastJobs.length(row, "width"),
                        PastJobs.length(row, "height"),
                        PastJobs.length(row, "depth"),
                        row.getInt("count"),
                        row.getString("note")),
                row.getObject("finished", LocalDate.class),
                row.getBoolean("built"),
                row.getBoolean("closed"));
    }

    /** Hours of each piece, tasks that were left out but begun with them; of closed jobs as their reviews froze them. */
    public Map<UUID, BuiltPiece.Took> took(Collection<BuiltPiece> pieces) {
        Map<UUID, BuiltPiece.Took> took = new HashMap<>();
        if (!pieces.isEmpty()) {
            jdbc.sql(TOOK).param("pieces", ids(pieces)).query(row -> {
                took.put(
                        row.getObject("piece_id", UUID.class),
                        new BuiltPiece.Took(
                                row.getInt("estimated"),
                                row.getInt("minutes"),
                                row.getInt("rework"),
                                row.getInt("call_back"),
                                row.getInt("standby")));
            });
        }
        return took;
    }

    /** What the material of each piece cost, for the owner only; a piece of whose material nothing is known is missing. */
    public Map<UUID, Money> material(Collection<BuiltPiece> pieces) {
        Map<UUID, Money> costs = new HashMap<>();
        if (!pieces.isEmpty()) {
            jdbc.sql(MATERIAL).param("pieces", ids(pieces)).query(row -> {
                BigDecimal cost = row.getBigDecimal("cost");
                if (cost != null) {
                    costs.put(row.getObject("id", UUID.class), Money.of(cost));
                }
            });
        }
        return costs;
    }

    /** Minutes of each job on none of its pieces: travel, measuring, bids; without rework and the like. */
    public Map<UUID, Integer> besides(Collection<BuiltPiece> pieces) {
        Map<UUID, Integer> minutes = new HashMap<>();
        if (!pieces.isEmpty()) {
            jdbc.sql(BESIDES)
                    .param(
                            "jobs",
                            pieces.stream().map(BuiltPiece::jobId).distinct().toList())
                    .query(row -> {
                        minutes.put(row.getObject("job_id", UUID.class), row.getInt("minutes"));
                    });
        }
        return minutes;
    }

    private static List<UUID> ids(Collection<BuiltPiece> pieces) {
        return pieces.stream().map(BuiltPiece::id).toList();
    }
}
