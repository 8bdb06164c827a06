package org.tallywright.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tallywright.Draw;
import org.tallywright.Tries;

/** Numbers in a drawing: each where it can be read, none over another. */
class LettererTest {
    private static Drawing.Box part(long x, long y, long width, long height, String number) {
        return new Drawing.Box(x, y, width, height, number, "", true);
    }

    private static Lettering.Label only(Lettering lettering) {
        assertThat(lettering.labels()).hasSize(1);
        return lettering.labels().get(0);
    }

    @Test
    void aBroadPartCarriesItsNumberStraightInTheMiddle() {
        Lettering.Label label = only(Letterer.WIDE.letter(List.of(part(10, 20, 300, 200, "7")), 960, 480));
        assertThat(label).isEqualTo(new Lettering.Label(160, 120, 26, false, "7"));
    }

    @Test
    void anUprightPartHasItTurnedAlong() {
        Lettering.Label label = only(Letterer.WIDE.letter(List.of(part(0, 0, 26, 400, "14")), 960, 480));
        assertThat(label.turned()).isTrue();
        assertThat(label.size()).isEqualTo(26);
        assertThat(label.turn()).isEqualTo("rotate(-90 13.0 200.0)");
    }

    @Test
    void aNarrowStripHasItSmallerDownToWhatCanBeRead() {
        Lettering.Label label = only(Letterer.WIDE.letter(List.of(part(0, 0, 400, 18, "14")), 960, 480));
        assertThat(label.turned()).isFalse();
        assertThat(label.size()).isBetween(16.0, 18.0);
    }

    @Test
    void alikeStripsSideBySideHaveItOnce() {
        List<Drawing.Box> rails = List.of(
                part(0, 0, 300, 10, "9"),
                part(0, 11, 300, 10, "9"),
                part(0, 22, 300, 10, "9"),
                part(0, 33, 300, 10, "8"));
        Lettering lettering = Letterer.WIDE.letter(rails, 960, 480);
        assertThat(lettering.labels()).extracting(Lettering.Label::text).containsExactly("9 \u00d7 3", "8");
        // The single one stands beside the sheet, on its side, with a line to it.
        assertThat(lettering.labels().get(1).x()).isNegative();
        assertThat(lettering.leaders()).hasSize(1);
        assertThat(lettering.leaders().get(0).y2()).isEqualTo(38);
    }

    @Test
    void whatHasNoRoomBesideEitherIsNamedBelow() {
        List<Drawing.Box> slivers = new ArrayList<>();
        for (int n = 0; n < 8; n++) {
            slivers.add(part(0, 8 * n, 300, 4, String.valueOf(n + 1)));
        }
        Lettering lettering = Letterer.WIDE.letter(slivers, 960, 64);
        assertThat(lettering.labels().size() + lettering.untold().size()).isEqualTo(8);
        assertThat(lettering.untold()).isNotEmpty();
    }

    @Test
    void spreadsWithoutMovingWhatHasRoom() {
        assertThat(Letterer.spread(new double[] {50, 52, 200}, 20, 300))
                .containsExactly(new double[] {50, 70, 200}, within(1e-9));
        assertThat(Letterer.spread(new double[] {295, 298}, 20, 300))
                .containsExactly(new double[] {270, 290}, within(1e-9));
    }

    /** Sheets cut at random down to slivers: no number over another, each in its part or outside the sheet, none forgotten. */
    @Test
    void noNumberLiesOverAnother() {
        Tries.of(300, draw -> {
            List<Drawing.Box> boxes = new ArrayList<>();
            cut(draw, 0, 0, 960, 480, 4, boxes);
            for (Letterer letterer : List.of(Letterer.WIDE, Letterer.NARROW)) {
                check(letterer.letter(boxes, 960, 480), boxes);
            }
        });
    }

    private static void cut(Draw draw, long x, long y, long width, long height, int depth, List<Drawing.Box> into) {
        if (depth == 0 || width < 12 || height < 12 || draw.between(0, 7) == 0) {
            into.add(part(x, y, width, height, String.valueOf(draw.between(1, 40))));
        } else if (draw.between(0, 1) == 0) {
            long at = draw.between(3, (int) width - 6);
            cut(draw, x, y, at, height, depth - 1, into);
            cut(draw, x + at + 1, y, width - at - 1, height, depth - 1, into);
        } else {
            long at = draw.between(3, (int) height - 6);
            cut(draw, x, y, width, at, depth - 1, into);
            cut(draw, x, y + at + 1, width, height - at - 1, depth - 1, into);
        }
    }

    private static void check(Lettering lettering, List<Drawing.Box> boxes) {
        List<Lettering.Label> labels = lettering.labels();
        for (int a = 0; a < labels.size(); a++) {
            for (int b = a + 1; b < labels.size(); b++) {
                assertThat(overlap(labels.get(a), labels.get(b)))
                        .as(labels.get(a) + " and " + labels.get(b))
                        .isFalse();
            }
        }
        int told = labels.stream().mapToInt(label -> many(label.text())).sum()
                + lettering.untold().stream().mapToInt(LettererTest::many).sum();
        assertThat(told).isEqualTo(boxes.size());
        for (Lettering.Label label : labels) {
            boolean outside = label.x() < 0 || label.x() > 960 || label.y() < 0;
            assertThat(outside
                            || boxes.stream().anyMatch(box -> holds(box, label))
                            || label.text().contains("\u00d7"))
                    .as(label.toString())
                    .isTrue();
        }
    }

    private static int many(String text) {
        return text.contains("\u00d7") ? Integer.parseInt(text.replaceAll(".*\u00d7 ", "")) : 1;
    }

    private static boolean holds(Drawing.Box box, Lettering.Label label) {
        return box.label().equals(label.text())
                && label.x() - label.across() / 2 >= box.x()
                && label.x() + label.across() / 2 <= box.x() + box.width()
                && label.y() - label.down() / 2 >= box.y()
                && label.y() + label.down() / 2 <= box.y() + box.height();
    }

    private static boolean overlap(Lettering.Label a, Lettering.Label b) {
        return Math.abs(a.x() - b.x()) < (a.across() + b.across()) / 2 - 1e-9
                && Math.abs(a.y() - b.y()) < (a.down() + b.down()) / 2 - 1e-9;
    }
}
