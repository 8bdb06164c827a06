package org.tallywright.web.stick;

import org.tallywright.shared.Hours;
import org.tallywright.web.stick.StickPlan.Segment;

/** Draws the stick lying: names above, the rod, below it what hangs from its marks, and the forecast last. */
final class LyingStick {
    private static final double LENGTH = 956;
    private static final double LEFT = 2;
    private static final double ROD = 52;
    private static final double ROD_HEIGHT = 26;
    private static final double LANE = 17;
    private static final double GAP = 14;
    private static final int NAME = 13;
    private static final int FIGURE = 12;

    private final StickPlan plan;
    private final String key;
    private final Svg hung = new Svg();
    private final Lanes lanes = new Lanes();

    LyingStick(StickPlan plan, String key) {
        this.plan = plan;
        this.key = key;
    }

    String draw() {
        hangOverruns();
        hangWaits();
        double below = ROD + ROD_HEIGHT + 13 + lanes.count() * LANE;
        double height = below + (whiskers() ? 38 : 0);
        Svg svg = new Svg()
                .open(960, height, key, "Story stick", String.join(". ", StickWords.of(plan)))
                .hatches(key);
        names(svg);
        rod(svg);
        if (whiskers()) {
            whisker(svg, below + 10);
        }
        svg.add(hung);
        return svg.close();
    }

    private boolean whiskers() {
        return plan.toScale() && plan.forecast() != null;
    }

    private double x(double place) {
        return LEFT + place * LENGTH;
    }

    // ---- names, each led to its mark

    private void names(Svg svg) {
        int count = plan.stages().size();
        String[] figures = new String[count];
        String[] names = new String[count];
        double[] rooms = fit(names, figures);
        double[] wanted = new double[count];
        for (int i = 0; i < count; i++) {
            wanted[i] = plan.segments().get(i).start() * LENGTH;
        }
        double[] placed = Spread.place(wanted, rooms, LENGTH + GAP);
        for (int i = 0; i < count; i++) {
            double at = LEFT + placed[i];
            double mark = x(plan.segments().get(i).start());
            svg.path("k-lead", "M", at, 4, "V", 38, "L", mark, 48, "V", ROD);
            svg.text(nameStyle(plan.stages().get(i)), at + 4, 15, NAME, false, names[i]);
            if (!figures[i].isEmpty()) {
                boolean over = !StickWords.over(plan, plan.stages().get(i)).isEmpty();
                svg.text(over ? "k-over" : "k-figure", at + 4, 31, FIGURE, false, figures[i]);
            }
        }
    }

    /** First the figures go, then letters of the names, until all fit beside each other; the words keep them all. */
    private double[] fit(String[] names, String[] figures) {
        double[] rooms = new double[names.length];
        for (int letters = 22; letters >= 3; letters--) {
            for (boolean withFigures : new boolean[] {true, false}) {
                for (int i = 0; i < names.length; i++) {
                    StickStage stage = plan.stages().get(i);
                    names[i] = shortened(stage, letters);
                    figures[i] = withFigures ? StickWords.figure(plan, stage) : "";
                    rooms[i] = 4 + GAP + Math.max(Svg.room(names[i], NAME, true), Svg.room(figures[i], FIGURE, false));
                }
                if (Spread.sum(rooms) <= LENGTH + GAP) {
                    return rooms;
                }
            }
        }
        return rooms;
    }

    /** Cut at its end, or inside where another stage's name would read the same. */
    private String shortened(StickStage stage, int letters) {
        String cut = Svg.cut(stage.name(), letters);
        boolean alone = plan.stages().stream()
                        .filter(other -> Svg.cut(other.name(), letters).equals(cut))
                        .count()
                == 1;
        return alone ? cut : Svg.cutInside(stage.name(), letters);
    }

    static String nameStyle(StickStage stage) {
        return switch (stage.state()) {
            case AHEAD -> "k-name k-ahead";
            case UNDER_WAY -> "k-name k-now";
            case DONE -> "k-name";
            case SKIPPED -> "k-skip";
        };
    }

    // ---- the rod

