package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The most valuable guillotine layout of one sheet, any number of cuts deep, without kerf (a kerf is added to part and sheet
 * by who asks). Where every part may be cut any number of times a dynamic program over the sums of part sizes is exact
 * (Gilmore and Gomory 1966); with limits a best-first search builds rectangles from parts and is cut off by that program's
 * values (Viswanathan and Bagchi 1993), exact unless it says that it ran out of nodes.
 */
public final class OneSheet {
    private static final int MOST_POINTS = 700;
    private static final long MOST_WORK = 40_000_000L;
    private static final long MOST_JOINS = 3_000_000L;

    private final List<ValuedPart> parts;
    private final long[] xs;
    private final long[] ys;
    private final double[][] free;

    private OneSheet(long length, long width, List<ValuedPart> parts) {
        this.parts = parts;
        this.xs = sums(length, parts, false);
        this.ys = sums(width, parts, true);
        this.free = unlimited();
    }

    /**
     * @param value of the best layout found
     * @param exact no layout is worth more
     */
    public record Best(
            double value, boolean exact, @Nullable Built built) {}

    /** A rectangle of parts: one part, or two rectangles beside ({@code rip} false) or above one another. */
    public record Built(
            long length,
            long width,
            double value,
            int part,
            boolean turned,
            boolean rip,
            @Nullable Built first,
            @Nullable Built second,
            int[] counts) {}

    /** Nothing, and not exact, where the sums of part sizes are too many to go through. */
    public static Best best(long length, long width, List<ValuedPart> parts, int mostNodes) {
        int along = sums(length, parts, false).length;
        int across = sums(width, parts, true).length;
        if (Math.max(along, across) > MOST_POINTS || (long) along * across * (along + across) > MOST_WORK) {
            return new Best(0, false, null);
        }
        OneSheet sheet = new OneSheet(length, width, parts);
        if (parts.stream().allMatch(part -> part.most() == BarStock.ANY)) {
            return new Best(sheet.free[sheet.xs.length - 1][sheet.ys.length - 1], true, null);
        }
        if (parts.stream().noneMatch(ValuedPart::turnable)) {
            return sheet.search(mostNodes, null);
        }
        // What is cut without turning is a layout with turning too: begun with, so that the answer is never worse.
        List<ValuedPart> straight = parts.stream()
                .map(p -> new ValuedPart(p.length(), p.width(), p.most(), p.value(), false))
                .toList();
        return sheet.search(mostNodes, new OneSheet(length, width, straight).search(mostNodes, null).built);
    }

    /** Every sum of lengths (or widths) up to the size of the sheet; cut short where there are too many. */
    private static long[] sums(long most, List<ValuedPart> parts, boolean widths) {
        Set<Long> steps = new TreeSet<>();
        for (ValuedPart part : parts) {
            steps.add(widths ? part.width() : part.length());
            if (part.turnable()) {
                steps.add(widths ? part.length() : part.width());
            }
        }
        TreeSet<Long> sums = new TreeSet<>(List.of(0L));
        Long at = 0L;
        while (at != null && sums.size() <= MOST_POINTS) {
            for (long step : steps) {
                if (at + step <= most) {
                    sums.add(at + step);
                }
            }
            at = sums.higher(at);
        }
        return sums.stream().mapToLong(Long::longValue).toArray();
    }

    private static int floor(long[] points, long value) {
        int at = Arrays.binarySearch(points, value);
        return at >= 0 ? at : -at - 2;
    }

    private double[][] unlimited() {
        double[][] best = new double[xs.length][ys.length];
        for (int i = 1; i < xs.length; i++) {
            for (int j = 1; j < ys.length; j++) {
                double value = single(xs[i], ys[j]);
                for (int a = 1; a < i && xs[a] * 2 <= xs[i]; a++) {
                    value = Math.max(value, best[a][j] + best[floor(xs, xs[i] - xs[a])][j]);
                }
                for (int b = 1; b < j && ys[b] * 2 <= ys[j]; b++) {
                    value = Math.max(value, best[i][b] + best[i][floor(ys, ys[j] - ys[b])]);
                }
                best[i][j] = value;
            }
        }
        return best;
    }

    private double single(long length, long width) {
        double value = 0;
        for (ValuedPart part : parts) {
            boolean fits = part.length() <= length && part.width() <= width;
            boolean turned = part.turnable() && part.width() <= length && part.length() <= width;
            if (part.most() > 0 && (fits || turned)) {
                value = Math.max(value, part.value());
            }
        }
        return value;
    }

