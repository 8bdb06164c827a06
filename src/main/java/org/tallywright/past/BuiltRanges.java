package org.tallywright.past;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.SeenRange;
import org.tallywright.catalog.Measure;
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.shared.Money;

/**
 * What pieces of one kind took, those built alone, each weighing the same. Rework, call-backs and standby are in no range and
 * stand apart, and so do the hours of their jobs on no piece.
 *
 * @param natural what the kind is measured by
 * @param hours hours for one piece
 * @param perMeasure hours for one unit of the measure; empty where no piece has its sizes
 * @param material money for one piece, empty for who sees none
 * @param unpaid built pieces of whose material nothing sound is known; they are in no range of it
 * @param rework minutes of all together
 * @param reworked pieces that had any
 * @param besides hours of one job on no piece
 */
public record BuiltRanges(
        Measure natural,
        Optional<SeenRange> hours,
        Optional<SeenRange> perMeasure,
        Optional<SeenRange> material,
        Optional<SeenRange> materialPerMeasure,
        int unpaid,
        int rework,
        int reworked,
        Optional<SeenRange> besides) {

    /** What pieces of a kind are measured by: face or width, else only counted. */
    public static Measure natural(PieceKindCard kind) {
        return Scaling.natural(kind);
    }

    /** @param costs of the pieces' material; nothing where the reader sees no money */
    static BuiltRanges of(
            Measure natural,
            List<BuiltPiece> pieces,
            Map<UUID, BuiltPiece.Took> took,
            Map<UUID, Money> costs,
            Map<UUID, Integer> besides) {
        List<BuiltPiece> built = pieces.stream().filter(BuiltPiece::built).toList();
        List<BuiltPiece> logged =
                built.stream().filter(p -> minutes(p, took) > 0).toList();
        List<BuiltPiece> paid =
                built.stream().filter(p -> costs.containsKey(p.id())).toList();
        ToDoubleFunction<BuiltPiece> hours = p -> minutes(p, took) / 60.0;
        ToDoubleFunction<BuiltPiece> money = p -> cost(p, costs);
        List<Integer> again =
                built.stream().map(p -> of(p, took).beside()).filter(m -> m > 0).toList();
        return new BuiltRanges(
                natural,
                range(logged, Measure.EACH, hours),
                natural == Measure.EACH ? Optional.empty() : range(logged, natural, hours),
                range(paid, Measure.EACH, money),
                natural == Measure.EACH ? Optional.empty() : range(paid, natural, money),
                built.size() - paid.size(),
                again.stream().mapToInt(m -> m).sum(),
                again.size(),
                SeenRange.of(jobs(built)
                        .mapToDouble(job -> besides.getOrDefault(job, 0) / 60.0)
                        .toArray()));
    }

    /** Pieces without the sizes that it takes are left out, and so do not count in its n. */
    private static Optional<SeenRange> range(
            List<BuiltPiece> pieces, Measure measure, ToDoubleFunction<BuiltPiece> figure) {
        return SeenRange.of(pieces.stream()
                .flatMap(piece -> piece.measure(measure).map(BigDecimal::doubleValue).stream()
                        .map(size -> figure.applyAsDouble(piece) / size))
                .mapToDouble(d -> d)
                .toArray());
    }

    private static Stream<UUID> jobs(List<BuiltPiece> built) {
        return built.stream().map(BuiltPiece::jobId).distinct();
    }

    private static int minutes(BuiltPiece piece, Map<UUID, BuiltPiece.Took> took) {
        return of(piece, took).minutes();
    }

    private static BuiltPiece.Took of(BuiltPiece piece, Map<UUID, BuiltPiece.Took> took) {
        return took.getOrDefault(piece.id(), BuiltPiece.Took.NOTHING);
    }

    private static double cost(BuiltPiece piece, Map<UUID, Money> costs) {
        @Nullable Money cost = costs.get(piece.id());
        return cost == null ? 0 : cost.amount().doubleValue();
    }
}
