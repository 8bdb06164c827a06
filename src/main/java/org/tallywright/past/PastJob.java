package org.tallywright.past;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.NotHere;

/** What a copy of a past job, or of one of its pieces, is made from. Lines of options that nobody took are not in it. */
public record PastJob(
        JobRef ref, List<PastPiece> pieces, List<PastTask> tasks, List<PastMaterial> materials, List<PastCost> costs) {

    /**
     * The same with one piece alone, and the material that is for the whole job: of an only piece it is all its own.
     *
     * @throws NotHere where the job has no such piece
     */
    PastJob only(UUID piece) {
        PastPiece one =
                pieces.stream().filter(p -> p.id().equals(piece)).findFirst().orElseThrow(() -> new NotHere("piece"));
        boolean alone = pieces.size() == 1;
        return new PastJob(
                ref,
                List.of(one),
                tasks.stream().filter(t -> piece.equals(t.pieceId())).toList(),
                materials.stream()
                        .filter(m -> m.pieceId() == null || piece.equals(m.pieceId()))
                        .map(m -> m.pieceId() == null && !alone ? m.forSeveral() : m)
                        .toList(),
                List.of());
    }

    /** Tasks of a piece, or of the whole job. */
    List<PastTask> tasksOf(@org.jspecify.annotations.Nullable UUID piece) {
        return tasks.stream().filter(t -> Objects.equals(t.pieceId(), piece)).toList();
    }
}
