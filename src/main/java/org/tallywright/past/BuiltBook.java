package org.tallywright.past;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.shared.Money;

/** The pieces the shop has built: a page of those that are looked for, and the ranges of a kind. */
@Service
public class BuiltBook {
    private final BuiltPieces pieces;
    private final PieceKinds kinds;

    BuiltBook(BuiltPieces pieces, PieceKinds kinds) {
        this.pieces = pieces;
        this.kinds = kinds;
    }

    /**
     * @param found pieces on all pages
     * @param costs of material, nothing where the reader sees no money
     * @param ranges of all that were found; null where no kind is picked
     */
    public record Found(
            List<BuiltPiece> page,
            int found,
            Map<UUID, BuiltPiece.Took> took,
            Map<UUID, Money> costs,
            @Nullable BuiltRanges ranges) {}

    /** @param page from 1 */
    @Transactional(readOnly = true)
    public Found find(BuiltSearch search, int page, int size, boolean money) {
        List<BuiltPiece> all = pieces.find(search);
        List<BuiltPiece> shown =
                all.stream().skip((long) (page - 1) * size).limit(size).toList();
        UUID kind = search.kind();
        List<BuiltPiece> asked = kind == null ? shown : all;
        Map<UUID, BuiltPiece.Took> took = pieces.took(asked);
        Map<UUID, Money> costs = money ? pieces.material(asked) : Map.of();
        BuiltRanges ranges = kind == null
                ? null
                : BuiltRanges.of(Scaling.natural(kinds.find(kind).orElse(null)), all, took, costs, pieces.besides(all));
        return new Found(shown, all.size(), took, costs, ranges);
    }
}
