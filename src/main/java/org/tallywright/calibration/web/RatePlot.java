package org.tallywright.calibration.web;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.springframework.web.util.HtmlUtils;
import org.tallywright.calibration.RateBook;
import org.tallywright.shared.UnitHours;

/** Draws what a unit took over time, with the starting rate and the calibrated range, as an SVG element. */
final class RatePlot {
    private static final double WIDTH = 400;
    private static final double HEIGHT = 210;
    private static final double LEFT = 48;
    private static final double RIGHT = 12;
    private static final double TOP = 10;
    private static final double BOTTOM = 26;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

    private final RateBook.KindHistory history;
    private final double most;
    private final LocalDate from;
    private final LocalDate to;
    private final StringBuilder out = new StringBuilder(2048);

    private RatePlot(RateBook.KindHistory history) {
        this.history = history;
        List<RateBook.Point> points = history.points();
        double top = Math.max(
                value(history.entry().high()), value(history.entry().kind().unitHours()));
        for (RateBook.Point point : points) {
            top = Math.max(top, value(point.took()));
        }
        this.most = top * 1.08;
        this.from = points.get(0).done();
        LocalDate last = points.get(points.size() - 1).done();
        this.to = last.isAfter(from) ? last : from.plusDays(1);
    }

    /** Empty where there is nothing to draw. */
    static String of(RateBook.KindHistory history) {
        return history.points().isEmpty() || history.entry().typical() == null ? "" : new RatePlot(history).draw();
    }

    private String draw() {
        out.append(
                        "<svg class=\"rate-plot\" viewBox=\"0 0 400 210\" role=\"img\" aria-labelledby=\"plot-t\" focusable=\"false\">")
                .append("<title id=\"plot-t\">")
                .append(escape("Hours per " + history.entry().kind().unit().label() + " of "
                        + history.points().size() + " finished tasks, " + DAY.format(from) + " to " + DAY.format(to)))
                .append("</title>");
        RateBook.Entry entry = history.entry();
        double high = y(value(entry.high()));
        out.append("<rect class=\"p-range\" x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"/>"
                .formatted(n(LEFT), n(high), n(WIDTH - LEFT - RIGHT), n(y(value(entry.low())) - high)));
        line("p-axis", LEFT, y(0), WIDTH - RIGHT, y(0));
        across("p-start", value(entry.kind().unitHours()));
        across("p-typical", value(entry.typical()));
        history.points().forEach(this::dot);
        scale();
        return out.append("</svg>").toString();
    }

    private void dot(RateBook.Point point) {
        out.append("<circle class=\"p-dot\" cx=\"%s\" cy=\"%s\" r=\"4\"><title>%s</title></circle>"
                .formatted(
                        n(x(point.done())),
                        n(y(value(point.took()))),
                        escape(point.jobNumber() + ", " + DAY.format(point.done()) + ": " + point.took() + " h")));
    }

    private void scale() {
        text(LEFT - 6, y(0) + 4, "end", "0");
        text(LEFT - 6, TOP + 8, "end", RateWords.figure(most));
        text(LEFT, HEIGHT - 6, "start", DAY.format(from));
        text(WIDTH - RIGHT, HEIGHT - 6, "end", DAY.format(to));
    }

    private void across(String css, double value) {
        line(css, LEFT, y(value), WIDTH - RIGHT, y(value));
    }

    private void line(String css, double x1, double y1, double x2, double y2) {
        out.append("<path class=\"%s\" d=\"M%s %sL%s %s\"/>".formatted(css, n(x1), n(y1), n(x2), n(y2)));
    }

    private void text(double x, double y, String anchor, String words) {
        out.append("<text x=\"%s\" y=\"%s\" text-anchor=\"%s\">%s</text>".formatted(n(x), n(y), anchor, escape(words)));
    }

    private double x(LocalDate day) {
        double share = (double) (day.toEpochDay() - from.toEpochDay()) / (to.toEpochDay() - from.toEpochDay());
        return LEFT + 8 + share * (WIDTH - LEFT - RIGHT - 16);
    }

    private double y(double value) {
        return HEIGHT - BOTTOM - value / most * (HEIGHT - TOP - BOTTOM);
    }

    private static double value(@org.jspecify.annotations.Nullable UnitHours hours) {
        return hours == null ? 0 : hours.amount().doubleValue();
    }

    private static String n(double number) {
        return String.format(Locale.ROOT, "%.1f", number);
    }

    private static String escape(String words) {
        return HtmlUtils.htmlEscape(words, "UTF-8");
    }
}
