package org.tallywright.catalog;

import jakarta.persistence.Convert;
import jakarta.persistence.Embeddable;
import java.math.BigDecimal;
import java.util.UUID;
import org.tallywright.shared.Ids;

/** A proposed task as a row of its kind of piece. */
@Embeddable
record KeptLine(
        UUID id,
        UUID taskKindId,
        int position,
        @Convert(converter = MeasureColumn.class) Measure measure,
        BigDecimal factor,
        boolean roundUp) {
    static KeptLine of(int position, PieceKindLine line) {
        return new KeptLine(Ids.next(), line.taskKindId(), position, line.measure(), line.factor(), line.roundUp());
    }

    PieceKindLine plain() {
        return new PieceKindLine(taskKindId, measure, factor, roundUp);
    }
}
