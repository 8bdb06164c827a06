package org.tallywright.takeoff;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.estimates.BuyListLine;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.EstimateSheet.MaterialRow;
import org.tallywright.estimates.LaidOut;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Quantity;

/**
 * The lines of one material in an estimate that came from the buy list: the first, and one more for each time that the need
 * grew after it was agreed. Ids follow from job, material and place, so that putting again finds them.
 *
 * @param held agreed, offered in a change order or in an option that the client has not left out: they stay
 * @param next the id of the line that takes what is needed beyond them
 */
record BuyChain(List<MaterialRow> held, UUID next) {
    /** Lines gone by hand leave gaps; more than this many in a row are not looked past. */
    private static final int GAP = 10;

    private static final Quantity LEAST = new Quantity(new BigDecimal("0.0001"));

    /** @param which empty for the line that parts are cut from, another word for a second line of the material */
    static BuyChain of(UUID job, UUID material, String which, EstimateSheet sheet) {
        List<UUID> ids = ids(job, material, which, sheet.materials().size());
        // A line in an option that was left out covers nothing, and what is put on it would be offered to nobody.
        List<MaterialRow> held = stay(ids, sheet.offered());
        Set<UUID> taken = stay(ids, sheet).stream().map(MaterialRow::id).collect(Collectors.toSet());
        return new BuyChain(
                held, ids.stream().filter(id -> !taken.contains(id)).findFirst().orElseThrow());
    }

    private static List<MaterialRow> stay(List<UUID> ids, EstimateSheet sheet) {
        return sheet.materials().stream()
                .filter(row -> ids.contains(row.id()) && !follows(row))
                .toList();
    }

    /** Whether a line still changes with the buy list. */
    static boolean follows(MaterialRow row) {
        return row.lot().isFree() && row.lot().option() == null;
    }

    static boolean isOurs(UUID job, MaterialRow row, int lines) {
        return ids(job, row.materialId(), "", lines).contains(row.id())
                || ids(job, row.materialId(), "/supply", lines).contains(row.id());
    }

    private static List<UUID> ids(UUID job, UUID material, String which, int lines) {
        String first = "buy list/" + job + "/" + material + which;
        return IntStream.range(0, lines + GAP)
                .mapToObj(n ->
                        UUID.nameUUIDFromBytes((n == 0 ? first : first + "/" + n).getBytes(StandardCharsets.UTF_8)))
                .toList();
    }

    /** The line that takes what is charged beyond the held ones; null where that is nothing. */
    @Nullable
    BuyListLine wanted(MaterialCard card, Charge charge) {
        if (charge.isNothing()) {
            return null;
        }
        // Offcuts that do half the time are not there the other half: then count what is safe.
        Quantity likely = charge.likely().isZero() ? charge.safe() : charge.likely();
        if (held.isEmpty()) {
            LaidOut laidOut = charge.laidOut() ? new LaidOut(likely, charge.safe(), charge.covered()) : null;
            return line(card, charge.net(), laidOut, charge.stock());
        }
        Quantity agreed = sum(held.stream().map(MaterialRow::purchase).toList());
        Quantity more = (charge.laidOut() ? likely : byYield(card, charge)).minus(agreed);
        if (more.isZero() || more.isNegative()) {
            return null;
        }
        Quantity net = charge.net()
                .minus(sum(held.stream().map(row -> row.net().quantity()).toList()));
        Quantity stock =
                charge.stock().minus(sum(held.stream().map(MaterialRow::stock).toList()));
        // The difference of two purchases is a quantity of its own, whatever yield lies behind them.
        return line(
                card,
                net.compareTo(more) > 0 ? more : net,
                new LaidOut(more, charge.safe().minus(agreed), charge.covered().plus(agreed)),
                stock.isNegative() ? Quantity.ZERO : stock);
    }

    private static Quantity byYield(MaterialCard card, Charge charge) {
        return new NetQuantity(charge.net())
                .grossAt(card.startingYield())
                .wholeUnits(Quantity.of(card.purchaseStep()))
                .times(card.purchaseStep());
    }

    private static Quantity sum(List<Quantity> quantities) {
        return quantities.stream().reduce(Quantity.ZERO, Quantity::plus);
    }

    private BuyListLine line(MaterialCard card, Quantity net, @Nullable LaidOut laidOut, Quantity stock) {
        Quantity some = net.compareTo(LEAST) < 0 ? LEAST : net;
        return new BuyListLine(next, card.id(), new NetQuantity(some), laidOut, stock, null);
    }
}
