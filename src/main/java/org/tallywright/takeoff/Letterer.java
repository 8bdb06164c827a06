package org.tallywright.takeoff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Writes the parts' numbers so that none lies over another: straight where there is room, else turned along the part, else
 * smaller down to what can be read, else once for those alike side by side, else beside the drawing with a line to the part.
 */
final class Letterer {
    /** On a screen as wide as the drawing, and on paper. */
    static final Letterer WIDE = new Letterer(26, 16);
    /** On a phone the drawing is shown at about a third. */
    static final Letterer NARROW = new Letterer(44, 30);

    /** How far a number stands from the edge of its part. */
    private static final double CLEAR = 2;
    /** Parts no further apart than this lie side by side: a kerf. */
    private static final double BESIDE = 8;

    private static final double STEP = 2;
    private final double full;
    private final double floor;

    private Letterer(double full, double floor) {
        this.full = full;
        this.floor = floor;
    }

    /** What one number stands for: a part, or several alike in a row. */
    private record Place(double x, double y, double width, double height, String number, int many) {
        static Place of(Drawing.Box box) {
            return new Place(box.x(), box.y(), box.width(), box.height(), box.label(), 1);
        }

        String text() {
            return many == 1 ? number : number + " \u00d7 " + many;
        }

        double middleX() {
            return x + width / 2;
        }

        double middleY() {
            return y + height / 2;
        }

        boolean isUpright() {
            return height > width;
        }

        boolean isBeside(Place next) {
            boolean below = x == next.x && width == next.width && Math.abs(next.y - (y + height)) <= BESIDE;
            boolean right = y == next.y && height == next.height && Math.abs(next.x - (x + width)) <= BESIDE;
            return number.equals(next.number) && (below || right);
        }

        Place with(Place next) {
            return new Place(x, y, next.x + next.width - x, next.y + next.height - y, number, many + next.many);
        }
    }

    Lettering letter(List<Drawing.Box> boxes, double width, double height) {
        List<Lettering.Label> labels = new ArrayList<>();
        List<Place> without = new ArrayList<>();
        for (Drawing.Box box : boxes) {
            if (box.part()) {
                Lettering.Label label = inside(Place.of(box));
                if (label == null) {
                    without.add(Place.of(box));
                } else {
                    labels.add(label);
                }
            }
        }
        List<Place> outside = new ArrayList<>();
        for (Place row : rows(without)) {
            Lettering.Label label = inside(row);
            if (label == null) {
                outside.add(row);
            } else {
                labels.add(label);
            }
        }
        List<Drawing.Saw> leaders = new ArrayList<>();
        Map<String, Integer> untold = new LinkedHashMap<>();
        above(outside.stream().filter(Place::isUpright).toList(), width, labels, leaders, untold);
        beside(
                outside.stream()
                        .filter(p -> !p.isUpright() && p.middleX() <= width / 2)
                        .toList(),
                0,
                height,
                labels,
                leaders,
                untold);
        beside(
                outside.stream()
                        .filter(p -> !p.isUpright() && p.middleX() > width / 2)
                        .toList(),
                width,
                height,
                labels,
                leaders,
                untold);
        return new Lettering(
                labels,
                leaders,
                untold.entrySet().stream()
                        .map(e -> e.getValue() == 1 ? e.getKey() : e.getKey() + " \u00d7 " + e.getValue())
                        .toList());
    }

    /** The largest number that fits, upright before turned. */
    private Lettering.@Nullable Label inside(Place place) {
        for (double size = full; size >= floor; size -= STEP) {
            for (boolean turned : new boolean[] {false, true}) {
                Lettering.Label label =
                        new Lettering.Label(place.middleX(), place.middleY(), size, turned, place.text());
                if (label.across() + 2 * CLEAR <= place.width() && label.down() + 2 * CLEAR <= place.height()) {
                    return label;
                }
            }
        }
        return null;
    }

