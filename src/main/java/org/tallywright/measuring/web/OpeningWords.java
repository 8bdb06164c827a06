package org.tallywright.measuring.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.tallywright.measuring.Finding;
import org.tallywright.measuring.OpeningDetails;
import org.tallywright.measuring.OpeningSums;
import org.tallywright.measuring.Reading;
import org.tallywright.measuring.Reckoned;
import org.tallywright.measuring.Sum;
import org.tallywright.measuring.Unread;
import org.tallywright.shared.Length;

/** What the findings of an opening mean for the work, in sentences. */
final class OpeningWords {
    /** A gap over 5/8 inch is no scribe any more: common practice, no source. */
    private static final double WIDEST_SCRIBE = 0.625;
    /** 3/8 inch in 32: a residential performance guideline for finished walls. */
    private static final double STEEPEST_WALL = 0.375 / 32;

    private final Map<Sum, Finding> found;
    private final OpeningDetails opening;
    private final @Nullable Length pieceDepth;
    private final Figures figures;
    private final List<String> said = new ArrayList<>();
    private final List<String> cautions = new ArrayList<>();

    private OpeningWords(List<Finding> findings, OpeningDetails opening, @Nullable Length pieceDepth, Figures figures) {
        this.found = findings.stream().collect(Collectors.toMap(Finding::sum, Function.identity()));
        this.opening = opening;
        this.pieceDepth = pieceDepth;
        this.figures = figures;
    }

    /**
     * @param cautions common practice all of them
     */
    record Said(List<String> sentences, List<String> cautions) {}

    static Said of(List<Finding> findings, OpeningDetails opening, @Nullable Length pieceDepth, Figures figures) {
        OpeningWords words = new OpeningWords(findings, opening, pieceDepth, figures);
        words.splay(Sum.SPLAY_FLOOR, "");
        words.splay(Sum.SPLAY_MIDDLE, "Half way up, ");
        words.splay(Sum.SPLAY_TOP, "At the top, ");
        words.build();
        words.square();
        words.corners();
        words.lean(Sum.LEAN_LEFT, "left");
        words.lean(Sum.LEAN_RIGHT, "right");
        words.bow(Sum.BOW_BACK, Sum.SCRIBE_BACK, "back");
        words.bow(Sum.BOW_LEFT, Sum.SCRIBE_LEFT, "left");
        words.bow(Sum.BOW_RIGHT, Sum.SCRIBE_RIGHT, "right");
        words.fall();
        words.levelling();
        return new Said(List.copyOf(words.said), List.copyOf(words.cautions));
    }

    private @Nullable Reckoned figure(Sum sum) {
        Finding finding = found.get(sum);
        return finding == null ? null : finding.figure();
    }

    private void splay(Sum sum, String where) {
        Reckoned splay = figure(sum);
        if (splay == null) {
            return;
        }
        String the = where.isEmpty() ? "The" : where + "the";
        if (!splay.isBeyondDoubt()) {
            said.add(the + " front is as wide as the back, as far as the tape can tell.");
        } else if (splay.value() > 0) {
            said.add(the + " front is " + figures.size(splay.value()) + " wider than the back: it opens to the front.");
        } else {
            said.add(the + " front is " + figures.size(splay.value())
                    + " narrower than the back: the walls close toward the front.");
            String closing =
                    "It will not slide in whole where the walls close; build two parts, or leave a stile loose.";
            if (!cautions.contains(closing)) {
                cautions.add(closing);
            }
        }
    }

    private void build() {
        Reckoned narrowest = figure(Sum.NARROWEST);
        if (narrowest != null) {
            width(narrowest.value());
        }
        Reckoned taper = figure(Sum.TAPER);
        if (taper != null && pieceDepth != null && taper.isBeyondDoubt()) {
            said.add("Scribe: over a piece " + figures.read(pieceDepth) + " deep it tapers by "
                    + figures.size(taper.value()) + "; if one wall takes all, that is the taper there, else split it.");
        }
        Reckoned gap = figure(Sum.LARGEST_GAP);
        Reckoned stock = figure(Sum.SCRIBE_STOCK);
        if (gap == null || stock == null) {
            return;
        }
        said.add("The largest gap beside the piece is " + figures.size(gap.value()) + "; cut the scribe strip "
                + figures.cut(stock.value()) + " wide.");
        if (gap.value() > WIDEST_SCRIBE) {
            cautions.add("The gap is over " + figures.size(WIDEST_SCRIBE)
                    + ": rather a wider stile or a bevelled back edge than a scribe.");
        }
    }

    private void width(double narrowest) {
        Reckoned clear = figure(Sum.CLEAR_WIDTH);
        String least = figures.size(narrowest);
        String goesIn = clear == null ? least : figures.size(clear.value());
        said.add("Build to " + goesIn
                + (goesIn.equals(least) ? ", the narrowest place," : ", all that goes in square and plumb,")
                + " less your fitting gap.");
        Set<Unread> unread = OpeningSums.unread(opening.readings());
        boolean square = unread.contains(Unread.DIAGONALS) || unread.contains(Unread.FRONT_AND_BACK);
        boolean left = unread.contains(Unread.LEAN_LEFT);
        boolean right = unread.contains(Unread.LEAN_RIGHT);
        List<String> only = new ArrayList<>();
        List<String> read = new ArrayList<>();
        if (square) {
            only.add("it is square");
            read.add(unread.contains(Unread.DIAGONALS) ? "both diagonals" : "back, front and both diagonals");
        }
        if (left || right) {
            String side = left ? "left" : "right";
            only.add(left && right ? "its walls are plumb" : "the " + side + " wall is plumb");
            read.add(left && right ? "how far each wall leans" : "how far the " + side + " wall leans");
        }
        if (!only.isEmpty()) {
            said.add("That holds if " + String.join(" and ", only) + "; to know, read " + String.join(" and ", read)
                    + ".");
        }
    }

