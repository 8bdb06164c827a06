package org.tallywright.photos;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Reads photos: what is said of them in one query, and one picture at a time. Those taken out are not there. */
@Component
@Transactional(readOnly = true)
public class PhotoRows {
    private static final String SAID = """
            select p.id, p.caption, p.taken_at, p.dated_by, p.for_client, p.width, p.height, p.piece_id,
                i.name as piece, a.id as person_id, a.name as person
            from photo p join person a on a.id = p.added_by left join piece i on i.id = p.piece_id
            where p.job_id = :job and p.removed_at is null
            """;

    private final JdbcClient jdbc;

    PhotoRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * @param byCamera whether the camera said when; else it is when the photo arrived
     * @param width of the large picture in pixels, as {@code height}
     */
    public record Row(
            UUID id,
            String caption,
            Instant takenAt,
            boolean byCamera,
            boolean forClient,
            int width,
            int height,
            @Nullable UUID pieceId,
            @Nullable String piece,
            UUID personId,
            String person) {}

    /** The newest first. */
    public List<Row> of(UUID job, int most, int skip) {
        return jdbc.sql(SAID + "order by p.taken_at desc, p.id desc limit :most offset :skip")
                .param("job", job)
                .param("most", most)
                .param("skip", skip)
                .query(PhotoRows::row)
                .list();
    }

    /** Those that belong to a piece of the job, the newest first. */
    public List<Row> ofPieces(UUID job) {
        return jdbc.sql(SAID + "and p.piece_id is not null order by p.taken_at desc, p.id desc")
                .param("job", job)
                .query(PhotoRows::row)
                .list();
    }

    /** Those the client may see, the newest first. */
    public List<Row> forClient(UUID job) {
        return jdbc.sql(SAID + "and p.for_client order by p.taken_at desc, p.id desc")
                .param("job", job)
                .query(PhotoRows::row)
                .list();
    }

    public int count(UUID job) {
        return jdbc.sql("select count(*) from photo where job_id = ? and removed_at is null")
                .param(job)
                .query(Integer.class)
                .single();
    }

    private static Row row(ResultSet row, int n) throws SQLException {
        return new Row(
                row.getObject("id", UUID.class),
                row.getString("caption"),
                row.getTimestamp("taken_at").toInstant(),
                row.getString("dated_by").equals("camera"),
                row.getBoolean("for_client"),
                row.getInt("width"),
                row.getInt("height"),
                row.getObject("piece_id", UUID.class),
                row.getString("piece"),
                row.getObject("person_id", UUID.class),
                row.getString("person"));
    }

    /** @return the JPEG, or nothing where the job has no such photo */
    public Optional<byte[]> picture(UUID job, UUID id, boolean small) {
        return picture(job, id, small, false);
    }

    /** Only of a photo that the client may see. */
    public Optional<byte[]> pictureForClient(UUID job, UUID id, boolean small) {
        return picture(job, id, small, true);
    }

    private Optional<byte[]> picture(UUID job, UUID id, boolean small, boolean clientsOnly) {
        return jdbc.sql("""
                        select c.jpeg from photo p join photo_picture c on c.photo_id = p.id
                        where p.job_id = ? and p.id = ? and c.size = ? and p.removed_at is null and (p.for_client or not ?)""")
                .params(job, id, small ? "small" : "large", clientsOnly)
                .query((row, n) -> row.getBytes(1))
                .optional();
    }
}
