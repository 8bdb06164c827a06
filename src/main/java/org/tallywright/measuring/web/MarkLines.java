package org.tallywright.measuring.web;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.tallywright.measuring.Mark;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;

/** Marks as lines of text, one to a line: {@code vent: 34 1/2 x 12} with the words and the height as the kind has them. */
final class MarkLines {
    private static final int MOST = 40;

    private MarkLines() {}

    static List<Mark> read(String typed, Mark.Kind kind, Units units) {
        List<Mark> marks = new ArrayList<>();
        String[] lines = Typed.block(typed, 4000).split("\n|;");
        for (int n = 0; n < lines.length; n++) {
            if (!lines[n].isBlank()) {
                marks.add(mark(lines[n].strip(), n + 1, kind, units));
            }
        }
        if (marks.size() > MOST) {
            throw new Refused("That is " + marks.size() + " lines; there is room for " + MOST + ".");
        }
        return marks;
    }

    private static Mark mark(String line, int number, Mark.Kind kind, Units units) {
        int colon = line.lastIndexOf(':');
        try {
            String name = colon < 0 ? "" : Typed.line(line.substring(0, colon), 80);
            String rest = line.substring(colon + 1).strip();
            if (kind != Mark.Kind.OUTLET) {
                return new Mark(kind, name, Length.parse(rest, units), null);
            }
            String[] sides = rest.split("[xX\u00d7]");
            if (sides.length != 2) {
                throw new NotUnderstood("write how far from the left and how high, such as 34 1/2 x 12.");
            }
            return new Mark(kind, name, Length.parse(sides[0].strip(), units), Length.parse(sides[1].strip(), units));
        } catch (NotUnderstood wrong) {
            throw new NotUnderstood("Line " + number + ": " + wrong.sentence());
        } catch (Refused wrong) {
            throw new NotUnderstood("Line " + number + ": " + wrong.sentence());
        }
    }

    static String write(List<Mark> marks, Mark.Kind kind, Units units) {
        return marks.stream()
                .filter(mark -> mark.kind() == kind)
                .map(mark -> line(mark, units))
                .collect(Collectors.joining("\n"));
    }

    static String line(Mark mark, Units units) {
        return (mark.name().isEmpty() ? "" : mark.name() + ": ") + place(mark, units);
    }

    static String place(Mark mark, Units units) {
        Length up = mark.up();
        return mark.across().format(units) + (up == null ? "" : " x " + up.format(units));
    }
}
