package org.tallywright.photos.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.photos.PhotoDesk;
import org.tallywright.photos.PhotoDetails;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.web.FormReader;

/** What is said of a photo, as typed; of several that are sent at once the same. */
record PhotoForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String caption,
        @Nullable String piece,
        @Nullable String forClient) {
    PhotoForm {
        caption = caption == null ? "" : caption;
        piece = piece == null ? "" : piece;
        forClient = forClient == null ? "" : forClient;
    }

    /** Both may come from where the photo was asked for, such as an opening that is measured. */
    static PhotoForm blank(String piece, String caption) {
        return new PhotoForm(null, null, caption, piece, "");
    }

    static PhotoForm of(PhotoDesk.Kept kept) {
        UUID piece = kept.details().pieceId();
        return new PhotoForm(
                kept.id(),
                kept.version(),
                kept.details().caption(),
                piece == null ? "" : piece.toString(),
                kept.details().forClient() ? "true" : "");
    }

    @Nullable
    PhotoDetails read(FormReader read) {
        String words = read.field("caption", () -> Typed.line(text(caption), 200));
        UUID of = read.optional("piece", piece, () -> pieceId(text(piece)));
        return read.refused() || words == null ? null : new PhotoDetails(words, of, "true".equals(forClient));
    }

    private static UUID pieceId(String typed) {
        try {
            return UUID.fromString(typed.strip());
        } catch (IllegalArgumentException e) {
            throw new NotUnderstood("Pick a piece of this job.");
        }
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }

    /** @param pieces names of the job's pieces by id */
    List<Stale.Row> beside(PhotoForm theirs, Map<String, String> pieces) {
        return List.of(
                new Stale.Row("Caption", text(theirs.caption), text(caption)),
                new Stale.Row(
                        "Piece", pieces.getOrDefault(text(theirs.piece), ""), pieces.getOrDefault(text(piece), "")),
                new Stale.Row("Client sees it", yesNo(theirs.forClient), yesNo(forClient)));
    }

    private static String yesNo(@Nullable String ticked) {
        return "true".equals(ticked) ? "yes" : "no";
    }
}