    /** What a rectangle in the corner can at most be joined with until it is as large as the sheet. */
    private double[][] outside() {
        double[][] outside = new double[xs.length][ys.length];
        for (int i = xs.length - 1; i >= 0; i--) {
            for (int j = ys.length - 1; j >= 0; j--) {
                double value = 0;
                for (int a = 1; a < xs.length && xs[i] + xs[a] <= xs[xs.length - 1]; a++) {
                    value = Math.max(value, outside[floor(xs, xs[i] + xs[a])][j] + free[a][j]);
                }
                for (int b = 1; b < ys.length && ys[j] + ys[b] <= ys[ys.length - 1]; b++) {
                    value = Math.max(value, outside[i][floor(ys, ys[j] + ys[b])] + free[i][b]);
                }
                outside[i][j] = value;
            }
        }
        return outside;
    }

    private record Node(Built built, double bound) {}

    /** @param known a layout that is begun with; null for none */
    private Best search(int mostNodes, @Nullable Built known) {
        double[][] outside = outside();
        PriorityQueue<Node> open = new PriorityQueue<>(Comparator.comparingDouble((Node n) -> -n.bound)
                .thenComparingDouble(n -> -n.built.value)
                .thenComparing(n -> Arrays.toString(n.built.counts)));
        Set<String> seen = new HashSet<>();
        List<Built> closed = new ArrayList<>();
        Built best = known;
        for (int part = 0; part < parts.size(); part++) {
            for (Built single : singles(part)) {
                offer(single, outside, open, seen, value(best));
                best = best == null || single.value > best.value ? single : best;
            }
        }
        int nodes = 0;
        long joins = 0;
        while (!open.isEmpty()) {
            Node next = open.remove();
            if (best != null && next.bound <= best.value + 1e-9) {
                break;
            }
            if (nodes++ >= mostNodes || joins > MOST_JOINS) {
                return new Best(best == null ? 0 : best.value, false, best);
            }
            closed.add(next.built);
            joins += 2L * closed.size();
            for (Built other : closed) {
                for (boolean rip : new boolean[] {false, true}) {
                    Built joined = joined(next.built, other, rip);
                    if (joined != null && offer(joined, outside, open, seen, value(best))) {
                        best = best == null || joined.value > best.value ? joined : best;
                    }
                }
            }
        }
        return new Best(best == null ? 0 : best.value, true, best);
    }

    private static double value(@Nullable Built best) {
        return best == null ? -1 : best.value;
    }

    /** Not taken where it is known already, or cannot be more than the best. */
    private boolean offer(Built built, double[][] outside, PriorityQueue<Node> open, Set<String> seen, double best) {
        double bound = built.value + outside[floor(xs, built.length)][floor(ys, built.width)];
        if (bound <= best + 1e-9 || !seen.add(built.length + "x" + built.width + Arrays.toString(built.counts))) {
            return false;
        }
        open.add(new Node(built, bound));
        return true;
    }

    private List<Built> singles(int at) {
        ValuedPart part = parts.get(at);
        List<Built> singles = new ArrayList<>();
        for (boolean turned : part.turnable() ? new boolean[] {false, true} : new boolean[] {false}) {
            long length = turned ? part.width() : part.length();
            long width = turned ? part.length() : part.width();
            if (part.most() > 0 && length <= xs[xs.length - 1] && width <= ys[ys.length - 1]) {
                int[] counts = new int[parts.size()];
                counts[at] = 1;
                singles.add(new Built(length, width, part.value(), at, turned, false, null, null, counts));
            }
        }
        return singles;
    }

    private @Nullable Built joined(Built one, Built other, boolean rip) {
        long length = rip ? Math.max(one.length, other.length) : one.length + other.length;
        long width = rip ? one.width + other.width : Math.max(one.width, other.width);
        if (length > xs[xs.length - 1] || width > ys[ys.length - 1]) {
            return null;
        }
        int[] counts = one.counts.clone();
        for (int i = 0; i < counts.length; i++) {
            counts[i] += other.counts[i];
            if (counts[i] > parts.get(i).most()) {
                return null;
            }
        }
        return new Built(length, width, one.value + other.value, -1, false, rip, one, other, counts);
    }
}
