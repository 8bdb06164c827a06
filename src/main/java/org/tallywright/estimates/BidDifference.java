package org.tallywright.estimates;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.UnitPrice;

/**
 * What a bid has that the one before it had not, line by line and sum by sum. Holds cost: for the owner only. Only what
 * differs is listed; a line is the same one where both were copied from the same working line, or else bear the same name.
 *
 * @param before number of the earlier bid
 */
public record BidDifference(String before, List<Line> lines, List<Sum> sums, List<Option> options) {
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

    /** An option's name and its price before tax. */
    public record Named(String name, Money price) {}

    /**
     * An option of either bid; an added one has no old side, a dropped one no new side.
     *
     * @param lines that differ in one that both have
     */
    public record Option(
            Change change, @Nullable Named old, @Nullable Named now, List<Line> lines) {}

    /** @param part as the price's lines are called, "labour" first */
    public record Sum(String part, Money old, Money now) {
        public Money difference() {
            return now.minus(old);
        }
    }

    private record Known(String name, Side side) {}

    /** A bid with the options that it offers. */
    public record Offered(AcceptedBid bid, List<AcceptedBid> options) {}

    public static BidDifference between(Offered old, Offered now) {
        return new BidDifference(
                old.bid().number(),
                lines(old.bid(), now.bid()),
                sums(old.bid().sums().sum(), now.bid().sums().sum()),
                options(old.options(), now.options()));
    }

    /** The same option by what both were copied from, or else by its name. */
    private static List<Option> options(List<AcceptedBid> old, List<AcceptedBid> now) {
        List<Option> options = new ArrayList<>();
        List<AcceptedBid> fresh = new ArrayList<>(now);
        for (AcceptedBid was : old) {
            AcceptedBid is = find(fresh, one -> Objects.equals(one.option(), was.option()))
                    .or(() -> find(fresh, one -> one.title().equals(was.title())))
                    .orElse(null);
            fresh.remove(is);
            Option option = is == null ? new Option(Change.DROPPED, named(was), null, List.of()) : changed(was, is);
            if (option.change() == Change.DROPPED
                    || !option.lines().isEmpty()
                    || !Objects.equals(option.old(), option.now())) {
                options.add(option);
            }
        }
        fresh.forEach(is -> options.add(new Option(Change.ADDED, null, named(is), List.of())));
        return options;
    }

    private static Optional<AcceptedBid> find(List<AcceptedBid> options, Predicate<AcceptedBid> same) {
        return options.stream().filter(same).findFirst();
    }

    private static Option changed(AcceptedBid was, AcceptedBid is) {
        return new Option(Change.CHANGED, named(was), named(is), lines(was, is));
    }

    private static Named named(AcceptedBid option) {
        return new Named(option.title(), option.sums().sum().price());
    }

    private static List<Line> lines(AcceptedBid old, AcceptedBid now) {
        List<Line> lines = new ArrayList<>();
        compare(lines, tasks(old), tasks(now));
        compare(lines, materials(old), materials(now));
        compare(lines, others(old), others(now));
        return lines;
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
