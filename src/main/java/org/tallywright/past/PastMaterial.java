package org.tallywright.past;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/**
 * A material of a past job. What went in is known of the job's whole material; where several lines of its estimate name the
 * same one, each has the share that was estimated for it.
 *
 * @param id of the estimate's line; of the material where no line named it
 * @param pieceId null for the whole job
 * @param estimated net, null where no line named it
 * @param priceThen what a unit was estimated at, null where no line named it
 * @param freight of the line as it was estimated; zero where none was, or no line named it
 * @param share of the job's material, above 0 up to 1
 * @param net of the job, in the finished work; null where nobody said so
 * @param charged what the job consumed of it; null where nothing was bought or taken
 * @param cost what that cost, less credits
 * @param shared it is for the whole job, and one of several pieces is looked at
 */
public record PastMaterial(
        UUID id,
        @Nullable UUID pieceId,
        UUID materialId,
        String name,
        String unit,
        @Nullable Quantity estimated,
        @Nullable UnitPrice priceThen,
        Money freight,
        Yield startingYield,
        BigDecimal share,
        @Nullable Quantity net,
        @Nullable Quantity charged,
        @Nullable Money cost,
        boolean shared) {

    /** For several pieces together: how much went into one of them nobody knows. */
    PastMaterial forSeveral() {
        return new PastMaterial(
                id,
                pieceId,
                materialId,
                name,
                unit,
                estimated,
                priceThen,
                freight,
                startingYield,
                share,
                net,
                charged,
                cost,
                true);
    }

    /** The net quantity to start from: what went in; else what was estimated; else what was bought, at the starting yield. */
    Quantity there() {
        if (net != null) {
            return net.times(share);
        }
        if (estimated != null) {
            return estimated;
        }
        return charged == null ? Quantity.ZERO : charged.times(startingYield.amount());
    }

    /** {@code 33 bf in the work there, 50 bf bought}; no money. */
    String words() {
        String bought = charged == null ? "none bought" : amount(charged.times(share)) + " bought";
        if (net != null) {
            return amount(net.times(share)) + " in the work there, " + bought;
        }
        String likely = estimated == null ? "" : ", " + amount(estimated) + " estimated";
        return bought + likely + ", nobody said how much is in the work there";
    }

    private String amount(Quantity some) {
        return rounded(some) + " " + unit;
    }

    private Quantity rounded(Quantity some) {
        return Quantity.of(some.amount().setScale(places(unit), RoundingMode.HALF_UP));
    }

    /** Hundredths, of a cubic metre finer: a hundredth of that is four board feet. */
    static int places(String unit) {
        return Math.max(2, Unit.known(unit).map(Unit::places).orElse(0));
    }
}
