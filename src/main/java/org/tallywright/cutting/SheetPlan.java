package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.List;

/**
 * Which part comes out of which sheet, cut by cut.
 *
 * @param sheets owned ones first
 * @param unplaced parts that fit no sheet, by their place in the list asked for
 * @param parted matches that no sheet takes whole
 * @param areaBound so many sheets are bought at least by area alone, owned ones being filled with what fits them
 */
public record SheetPlan(List<Sheet> sheets, List<Integer> unplaced, List<Parted> parted, int areaBound, Answer answer) {
    /**
     * Matching parts whose figure does not run on through all of them.
     *
     * @param runs in so many groups it does
     */
    public record Parted(int match, int runs) {}

    /** @param owned its place in the list of owned sheets, or -1 for one that is bought */
    public record Sheet(SheetStock stock, int owned, Region whole) {
        public boolean isOwned() {
            return owned >= 0;
        }

        public List<Region.Part> parts() {
            List<Region.Part> parts = new ArrayList<>();
            collect(whole, Region.Part.class, parts);
            return parts;
        }

        public List<Region.Left> left() {
            List<Region.Left> left = new ArrayList<>();
            collect(whole, Region.Left.class, left);
            return left;
        }

        /** In the order in which they are made. */
        public List<Region.Cut> cuts() {
            List<Region.Cut> cuts = new ArrayList<>();
            collect(whole, Region.Cut.class, cuts);
            return cuts;
        }
    }

    public int bought() {
        return (int) sheets.stream().filter(sheet -> !sheet.isOwned()).count();
    }

    private static <T extends Region> void collect(Region region, Class<T> sort, List<T> into) {
        if (sort.isInstance(region)) {
            into.add(sort.cast(region));
        }
        if (region instanceof Region.Cut cut) {
            collect(cut.first(), sort, into);
            if (cut.second() != null) {
                collect(cut.second(), sort, into);
            }
        }
    }
}
