package org.tallywright.web.stick;

import java.util.ArrayList;
import java.util.List;
import org.tallywright.shared.Hours;
import org.tallywright.web.stick.StickPlan.Segment;

/** Draws the stick upright for a phone: the forecast left of the rod, overruns and names right of it. */
final class UprightStick {
    private static final double WIDTH = 340;
    private static final double TOP = 6;
    private static final double ROD_WIDTH = 24;
    private static final double LANE = 13;
    private static final int NAME = 14;
    private static final int FIGURE = 13;
    private static final int SMALL = 12;

    private final StickPlan plan;
    private final String key;
    private final Svg bars = new Svg();
    private final Lanes lanes = new Lanes();
    private final double rod;
    private double length = 230;
    private double column;

    UprightStick(StickPlan plan, String key) {
        this.plan = plan;
        this.key = key;
        this.rod = whiskers() ? 70 : 2;
    }

    /** A name or a wait in the column on the right, led to its mark. */
    private record Block(double place, double height, int stage, int waiting, List<String> lines) {}

    String draw() {
        // Lanes depend on places only, not on the length, so they come first and give the column its left edge.
        int[] lane = overrunLanes();
        column = rod + ROD_WIDTH + 26 + lanes.count() * LANE;
        List<Block> blocks = blocks();
        double[] heights = blocks.stream().mapToDouble(Block::height).toArray();
        length = Math.max(length, Spread.sum(heights));
        double height = TOP + length + 10 + (whiskers() ? 38 : 0);
        Svg svg = new Svg()
                .open(WIDTH, height, key, "Story stick", String.join(". ", StickWords.of(plan)))
                .hatches(key);
        double[] wanted = blocks.stream().mapToDouble(b -> b.place() * length).toArray();
        double[] placed = Spread.place(wanted, heights, length + 4);
        for (int i = 0; i < placed.length; i++) {
            block(svg, blocks.get(i), TOP + placed[i]);
        }
        rod(svg);
        overruns(lane);
        svg.add(bars);
        if (whiskers()) {
            whisker(svg);
        }
        return svg.close();
    }

    private boolean whiskers() {
        return plan.toScale() && plan.forecast() != null;
    }

    private double y(double place) {
        return TOP + place * length;
    }

    // ---- the column of names

    private List<Block> blocks() {
        var blocks = new ArrayList<Block>();
        for (int i = 0; i < plan.stages().size(); i++) {
            blocks.add(stageBlock(i));
            for (int w = 0; w < plan.waits().size(); w++) {
                StickWait wait = plan.waits().get(w);
                if (Math.max(0, Math.min(wait.afterStage(), plan.stages().size() - 1)) == i) {
                    List<String> lines = Svg.twoLines(wait.text(), (int) ((WIDTH - column - 20) / (SMALL * .55)));
                    blocks.add(new Block(plan.placeOf(wait), 5 + 16 * lines.size(), i, w, lines));
                }
            }
        }
        return blocks;
    }

    private Block stageBlock(int index) {
        StickStage stage = plan.stages().get(index);
        String name = Svg.cut(stage.name(), (int) ((WIDTH - column) / (NAME * .64)));
        String over = StickWords.over(plan, stage);
        String figure = StickWords.figure(plan, stage) + (over.isEmpty() ? "" : ", " + over);
        double room = Svg.room(name, NAME, true) + 7 + Svg.room(figure, FIGURE, false);
        boolean twoLines = !figure.isEmpty() && room > WIDTH - column;
        double place = plan.segments().get(index).start();
        return new Block(place, twoLines ? 38 : 22, index, -1, twoLines ? List.of(name, figure) : List.of(name));
    }

    private void block(Svg svg, Block block, double top) {
        svg.path("k-lead", "M", rod + ROD_WIDTH, y(block.place()), "h", 5, "L", column - 14, top + 10, "H", column - 4);
        if (block.waiting() >= 0) {
            svg.rect("k-edge-wait", column, top + 4, 14, 12, key + "-w");
            for (int line = 0; line < block.lines().size(); line++) {
                svg.text(
                        "k-wait",
                        column + 20,
                        top + 14.5 + 16 * line,
                        SMALL,
                        false,
                        block.lines().get(line));
            }
            return;
        }
        StickStage stage = plan.stages().get(block.stage());
        svg.textStart("k-figure", column, top + 15, FIGURE, false);
        svg.span(LyingStick.nameStyle(stage), block.lines().get(0), 0);
        if (block.lines().size() > 1) {
            svg.textEnd().textStart("k-figure", column, top + 31, FIGURE, false);
        }
        svg.span("k-figure", StickWords.figure(plan, stage), block.lines().size() > 1 ? 0 : 7);
        String over = StickWords.over(plan, stage);
        if (!over.isEmpty()) {
            svg.span("k-over", over, 7);
        }
        svg.textEnd();
    }

