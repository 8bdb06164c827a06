package org.tallywright.past.web;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.calibration.RoundHours;
import org.tallywright.calibration.SeenRange;
import org.tallywright.catalog.Measure;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Length;
import org.tallywright.shared.Money;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.Units;

/** Writes sizes, hours and ranges of past work in words. */
@Component
class PastWords {
    private final ShopConventions shop;

    PastWords(ShopConventions shop) {
        this.shop = shop;
    }

    Units units() {
        return shop.units();
    }

    /** What stands behind a box for a length. */
    String lengthSuffix() {
        return units() == Units.METRIC ? "mm" : "in";
    }

    String length(@Nullable Length length) {
        return length == null ? "" : length.format(units());
    }

    /** {@code 3' wide, 7' high, 1' deep, 2 alike}, as far as known. */
    String sizes(PieceDetails piece) {
        List<String> known = new ArrayList<>();
        add(known, piece.width(), "wide");
        add(known, piece.height(), "high");
        add(known, piece.depth(), "deep");
        if (piece.count() > 1) {
            known.add(piece.count() + " alike");
        }
        return String.join(", ", known);
    }

    private void add(List<String> known, @Nullable Length length, String word) {
        if (length != null) {
            known.add(length(length) + " " + word);
        }
    }

    /** The unit of a kind's measure as the shop measures: lf or lm of width, sf or m2 of face. */
    Unit unit(Measure natural) {
        Unit imperial = natural == Measure.WIDTH ? Unit.LF : natural == Measure.FACE ? Unit.SF : Unit.EACH;
        return units() == Units.METRIC && natural != Measure.EACH ? imperial.counterpart() : imperial;
    }

    /** A figure for one imperial unit as one for the shop's unit. */
    double perUnit(double perImperial, Measure natural) {
        return unit(natural).isMetric()
                ? unit(natural).toCounterpart(BigDecimal.valueOf(perImperial)).doubleValue()
                : perImperial;
    }

    String hours(double hours) {
        return RoundHours.of(hours).toString();
    }

    static String exact(int minutes) {
        return Hours.ofMinutes(minutes).toString();
    }

    String rate(double hours, Measure natural) {
        UnitHours rate =
                UnitHours.of(BigDecimal.valueOf(perUnit(hours, natural)).round(new MathContext(3)));
        return rate + " h/" + unit(natural).code();
    }

    String money(double amount) {
        return shop.money().format(Money.of(BigDecimal.valueOf(amount)));
    }

    String moneyPer(double amount, Measure natural) {
        return money(perUnit(amount, natural)) + "/" + unit(natural).code();
    }

    /**
     * {@code four times in five between 8 h and 14 h; 12 built}, or {@code from 8 h to 14 h; 3 built, too few for a range}.
     *
     * @param counted what n counts: built, jobs
     */
    static String spread(SeenRange range, DoubleFunction<String> figure, String counted) {
        String n = range.n() + " " + (range.n() == 1 ? counted.replaceFirst("s$", "") : counted);
        if (range.enough()) {
            return "four times in five between " + figure.apply(range.low()) + " and " + figure.apply(range.high())
                    + "; " + n;
        }
        String all = range.n() == 1
                ? ""
                : "from " + figure.apply(range.lowest()) + " to " + figure.apply(range.highest()) + "; ";
        return all + n + ", too few for a range";
    }
}