    /** Those alike that follow one another without anything between. */
    private static List<Place> rows(List<Place> places) {
        List<Place> sorted = new ArrayList<>(places);
        sorted.sort(Comparator.comparing(Place::x).thenComparing(Place::y));
        return joined(joined(sorted), Comparator.comparing(Place::y).thenComparing(Place::x));
    }

    private static List<Place> joined(List<Place> places, Comparator<Place> order) {
        List<Place> sorted = new ArrayList<>(places);
        sorted.sort(order);
        return joined(sorted);
    }

    private static List<Place> joined(List<Place> sorted) {
        List<Place> rows = new ArrayList<>();
        for (Place place : sorted) {
            Place last = rows.isEmpty() ? null : rows.get(rows.size() - 1);
            if (last != null && last.isBeside(place)) {
                rows.set(rows.size() - 1, last.with(place));
            } else {
                rows.add(place);
            }
        }
        return rows;
    }

    /** Over the drawing, for upright parts. */
    private void above(
            List<Place> places,
            double width,
            List<Lettering.Label> labels,
            List<Drawing.Saw> leaders,
            Map<String, Integer> untold) {
        List<Place> sorted =
                places.stream().sorted(Comparator.comparing(Place::middleX)).toList();
        double each = sorted.stream()
                .mapToDouble(p -> Lettering.wide(p.text(), floor) + 3 * CLEAR)
                .max()
                .orElse(1);
        List<Place> told = told(sorted, width, each, untold);
        double[] at = spread(told.stream().mapToDouble(Place::middleX).toArray(), each, width);
        for (int n = 0; n < at.length; n++) {
            labels.add(new Lettering.Label(
                    at[n], -0.9 * floor, floor, false, told.get(n).text()));
            leaders.add(
                    line(at[n], -0.4 * floor, told.get(n).middleX(), told.get(n).y() + CLEAR));
        }
    }

    /** Left or right of the drawing, for parts that lie. */
    private void beside(
            List<Place> places,
            double edge,
            double height,
            List<Lettering.Label> labels,
            List<Drawing.Saw> leaders,
            Map<String, Integer> untold) {
        List<Place> sorted =
                places.stream().sorted(Comparator.comparing(Place::middleY)).toList();
        double each = Lettering.high(floor) + 2 * CLEAR;
        List<Place> told = told(sorted, height, each, untold);
        double[] at = spread(told.stream().mapToDouble(Place::middleY).toArray(), each, height);
        double out = edge == 0 ? -1 : 1;
        for (int n = 0; n < at.length; n++) {
            Place place = told.get(n);
            double half = Lettering.wide(place.text(), floor) / 2;
            labels.add(new Lettering.Label(edge + out * (half + 0.5 * floor), at[n], floor, false, place.text()));
            double end = edge == 0 ? place.x() + CLEAR : place.x() + place.width() - CLEAR;
            leaders.add(line(edge + out * 0.4 * floor, at[n], end, place.middleY()));
        }
    }

    private static List<Place> told(List<Place> sorted, double room, double each, Map<String, Integer> untold) {
        int most = (int) Math.max(1, Math.floor(room / each));
        sorted.stream().skip(most).forEach(place -> untold.merge(place.number(), place.many(), Integer::sum));
        return sorted.stream().limit(most).toList();
    }

    /** As near as may be to where they belong, no two nearer than {@code each}, all between 0 and {@code room}. */
    static double[] spread(double[] wanted, double each, double room) {
        double[] at = wanted.clone();
        for (int n = 0; n < at.length; n++) {
            at[n] = Math.max(at[n], n == 0 ? each / 2 : at[n - 1] + each);
        }
        for (int n = at.length - 1; n >= 0; n--) {
            at[n] = Math.min(at[n], n == at.length - 1 ? room - each / 2 : at[n + 1] - each);
        }
        return at;
    }

    private static Drawing.Saw line(double x1, double y1, double x2, double y2) {
        return new Drawing.Saw(Math.round(x1), Math.round(y1), Math.round(x2), Math.round(y2));
    }
}