    // ---- the rod

    private void rod(Svg svg) {
        svg.rect("k-rod", rod, TOP, ROD_WIDTH, plan.end() * length);
        for (Segment segment : plan.segments()) {
            double height = (segment.filled() - segment.start()) * length;
            svg.rect("k-fill", rod + 9, y(segment.start()), ROD_WIDTH - 10, height);
        }
        if (plan.toScale()) {
            int step = plan.tickHours((int) (length / 6));
            for (long hour = step; plan.place(Hours.ofMinutes((int) (hour * 60))) < plan.end() - .005; hour += step) {
                double at = y(plan.place(Hours.ofMinutes((int) (hour * 60))));
                svg.path("k-tick", "M", rod, at, "H", rod + (hour % (5L * step) == 0 ? 7 : 4));
            }
        }
        svg.path("k-mark", "M", rod, TOP, "H", rod + ROD_WIDTH + 5);
        for (Segment segment : plan.segments()) {
            svg.path("k-mark", "M", rod, y(segment.end()), "H", rod + ROD_WIDTH + 5);
        }
    }

    // ---- overruns

    private int[] overrunLanes() {
        int[] lane = new int[plan.segments().size()];
        for (int i = 0; i < lane.length; i++) {
            Segment segment = plan.segments().get(i);
            if (segment.overEnd() > segment.end()
                    || plan.toScale() && !plan.stages().get(i).over().isZero()) {
                lane[i] = lanes.lane(segment.end(), Math.max(segment.end() + .02, segment.overEnd() + .01));
            } else {
                lane[i] = -1;
            }
        }
        return lane;
    }

    private void overruns(int[] lane) {
        for (int i = 0; i < lane.length; i++) {
            if (lane[i] < 0) {
                continue;
            }
            Segment segment = plan.segments().get(i);
            double x = rod + ROD_WIDTH + 7 + lane[i] * LANE;
            double from = y(segment.end());
            double to = Math.max(from + 2, y(segment.overEnd()));
            bars.rect("k-edge-over", x, from, 9, to - from, key + "-o");
            if (plan.cutsOff(i)) {
                bars.path("k-break", "M", x - 3, to - 16, "l", 15, -5, "M", x - 3, to - 8, "l", 15, -5);
            }
        }
    }

    // ---- the forecast

    private void whisker(Svg svg) {
        StickForecast forecast = plan.forecast();
        if (forecast == null) {
            return;
        }
        double x = rod - 10;
        double low = y(plan.place(forecast.low()));
        double likely = y(plan.place(forecast.likely()));
        double high = y(plan.place(forecast.high()));
        svg.path("k-hair", "M", rod, y(plan.end()), "H", x - 5);
        if (plan.reaches(forecast.low())) {
            svg.path("k-whisk", "M", x - 5, low, "h", 10, "M", x, low, "V", high);
        }
        if (plan.reaches(forecast.high())) {
            svg.path("k-whisk", "M", x - 5, high, "h", 10);
        } else {
            svg.path("k-whisk", "M", x - 5, high - 6, "l", 5, 6, "l", 5, -6);
        }
        if (plan.reaches(forecast.likely())) {
            svg.path("k-likely", "M", x - 5, likely, "l", 5, -5, "l", 5, 5, "l", -5, 5, "Z");
        }
        double[] placed = Spread.place(
                new double[] {low - 7, likely - 7, high - 7}, new double[] {15, 15, 15}, TOP + length + 10);
        List<Hours> figures = List.of(forecast.low(), forecast.likely(), forecast.high());
        for (int i = 0; i < 3; i++) {
            svg.text(
                    i == 1 ? "k-name" : "k-figure",
                    x - 8,
                    placed[i] + 11,
                    SMALL,
                    true,
                    figures.get(i).toString());
        }
        double below = TOP + length + 24;
        svg.text(
                "k-figure",
                0,
                below,
                SMALL,
                false,
                "Likely " + forecast.likely() + ", from " + forecast.jobs()
                        + (forecast.jobs() == 1 ? " job;" : " jobs;"));
        svg.text(
                "k-figure",
                0,
                below + 17,
                SMALL,
                false,
                "four times in five between " + forecast.low() + " and " + forecast.high());
    }
}
