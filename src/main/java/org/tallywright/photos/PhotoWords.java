package org.tallywright.photos;

import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.JobPhotos;
import org.tallywright.jobs.ShopDates;
import org.tallywright.photos.picture.PhotoReader;
import org.tallywright.shared.ShopClock;

/** Photos as pages show them. */
@Component
public class PhotoWords implements JobPhotos {
    private final PhotoRows rows;
    private final ShopDates dates;
    private final ShopClock clock;

    PhotoWords(PhotoRows rows, ShopDates dates, ShopClock clock) {
        this.rows = rows;
        this.dates = dates;
        this.clock = clock;
    }

    /**
     * A photo in a sheet of them.
     *
     * @param alt the caption, or what else is known of it
     * @param when {@code taken Tue 24 Nov} by the camera, {@code sent Tue 24 Nov} where that says nothing
     * @param width of the small picture in pixels, as {@code height}
     */
    public record Print(
            UUID id,
            String caption,
            String alt,
            String when,
            String person,
            String piece,
            boolean forClient,
            int width,
            int height) {}

    public Print print(PhotoRows.Row row) {
        String day = dates.day(clock.dateOf(row.takenAt()));
        String piece = row.piece() == null ? "" : row.piece();
        double by = Math.min(1, (double) PhotoReader.SMALL / Math.max(row.width(), row.height()));
        return new Print(
                row.id(),
                row.caption(),
                alt(row.caption(), piece, day),
                (row.byCamera() ? "taken " : "sent ") + day,
                row.person(),
                piece,
                row.forClient(),
                (int) Math.max(1, Math.round(row.width() * by)),
                (int) Math.max(1, Math.round(row.height() * by)));
    }

    private static String alt(String caption, String piece, String day) {
        if (!caption.isEmpty()) {
            return caption;
        }
        return piece.isEmpty() ? "Photo of " + day : piece + ", photo of " + day;
    }

    @Override
    public Shown of(UUID jobId, int most) {
        List<Thumb> newest = rows.of(jobId, most, 0).stream()
                .map(this::print)
                .map(print -> new Thumb(print.id(), print.alt(), print.width(), print.height()))
                .toList();
        return new Shown(rows.count(jobId), newest);
    }
}
