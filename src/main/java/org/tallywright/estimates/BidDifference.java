package org.tallywright.estimates;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.UnitPrice;

/**
 * What a bid has that the one before it had not, line by line and sum by sum. Holds cost: for the owner only. Only what
 * differs is listed; a line is the same one where both were copied from the same working line, or else bear the same name.
 *
 * @param before number of the earlier bid
 */
public record BidDifference(String before, List<Line> lines, List<Sum> sums) {
    /** How a line changed. */
    public enum Change {
        ADDED,
        DROPPED,
        CHANGED
    }

    /**
     * One side of a line. The amount of a task is its hours at the bid's labour rate.
     *
     * @param hours of a task, or empty
     */
    public record Side(String quantity, String hours, Money amount) {}

    /** A line of either bid; an added one has no old side, a dropped one no new side. */
    public record Line(
            Change change,
            String name,
            @Nullable Side old,
            @Nullable Side now) {}

    /** @param part as the price's lines are called, "labour" first */
    public record Sum(String part, Money old, Money now) {
        public Money difference() {
            return now.minus(old);
        }
    }

    private record Known(String name, Side side) {}

    public static BidDifference between(AcceptedBid old, AcceptedBid now) {
        List<Line> lines = new ArrayList<>();
        compare(lines, tasks(old), tasks(now));
        compare(lines, materials(old), materials(now));
        compare(lines, others(old), others(now));
        return new BidDifference(
                old.number(), lines, sums(old.sums().sum(), now.sums().sum()));
    }

    private static void compare(List<Line> lines, Map<Object, Known> old, Map<Object, Known> now) {
        old.forEach((key, was) -> {
            Known is = now.get(key);
            if (is == null) {
                lines.add(new Line(Change.DROPPED, was.name(), was.side(), null));
            } else if (!is.equals(was)) {
                lines.add(new Line(Change.CHANGED, is.name(), was.side(), is.side()));
            }
        });
        now.forEach((key, is) -> {
            if (!old.containsKey(key)) {
                lines.add(new Line(Change.ADDED, is.name(), null, is.side()));
            }
        });
    }

    private static Map<Object, Known> tasks(AcceptedBid bid) {
        UnitPrice hour = UnitPrice.of(bid.sums().labourRate());
        return keyed(bid.tasks(), BidTask::taskId, t -> {
            String name = t.pieceName().isEmpty() ? t.name() : t.name() + ", " + t.pieceName();
            return new Known(
                    name,
                    new Side(t.quantity() + " " + t.unit().code(), t.hours().toString(), hour.times(t.hours())));
        });
    }

    private static Map<Object, Known> materials(AcceptedBid bid) {
        return keyed(
                bid.materials(),
                BidMaterial::sourceId,
                m -> new Known(m.name(), new Side(m.netQuantity() + " " + m.unit(), "", m.amount())));
    }

    private static Map<Object, Known> others(AcceptedBid bid) {
        return keyed(bid.others(), BidOther::sourceId, o -> new Known(o.description(), new Side("", "", o.amount())));
    }

    /** By the working line's id; without one by name, a second of that name by its count. */
    private static <T> Map<Object, Known> keyed(
            List<T> lines, Function<T, @Nullable Object> id, Function<T, Known> known) {
        Map<Object, Known> keyed = new LinkedHashMap<>();
        for (T line : lines) {
            Known is = known.apply(line);
            Object key = id.apply(line);
            for (int n = 0; key == null || keyed.containsKey(key); n++) {
                key = is.name() + " " + n;
            }
            keyed.put(key, is);
        }
        return keyed;
    }

    private static List<Sum> sums(PriceSum old, PriceSum now) {
        List<Sum> sums = new ArrayList<>();
        add(sums, "labour", old.labour(), now.labour());
        add(sums, "material", old.material(), now.material());
        add(sums, "other", old.other(), now.other());
        add(sums, "overhead", old.overhead(), now.overhead());
        add(sums, "contingency", old.contingency(), now.contingency());
        add(sums, "margin", old.margin(), now.margin());
        add(sums, "rounding", old.rounding(), now.rounding());
        sums.add(new Sum("price", old.price(), now.price()));
        add(sums, "tax", old.tax(), now.tax());
        if (!old.tax().isZero() || !now.tax().isZero()) {
            sums.add(new Sum("total", old.total(), now.total()));
        }
        return sums;
    }

    private static void add(List<Sum> sums, String part, Money old, Money now) {
        if (!old.equals(now)) {
            sums.add(new Sum(part, old, now));
        }
    }
}
