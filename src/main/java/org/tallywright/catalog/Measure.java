package org.tallywright.catalog;

import java.util.Locale;
import org.tallywright.shared.NotUnderstood;

/** What of a piece the quantity of a proposed task grows with. Sizes are those of the whole piece, times its count. */
public enum Measure {
    EACH("number of pieces"),
    WIDTH("width"),
    HEIGHT("height"),
    DEPTH("depth"),
    FACE("face, width x height"),
    FLOOR("plan, width x depth"),
    VOLUME("volume"),
    PERIMETER("edge of the face, all round"),
    JOB("once for the whole job");

    private final String label;

    Measure(String label) {
        this.label = label;
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
}
