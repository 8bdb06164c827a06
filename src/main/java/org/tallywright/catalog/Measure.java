package org.tallywright.catalog;

import java.util.Locale;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Unit;

/** What of a piece the quantity of a proposed task grows with. Sizes are those of the whole piece, times its count. */
public enum Measure {
    EACH("number of pieces", Unit.EACH),
    WIDTH("width", Unit.LF),
    HEIGHT("height", Unit.LF),
    DEPTH("depth", Unit.LF),
    FACE("face, width x height", Unit.SF),
    FLOOR("plan, width x depth", Unit.SF),
    VOLUME("volume", Unit.EACH),
    PERIMETER("edge of the face, all round", Unit.LF),
    JOB("once for the whole job", Unit.JOB);

    private final String label;
    private final Unit unit;

    Measure(String label, Unit unit) {
        this.label = label;
        this.unit = unit;
    }

    public static Measure of(String typed) {
        for (Measure measure : values()) {
            if (measure.code().equals(typed.strip().toLowerCase(Locale.ROOT))) {
                return measure;
            }
        }
        throw new NotUnderstood("Choose what the quantity grows with.");
    }

    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    public String label() {
        return label;
    }

    /** What the measure itself is counted in; a volume, in cubic feet, has no unit of the glossary. */
    Unit unit() {
        return unit;
    }
}
