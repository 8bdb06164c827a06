package org.tallywright.web.stick;

import java.util.List;
import org.springframework.web.util.HtmlUtils;

/** Writes the few shapes a stick needs. Text is escaped; numbers have one decimal and a point. */
final class Svg {
    private final StringBuilder out = new StringBuilder(4096);

    Svg open(double width, double height, String key, String title, String description) {
        return raw("<svg viewBox=\"0 0 %s %s\" role=\"img\" aria-labelledby=\"%s-t %s-d\" focusable=\"false\">"
                        .formatted(n(width), n(height), key, key))
                .raw("<title id=\"%s-t\">%s</title>".formatted(key, escape(title)))
                .raw("<desc id=\"%s-d\">%s</desc>".formatted(key, escape(description)));
    }

    /** The two hatches, named {@code key-o} (over) and {@code key-w} (wait). */
    Svg hatches(String key) {
        return raw("<defs><pattern id=\"" + key + "-o\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\""
                        + " patternTransform=\"rotate(45)\"><path class=\"k-hatch-over\" d=\"M0 0V6\"/></pattern>")
                .raw("<pattern id=\"" + key + "-w\" width=\"5\" height=\"5\" patternUnits=\"userSpaceOnUse\">"
                        + "<path class=\"k-hatch-wait\" d=\"M0 5L5 0M-1 1L1 -1M4 6L6 4\"/></pattern></defs>");
    }

    Svg rect(String css, double x, double y, double width, double height) {
        return rect(css, x, y, width, height, "");
    }

    /** @param fill the name of a hatch, or empty to leave the filling to the style sheet */
    Svg rect(String css, double x, double y, double width, double height, String fill) {
        return raw("<rect class=\"%s\" x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"%s/>"
                .formatted(
                        css,
                        n(x),
                        n(y),
                        n(Math.max(0, width)),
                        n(Math.max(0, height)),
                        fill.isEmpty() ? "" : " fill=\"url(#" + fill + ")\""));
    }

    /** @param steps path letters and numbers in turn, as in {@code path("k", "M", 0, 0, "V", 6)} */
    Svg path(String css, Object... steps) {
        out.append("<path class=\"").append(css).append("\" d=\"");
        boolean afterNumber = false;
        for (Object step : steps) {
            if (step instanceof Number number) {
                out.append(afterNumber ? " " : "").append(n(number.doubleValue()));
            } else {
                out.append(step);
            }
            afterNumber = step instanceof Number;
        }
        out.append("\"/>");
        return this;
    }

    Svg text(String css, double x, double y, int size, boolean toTheLeft, String text) {
        return textStart(css, x, y, size, toTheLeft).raw(escape(text)).raw("</text>");
    }

    Svg textStart(String css, double x, double y, int size, boolean toTheLeft) {
        return raw("<text class=\"%s\" x=\"%s\" y=\"%s\" font-size=\"%d\"%s>"
                .formatted(css, n(x), n(y), size, toTheLeft ? " text-anchor=\"end\"" : ""));
    }

    /** @param gap room before it */
    Svg span(String css, String text, double gap) {
        return raw("<tspan class=\"" + css + "\"" + (gap > 0 ? " dx=\"" + n(gap) + "\">" : ">"))
                .raw(escape(text))
                .raw("</tspan>");
    }

    Svg textEnd() {
        return raw("</text>");
    }

    Svg add(Svg other) {
        out.append(other.out);
        return this;
    }

    String close() {
        return out.append("</svg>").toString();
    }

    private Svg raw(String markup) {
        out.append(markup);
        return this;
    }

    /** Room a text needs, from above: letter widths of a wide sans face, as no font can be asked here. */
    static double room(String text, int size, boolean bold) {
        double ems = text.codePoints()
                .mapToDouble(
                        c -> c > 0x2e80 ? 1 : " .,:;|!'ijlI".indexOf(c) >= 0 ? .34 : "mwMW".indexOf(c) >= 0 ? .97 : .63)
                .sum();
        return ems * size * (bold ? 1.1 : 1);
    }

    /** Cuts a name to so many letters, the last one a sign that it was cut. */
    static String cut(String name, int letters) {
        if (name.codePointCount(0, name.length()) <= letters) {
            return name;
        }
        return name.substring(0, name.offsetByCodePoints(0, Math.max(1, letters - 1)))
                        .strip() + "…";
    }

    /** Cuts out the middle, for names that differ in their ends. */
    static String cutInside(String name, int letters) {
        int[] all = name.codePoints().toArray();
        if (all.length <= letters || letters < 3) {
            return cut(name, letters);
        }
        int head = letters / 2;
        int tail = letters - 1 - head;
        return new String(all, 0, head).strip() + "…" + new String(all, all.length - tail, tail).strip();
    }

    /** At most two lines of so many letters, parted between words where that goes. */
    static List<String> twoLines(String text, int letters) {
        if (text.codePointCount(0, text.length()) <= letters) {
            return List.of(text);
        }
        int gap = text.lastIndexOf(' ', text.offsetByCodePoints(0, letters));
        return gap <= 0
                ? List.of(cut(text, letters))
                : List.of(text.substring(0, gap), cut(text.substring(gap + 1), letters));
    }

    private static String escape(String text) {
        return HtmlUtils.htmlEscape(printable(text), "UTF-8");
    }

    /** Control characters, which no XML may hold, become spaces. */
    private static String printable(String text) {
        return text.codePoints()
                .map(c -> Character.isISOControl(c) ? ' ' : c)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    private static String n(double number) {
        long tenths = Math.round(number * 10);
        long tenth = Math.abs(tenths % 10);
        String whole = (tenths < 0 && tenths > -10 ? "-" : "") + tenths / 10;
        return tenth == 0 ? whole : whole + "." + tenth;
    }
}