    private void square() {
        Reckoned shift = figure(Sum.SQUARE_SHIFT);
        if (shift != null) {
            said.add(
                    shift.isBeyondDoubt()
                            ? "Out of square: the front stands " + figures.size(shift.value()) + " to the "
                                    + (shift.value() > 0 ? "right" : "left") + " of the back."
                            : "Square, as far as the diagonals can tell.");
        }
        Reckoned depth = figure(Sum.DEPTH_CHECK);
        if (depth != null && depth.isBeyondDoubt()) {
            cautions.add("Diagonals and depth disagree by " + figures.size(depth.value())
                    + ", more than the tape explains: measure them again, or look for a bowed wall.");
        }
    }

    private void corners() {
        corner(Sum.CORNER_LEFT, "left");
        corner(Sum.CORNER_RIGHT, "right");
        Reckoned check = figure(Sum.CORNER_CHECK);
        if (check != null && check.isBeyondDoubt()) {
            cautions.add("The two corners and the widths disagree by " + figures.size(check.value())
                    + ", more than the tape explains: measure again, or look for a bowed wall.");
        }
    }

    private void corner(Sum sum, String side) {
        Reckoned corner = figure(sum);
        if (corner == null) {
            return;
        }
        Reckoned off = new Reckoned(corner.value() - 90, corner.standard());
        String doubt = off.isBeyondDoubt()
                ? Figures.decimals(Math.abs(off.value()), 2) + "\u00b0 " + (off.value() > 0 ? "open" : "closed")
                : "square, as far as the tape can tell";
        said.add("The " + side + " corner at the back is " + doubt + ".");
    }

    private void lean(Sum sum, String side) {
        Reckoned lean = figure(sum);
        if (lean == null) {
            return;
        }
        if (!lean.isBeyondDoubt()) {
            said.add("The " + side + " wall is plumb, as far as the level can tell.");
            return;
        }
        String way = lean.value() > 0 ? "out" : "in";
        boolean whole = found.containsKey(Sum.LOWEST);
        said.add("The " + side + " wall leans " + way + " by " + figures.size(lean.value())
                + (whole ? " over the height of the opening." : " over the height that was read."));
        Length over = opening.readings().get(Reading.LEAN_OVER);
        Length read = opening.readings().get(sum == Sum.LEAN_LEFT ? Reading.LEAN_LEFT : Reading.LEAN_RIGHT);
        if (over != null
                && read != null
                && Math.abs(read.inches().doubleValue())
                        > STEEPEST_WALL * over.inches().doubleValue()) {
            cautions.add("The " + side + " wall leans more than " + figures.size(0.375) + " in " + figures.size(32)
                    + ", a guideline for finished walls: plan more time to scribe.");
        }
    }

    private void bow(Sum sum, Sum strip, String side) {
        Reckoned bow = figure(sum);
        Reckoned wide = figure(strip);
        if (bow == null || wide == null) {
            return;
        }
        if (!bow.isBeyondDoubt()) {
            said.add("The " + side + " wall is straight, as far as the string can tell.");
            return;
        }
        said.add("The " + side + " wall "
                + (bow.value() > 0
                        ? "stands back by " + figures.size(bow.value())
                                + " in the middle: the piece touches at its ends"
                        : "bulges by " + figures.size(bow.value()) + " in the middle: the piece touches there")
                + "; cut the scribe strip on it " + figures.cut(wide.value()) + " wide.");
        if (Math.abs(bow.value()) > WIDEST_SCRIBE) {
            cautions.add("The " + side + " wall bows more than " + figures.size(WIDEST_SCRIBE)
                    + ": rather a wider stile, a bevelled back edge or a filler than a scribe.");
        }
    }

    private void levelling() {
        Reckoned front = figure(Sum.FALL_FRONT);
        if (front != null) {
            said.add(
                    front.isBeyondDoubt()
                            ? "Under the piece the floor falls " + figures.size(front.value()) + " to the "
                                    + (front.value() > 0 ? "front." : "back.")
                            : "From back to front the floor is level, as far as the level can tell.");
        }
        Reckoned across = figure(Sum.FALL);
        Reckoned both = figure(Sum.LEVELLING);
        if (both == null || across == null || front == null || !both.isBeyondDoubt()) {
            return;
        }
        String high = (front.value() >= 0 ? "back " : "front ") + (across.value() >= 0 ? "left" : "right");
        String low = (front.value() >= 0 ? "front " : "back ") + (across.value() >= 0 ? "right" : "left");
        said.add("Level from the " + high + " corner, the highest: at the " + low + " one the base stands up to "
                + figures.size(both.value()) + " off the floor, to shim or to make the toe higher by.");
    }

    private void fall() {
        Reckoned fall = figure(Sum.FALL);
        if (fall == null) {
            return;
        }
        boolean wide = found.containsKey(Sum.NARROWEST);
        said.add(
                fall.isBeyondDoubt()
                        ? "The floor falls " + figures.size(fall.value()) + " to the "
                                + (fall.value() > 0 ? "right" : "left")
                                + (wide
                                        ? " over the width: cut the base to it or shim."
                                        : " over the run that was read.")
                        : "The floor is level, as far as the level can tell.");
    }
}