    private void rod(Svg svg) {
        double end = x(plan.end());
        svg.rect("k-rod", LEFT, ROD, end - LEFT, ROD_HEIGHT);
        for (Segment segment : plan.segments()) {
            svg.rect("k-fill", x(segment.start()), ROD + 9, x(segment.filled()) - x(segment.start()), ROD_HEIGHT - 10);
        }
        if (plan.toScale()) {
            int step = plan.tickHours(80);
            for (long hour = step; plan.place(Hours.ofMinutes((int) (hour * 60))) < plan.end() - .002; hour += step) {
                double at = x(plan.place(Hours.ofMinutes((int) (hour * 60))));
                svg.path("k-tick", "M", at, ROD, "V", ROD + (hour % (5L * step) == 0 ? 7 : 4));
            }
        }
        for (int i = 0; i < plan.segments().size(); i++) {
            double at = x(plan.segments().get(i).end());
            svg.path("k-mark", "M", at, ROD, "V", ROD + ROD_HEIGHT + 7);
            if (plan.stages().get(i).state() == StickStage.State.DONE) {
                svg.path(
                        "k-done",
                        "M",
                        at - 4,
                        ROD + ROD_HEIGHT + 11,
                        "L",
                        at,
                        ROD + ROD_HEIGHT + 4,
                        "L",
                        at + 4,
                        ROD + ROD_HEIGHT + 11,
                        "Z");
            }
        }
        svg.path("k-mark", "M", LEFT, ROD, "V", ROD + ROD_HEIGHT + 7);
        String total = plan.estimated() + " estimated";
        if (plan.toScale() && LENGTH + LEFT - end > Svg.room(total, FIGURE, false) + 8) {
            svg.text("k-figure", end + 8, ROD + 18, FIGURE, false, total);
        }
    }

    // ---- what hangs from the marks

    private void hangOverruns() {
        for (int i = 0; i < plan.segments().size(); i++) {
            Segment segment = plan.segments().get(i);
            String text = StickWords.over(plan, plan.stages().get(i));
            if (text.isEmpty()) {
                continue;
            }
            double from = x(segment.end());
            double to = Math.max(from + 2, x(segment.overEnd()));
            double y = hang(from, to, text, "k-over");
            hung.rect("k-edge-over", from, y, to - from, 11, key + "-o");
            if (plan.cutsOff(i)) {
                hung.path("k-break", "M", to - 16, y - 3, "l", -5, 17, "M", to - 8, y - 3, "l", -5, 17);
            }
        }
    }

    private void hangWaits() {
        for (StickWait wait : plan.waits()) {
            double from = x(plan.placeOf(wait));
            double to = from + 16;
            double shift = Math.min(0, LEFT + LENGTH - to);
            double y = hang(from + shift, to + shift, Svg.cut(wait.text(), 60), "k-wait");
            hung.rect("k-edge-wait", from + shift, y, 16, 11, key + "-w");
        }
    }

    /** Finds a lane for a bar and its text, writes the text and tells the bar's upper edge. */
    private double hang(double from, double to, String text, String css) {
        double room = Svg.room(text, FIGURE, true) + 6;
        boolean right = to + room <= LEFT + LENGTH;
        boolean left = !right && from - room >= 0;
        int lane = lanes.lane(left ? from - room : from - 1, right ? to + room : to + 3);
        double y = ROD + ROD_HEIGHT + 13 + lane * LANE;
        double at = right ? to + 5 : left ? from - 5 : to - 30;
        hung.text(css + " k-halo", at, y + 10, FIGURE, !right, text);
        return y;
    }

    // ---- the forecast

    private void whisker(Svg svg, double y) {
        StickForecast forecast = plan.forecast();
        if (forecast == null) {
            return;
        }
        double low = x(plan.place(forecast.low()));
        double high = x(plan.place(forecast.high()));
        svg.path("k-hair", "M", x(plan.end()), ROD + ROD_HEIGHT + 7, "V", y + 6);
        if (plan.reaches(forecast.low())) {
            svg.path("k-whisk", "M", low, y - 6, "V", y + 6, "M", low, y, "H", high);
            end(svg, forecast.low(), low, y, true);
            end(svg, forecast.high(), high, y, false);
        }
        if (plan.reaches(forecast.high())) {
            svg.path("k-whisk", "M", high, y - 6, "V", y + 6);
        } else {
            svg.path("k-whisk", "M", high - 6, y - 5, "L", high, y, "L", high - 6, y + 5);
        }
        if (plan.reaches(forecast.likely())) {
            svg.path("k-likely", "M", x(plan.place(forecast.likely())), y - 6, "l", 5, 6, "l", -5, 6, "l", -5, -6, "Z");
        }
        String text = StickWords.forecast(plan);
        double half = Svg.room(text, FIGURE, false) / 2;
        double middle = (low + high) / 2;
        boolean atTheEnd = middle + half > LEFT + LENGTH;
        double at = atTheEnd ? LEFT + LENGTH : Math.max(LEFT, middle - half);
        svg.text("k-figure", at, y + 23, FIGURE, atTheEnd, text);
    }

    /** The figure at an end of the whisker: outside it, or above it where the paper ends. */
    private void end(Svg svg, Hours hours, double at, double y, boolean low) {
        String text = hours.toString();
        double room = Svg.room(text, FIGURE, false) + 8;
        boolean outside = low ? at - room >= 0 : at + room <= LEFT + LENGTH;
        double x = outside ? at + (low ? -8 : 8) : at;
        svg.text("k-figure k-halo", x, outside ? y + 4 : y - 9, FIGURE, low == outside, text);
    }
}
