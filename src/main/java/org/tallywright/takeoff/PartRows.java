package org.tallywright.takeoff;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotHere;

/** Parts as kept, for pages and sums. */
@Component
public class PartRows {
    private static final String SELECT = """
            select p.*, q.count as pieces, q.name as piece_name,
                dense_rank() over (order by q.position, q.id, p.position, p.id) as number
            from part p join piece q on q.id = p.piece_id where p.job_id = ?
            order by q.position, q.id, p.position, p.id""";

    private final JdbcClient jdbc;

    PartRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * @param number on the job's cut list and drawings, from 1
     * @param rule the line of the formulas that it comes from, changed by hand or not; empty for one listed by hand
     * @param pieces how many pieces alike it stands in
     */
    public record Row(
            UUID id,
            UUID pieceId,
            String pieceName,
            int pieces,
            int number,
            PartDetails details,
            boolean byHand,
            String rule,
            int version) {
        /** For all pieces alike. */
        public int all() {
            return details.quantity() * pieces;
        }
    }

    public List<Row> ofJob(UUID job) {
        return jdbc.sql(SELECT).param(job).query(PartRows::row).list();
    }

    public List<Row> ofPiece(UUID job, UUID piece) {
        return ofJob(job).stream().filter(row -> row.pieceId().equals(piece)).toList();
    }

    /** @throws NotHere where the piece has no such part */
    public Row of(UUID job, UUID piece, UUID part) {
        return ofPiece(job, piece).stream()
                .filter(row -> row.id().equals(part))
                .findFirst()
                .orElseThrow(() -> new NotHere("part"));
    }

    private static Row row(ResultSet row, int n) throws SQLException {
        PartDetails details = new PartDetails(
                row.getString("name"),
                row.getInt("quantity"),
                new Length(row.getLong("length")),
                new Length(row.getLong("width")),
                row.getObject("material_id", UUID.class),
                row.getString("slot"),
                GrainColumn.of(row.getString("grain")),
                row.getString("matched"),
                row.getInt("long_edges"),
                row.getInt("short_edges"),
                row.getInt("faces"),
                row.getInt("joints"));
        return new Row(
                row.getObject("id", UUID.class),
                row.getObject("piece_id", UUID.class),
                row.getString("piece_name"),
                row.getInt("pieces"),
                row.getInt("number"),
                details,
                row.getBoolean("by_hand"),
                row.getString("rule"),
                row.getInt("version"));
    }
}
