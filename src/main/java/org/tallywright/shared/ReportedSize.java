package org.tallywright.shared;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a named lumber size really measures. Hardwood thicknesses: rough, then surfaced on one or two faces (standard
 * thicknesses as in the Wood Handbook, chapter 6, read in a reference table). Softwood: nominal, then the minimum dressed dry
 * size (PS 20, read in reference pages; 1x3 is common practice). Mills differ: measure what was delivered.
 *
 * @param name how it is asked for: {@code 8/4} or {@code 2x4}
 * @param thickness nominal; counts for board feet
 * @param width nominal, or null for hardwood of random width
 * @param oneFace thickness with one face planed, or null where the table has none
 * @param dressedThickness thickness with both faces planed
 * @param dressedWidth width when dressed, or null for random width
 */
public record ReportedSize(
        String name,
        Length thickness,
        @Nullable Length width,
        @Nullable Length oneFace,
        Length dressedThickness,
        @Nullable Length dressedWidth) {

    /** Every size in the table, hardwood first, thin to thick. */
    public static final List<ReportedSize> ALL = List.of(
            hardwood("3/8", "3/8", null, "3/16"),
            hardwood("2/4", "1/2", "3/8", "5/16"),
            hardwood("5/8", "5/8", "1/2", "7/16"),
            hardwood("3/4", "3/4", "5/8", "9/16"),
            hardwood("4/4", "1", "7/8", "13/16"),
            hardwood("5/4", "1 1/4", "1 1/8", "1 1/16"),
            hardwood("6/4", "1 1/2", "1 3/8", "1 5/16"),
            hardwood("7/4", "1 3/4", null, "1 1/2"),
            hardwood("8/4", "2", "1 13/16", "1 3/4"),
            hardwood("12/4", "3", "2 13/16", "2 3/4"),
            hardwood("14/4", "3 1/2", null, "3 1/4"),
            hardwood("16/4", "4", "3 13/16", "3 3/4"),
            softwood(1, 2, "3/4", "1 1/2"),
            softwood(1, 3, "3/4", "2 1/2"),
            softwood(1, 4, "3/4", "3 1/2"),
            softwood(1, 6, "3/4", "5 1/2"),
            softwood(1, 8, "3/4", "7 1/4"),
            softwood(1, 10, "3/4", "9 1/4"),
            softwood(1, 12, "3/4", "11 1/4"),
            softwood(2, 4, "1 1/2", "3 1/2"),
            softwood(2, 6, "1 1/2", "5 1/2"),
            softwood(2, 8, "1 1/2", "7 1/4"),
            softwood(2, 10, "1 1/2", "9 1/4"),
            softwood(2, 12, "1 1/2", "11 1/4"),
            softwood(4, 6, "3 1/2", "5 1/2"));

    /** The size called that, such as {@code 8/4}, {@code 2x4} or {@code 2 X 4}; empty where the table has none. */
    public static Optional<ReportedSize> find(String typed) {
        String key = Decimals.tidy(typed).replace('\u00d7', 'x').replaceAll("[ \"]", "");
        return ALL.stream().filter(s -> s.name.equals(key)).findFirst();
    }

    private static ReportedSize hardwood(String name, String rough, @Nullable String oneFace, String twoFaces) {
        return new ReportedSize(
                name, inches(rough), null, oneFace == null ? null : inches(oneFace), inches(twoFaces), null);
    }

    private static ReportedSize softwood(int thickness, int width, String dressedThickness, String dressedWidth) {
        return new ReportedSize(
                thickness + "x" + width,
                new Length(thickness * Length.INCH),
                new Length(width * Length.INCH),
                null,
                inches(dressedThickness),
                inches(dressedWidth));
    }

    private static Length inches(String words) {
        return Length.parse(words, Units.IMPERIAL);
    }
}
