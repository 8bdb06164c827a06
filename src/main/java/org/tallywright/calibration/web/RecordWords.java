package org.tallywright.calibration.web;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.tallywright.calibration.Coverage;
import org.tallywright.calibration.MeanRatio;
import org.tallywright.calibration.RangeRecord;
import org.tallywright.calibration.TrackRecord;
import org.tallywright.calibration.Trend;
import org.tallywright.shared.Money;
import org.tallywright.shared.MoneyFormat;

/**
 * The record in a carpenter's words, each figure with its range and how much stands behind it. Every sentence is made from the
 * figures it names, so that it is true of one job as of fourteen.
 *
 * @param bids what the bids themselves said
 * @param running what was said of running jobs on the way
 * @param record what would have been said, looking back
 * @param habits what tends to be forgotten
 */
record RecordWords(List<String> bids, List<String> running, List<String> record, List<String> habits) {
    static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("EEE d MMM uuuu, HH:mm", Locale.ENGLISH);
    private static final int FEW = 10;

    static RecordWords of(TrackRecord.Page page, MoneyFormat money) {
        return new RecordWords(bids(page.bids(), money), running(page.stages()), looking(page, money), habits(page));
    }

    private static List<String> bids(TrackRecord.Bids bids, MoneyFormat format) {
        List<String> words = new ArrayList<>();
        RangeRecord ranges = bids.ranges();
        if (ranges != null) {
            words.add("Of " + jobs(ranges.jobs()) + " with a forecast kept from " + its(ranges.jobs()) + " bid, "
                    + ranges.inside().hits() + " ended inside the range we gave. " + verdict(ranges.inside()));
            words.add(under(ranges.under()));
            words.add(bias(ranges.bias()));
            words.add(width(ranges));
            Money all = bids.money();
            if (all != null) {
                words.add(money(all, bids.lines().size(), format));
            }
        }
        if (bids.without() > 0) {
            words.add((ranges == null ? "No finished job has a forecast kept from its bid yet. " : "")
                    + without(bids.without(), ranges != null));
        }
        return words;
    }

    private static String without(int n, boolean more) {
        return jobs(n) + (more ? " besides" : "") + (n == 1 ? " was" : " were")
                + " brought in from a file, bid before forecasts were kept, or closed without an accepted bid; "
                + (n == 1 ? "it is" : "they are") + " judged only looking back.";
    }

    private static List<String> running(List<TrackRecord.Stage> stages) {
        List<String> words = new ArrayList<>();
        for (TrackRecord.Stage stage : stages) {
            RangeRecord ranges = stage.ranges();
            if (ranges != null) {
                String done = stage.percent() == 50 ? "half" : stage.percent() == 25 ? "a quarter" : "three quarters";
                words.add("With about " + done + " done: of " + jobs(ranges.jobs())
                        + " with a forecast kept from then, " + ranges.inside().hits()
                        + " ended inside the range we gave (true rate between "
                        + percent(ranges.inside().low()) + " and "
                        + percent(ranges.inside().high()) + ")" + ending(ranges.inside()) + " " + bias(ranges.bias())
                        + widened(stage.wider(), stage.shift()));
            }
        }
        if (words.isEmpty()) {
            words.add(
                    "No finished job has a forecast kept from the way there yet. One is kept at the end of each day on"
                            + " which something about a running job changed; the first at about a quarter, a half and three"
                            + " quarters done are judged here when the job is closed.");
        }
        return words;
    }

    private static List<String> looking(TrackRecord.Page page, MoneyFormat money) {
        List<String> words = new ArrayList<>();
        TrackRecord.Summary sum = page.summary();
        if (sum != null) {
            RangeRecord ranges = sum.ranges();
            words.add("Of " + jobs(ranges.jobs()) + ", " + ranges.inside().hits()
                    + " ended inside the range that would have been given. " + verdict(ranges.inside()));
            words.add(under(ranges.under()));
            words.add(bias(ranges.bias()));
            words.add(width(ranges));
            double wider = ranges.timesAsWide(page.bids().widened());
            if (isWider(wider)) {
                words.add(
                        "From what the bids said and this together, new ranges are made wider: one like that of the middle"
                                + " job becomes " + times(wider) + ".");
            }
            Money all = sum.money();
            if (all != null && sum.bids() > page.bids().lines().size()) {
                words.add(money(all, sum.bids(), money));
            }
        }
        return words;
    }

    /** Says no more than the count can bear: the range of true rates that would look like it. */
    private static String verdict(Coverage c) {
        boolean few = c.of() < FEW;
        String rate = "The range should hold four times in five; from "
                + (c.of() == 1 ? "one job" : few ? "so few jobs" : "so many jobs")
                + " the true rate may be anywhere between "
                + percent(c.low()) + " and " + percent(c.high());
        return rate + ending(c);
    }

    private static String ending(Coverage c) {
        boolean few = c.of() < FEW;
        if (c.high() < 0.8) {
            return few ? ": the ranges may be too narrow." : ": the ranges were too narrow.";
        }
        if (c.low() > 0.8) {
            return few ? ": they could perhaps be narrower." : ": they could have been narrower.";
        }
        return few ? ", so it is too early to tell." : ", which fits.";
    }

    private static String under(Coverage c) {
        return c.hits() + " of " + c.of() + " stayed under " + (c.of() == 1 ? "its" : "their")
                + " P80, the hours that four jobs in five should stay under (true rate between " + percent(c.low())
                + " and " + percent(c.high()) + ").";
    }

    private static String bias(@Nullable MeanRatio bias) {
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

    private static String width(RangeRecord ranges) {
        return (ranges.jobs() == 1 ? "The range went from " : "In the middle job the range went from ")
                + percent(ranges.narrow()) + " to " + percent(ranges.wide())
                + " of the likely hours. A range that is narrower and still holds is worth more.";
    }

    private static String widened(double wider, double shift) {
        String moved = Math.abs(shift) < 0.05 ? "" : shift < 0 ? "moved to fewer hours" : "moved to more hours";
        String wide = isWider(wider) ? "made " + times(wider) : "";
        if (wide.isEmpty() && moved.isEmpty()) {
            return "";
        }
        return " New ranges of the hours still to come are therefore " + wide
                + (wide.isEmpty() || moved.isEmpty() ? "" : " and ") + moved + ".";
    }

    /** Below that, one decimal would say 1.0. */
    private static boolean isWider(double times) {
        return times >= 1.05;
    }

    private static String times(double wider) {
        return "about " + String.format(Locale.ROOT, "%.1f", wider) + " times as wide";
    }

    private static String its(int n) {
        return n == 1 ? "its" : "their";
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
            habits.add("Against their rates, the " + small.later() + " smaller of " + small.tasks() + " tasks took "
                    + RateWords.than(small.ratio(), "the larger ones") + "; four times in five between "
                    + RateWords.percent(small.low()) + " and " + RateWords.percent(small.high()) + "." + size(small));
        }
        for (TrackRecord.Copied person : page.copied()) {
            habits.add(person.equal() + " of " + person.tasks() + " tasks of " + person.name()
                    + " took the estimate to the minute. Copied hours teach nothing; log what the clock says.");
        }
        habits.addAll(page.noted());
        return habits;
    }

    private static String size(Trend small) {
        if (small.low() > 1) {
            return " Small tasks take longer against their rates, as they do where set-up is forgotten.";
        }
        return small.high() < 1 ? " Large tasks take longer against their rates." : " No clear difference.";
    }

    private static String jobs(int n) {
        return n == 1 ? "1 finished job" : n + " finished jobs";
    }

    private static String percent(double share) {
        return Math.round(100 * share) + " %";
    }
}
