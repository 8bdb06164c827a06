package org.tallywright.calibration.web;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.tallywright.calibration.Coverage;
import org.tallywright.calibration.MeanRatio;
import org.tallywright.calibration.TrackRecord;
import org.tallywright.calibration.Trend;
import org.tallywright.shared.Money;
import org.tallywright.shared.MoneyFormat;

/**
 * The record in a carpenter's words, each figure with its range and how much stands behind it.
 *
 * @param record what came of the ranges
 * @param habits what tends to be forgotten
 */
record RecordWords(List<String> record, List<String> habits) {
    static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("EEE d MMM uuuu, HH:mm", Locale.ENGLISH);

    static RecordWords of(TrackRecord.Page page, MoneyFormat money) {
        List<String> record = new ArrayList<>();
        TrackRecord.Summary sum = page.summary();
        if (sum != null) {
            record.add(inside(sum.inside()));
            record.add(under(sum.under()));
            record.add(bias(sum.bias()));
            record.add("In the middle job the range went from " + percent(sum.narrow()) + " to " + percent(sum.wide())
                    + " of the likely hours. A range that is narrower and still holds is worth more.");
            Money all = sum.money();
            if (all != null) {
                record.add(money(all, sum.bids(), money));
            }
        }
        return new RecordWords(record, habits(page));
    }

    private static String inside(Coverage c) {
        String first = "Of " + jobs(c.of()) + ", " + c.hits() + " ended inside the range given for them.";
        return first + " The range should hold four times in five; from so many jobs the true rate may be anywhere"
                + " between " + percent(c.low()) + " and " + percent(c.high()) + ".";
    }

    private static String under(Coverage c) {
        return c.hits() + " of " + c.of()
                + " stayed under their P80, the hours that four jobs in five should stay under" + " (true rate between "
                + percent(c.low()) + " and " + percent(c.high()) + ").";
    }

    private static String bias(@org.jspecify.annotations.Nullable MeanRatio bias) {
        if (bias == null) {
            return "Whether the likely hours are too high or too low on the whole needs three finished jobs.";
        }
        String tail = " (four times in five between " + RateWords.percent(bias.low()) + " and "
                + RateWords.percent(bias.high()) + ", " + jobs(bias.of()) + ").";
        String word = bias.low() >= 1.005
                ? "The forecasts were too low."
                : bias.high() < 0.995 ? "The forecasts were too high." : "No clear lean to either side.";
        return "Jobs took " + RateWords.than(bias.ratio(), "forecast") + tail + " " + word;
    }

    private static String money(Money all, int bids, MoneyFormat format) {
        boolean lost = all.isNegative();
        Money plain = lost ? Money.ZERO.minus(all) : all;
        return "Against the hours that were bid, " + (bids == 1 ? "one bid " : bids + " bids ")
                + (lost ? "cost " : "left ") + format.format(plain) + (lost ? " more" : " over")
                + " in labour, at each bid's labour rate.";
    }

    private static List<String> habits(TrackRecord.Page page) {
        List<String> habits = new ArrayList<>();
        TrackRecord.OffLines off = page.offLines();
        if (off != null && off.jobs() > 0) {
            StringBuilder text = new StringBuilder("On 100 hours that a line names come "
                    + Math.round(100 * off.share()) + " that no line names (" + jobs(off.jobs()) + "; "
                    + Math.round(100 * off.startingShare()) + " % of this is still the starting value of 8)");
            for (TrackRecord.OffLine part : off.classes()) {
                text.append(part == off.classes().get(0) ? ": " : ", ")
                        .append(part.hourClass())
                        .append(' ')
                        .append(RateWords.figure(100 * part.share()));
            }
            habits.add(text.append(".").toString());
        }
        Trend small = page.smallTasks();
        if (small != null) {
            habits.add("Against their rates, the smaller half of " + small.tasks() + " tasks took "
                    + RateWords.than(small.ratio(), "the larger half") + "; four times in five between "
                    + RateWords.percent(small.low()) + " and " + RateWords.percent(small.high()) + "."
                    + (small.low() > 1 ? " Set-up on small tasks tends to be forgotten." : ""));
        }
        for (TrackRecord.Copied person : page.copied()) {
            habits.add(person.equal() + " of " + person.tasks() + " tasks of " + person.name()
                    + " took the estimate to the minute. Copied hours teach nothing; log what the clock says.");
        }
        habits.addAll(page.noted());
        return habits;
    }

    private static String jobs(int n) {
        return n == 1 ? "1 finished job" : n + " finished jobs";
    }

    private static String percent(double share) {
        return Math.round(100 * share) + " %";
    }
}
