package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Lays parts out on sheets by cuts from edge to edge, for a panel or track saw: kerf between neighbours, a trim all round,
 * grain kept, matching parts together. Offcuts in the shop are filled before a sheet is bought, the small ones first, and
 * where a sheet is bought all the same the large ones first as well.
 *
 * <p>Method: guillotine packing into free rectangles from many orders, improved by taking sheets apart and laying them out
 * anew ({@link SheetSearch}); offcuts by {@link OffcutFill}, exactly where few sizes fit.
 */
public final class SheetPlanner {
    private final SheetStock bought;
    private final List<SheetStock> owned;
    private final List<SheetPart> parts;
    private final long kerf;
    private final long trim;
    private final long length;
    private final long width;
    private final List<Block> blocks;

    private SheetPlanner(SheetStock bought, List<SheetStock> owned, List<SheetPart> parts, long kerf, long trim) {
        this.bought = bought;
        this.owned = owned;
        this.parts = parts;
        this.kerf = kerf;
        this.trim = trim;
        this.length = room(bought.length());
        this.width = room(bought.width());
        this.blocks = Block.of(parts, kerf, length, width);
    }

    /**
     * @param owned sheets and offcuts in the shop, each once
     * @param kerf width of the saw cut, 0 or more
     * @param trim taken off every edge of a sheet, its cut included, 0 or more
     */
    public static SheetPlan plan(
            SheetStock bought, List<SheetStock> owned, List<SheetPart> parts, long kerf, long trim) {
        if (kerf < 0 || trim < 0) {
            throw new IllegalArgumentException("kerf and trim are 0 or more");
        }
        return new SheetPlanner(bought, owned, parts, kerf, trim).plan();
    }

    /** Inside the trim, with the kerf in it as in the blocks. */
    private long room(long size) {
        return size - 2 * trim + kerf;
    }

    private record Laid(List<SheetPlan.Sheet> sheets, SheetSearch search) {
        int bought() {
            return search.sheets().size();
        }
    }

    private SheetPlan plan() {
        List<Integer> smallFirst = IntStream.range(0, owned.size())
                .boxed()
                .sorted(Comparator.comparingDouble(
                        i -> (double) owned.get(i).length() * owned.get(i).width()))
                .toList();
        Laid laid = laid(smallFirst);
        if (laid.bought() > 0 && smallFirst.size() > 1 && !laid.search.isCoarse()) {
            List<Integer> largeFirst = new ArrayList<>(smallFirst);
            Collections.reverse(largeFirst);
            Laid other = laid(largeFirst);
            laid = Comparator.comparingInt((Laid l) -> l.search.over().size())
                                    .thenComparingInt(Laid::bought)
                                    .compare(other, laid)
                            < 0
                    ? other
                    : laid;
        }
        return plan(laid);
    }

    private SheetPlan plan(Laid laid) {
        List<Integer> unplaced = laid.search.over().stream()
                .flatMap(block -> block.members().stream())
                .map(Block.Member::part)
                .sorted()
                .toList();
        Set<Integer> left = new HashSet<>(unplaced);
        List<Block.Member> placed = blocks.stream()
                .flatMap(block -> block.members().stream())
                .filter(member -> !left.contains(member.part()))
                .toList();
        int bound = areaBound(placed, owned, 0);
        // With a kerf on every part and on the sheet, as they are laid: never less.
        int least = Math.max(bound, areaBound(placed, owned, kerf));
        return new SheetPlan(laid.sheets, unplaced, parted(left), bound, answer(laid, least));
    }

    private Laid laid(List<Integer> order) {
        List<Block> rest = new ArrayList<>(blocks);
        List<SheetPlan.Sheet> sheets = new ArrayList<>();
        for (int i : order) {
            SheetStock sheet = owned.get(i);
            List<Block> fitting = rest.stream().filter(b -> fits(b, sheet)).toList();
            if (!fitting.isEmpty()) {
                Filled filled = OffcutFill.fullest(room(sheet.length()), room(sheet.width()), fitting);
                sheets.add(new SheetPlan.Sheet(sheet, i, filled.root.region(kerf, trim)));
                takeOut(rest, filled.blocks);
            }
        }
        int least = areaBound(rest.stream().flatMap(b -> b.members().stream()).toList(), List.of(), kerf);
        SheetSearch search = new SheetSearch(length, width, rest, least).run();
        search.sheets().stream()
                .sorted(Comparator.comparingDouble(sheet -> -sheet.used))
                .forEach(sheet -> sheets.add(new SheetPlan.Sheet(bought, -1, sheet.root.region(kerf, trim))));
        return new Laid(sheets, search);
    }

    private boolean fits(Block block, SheetStock sheet) {
        return block.fits(room(sheet.length()), room(sheet.width()));
    }

    private static Answer answer(Laid laid, int least) {
        if (laid.search.isCoarse()) {
            return Answer.COARSE;
        }
        return laid.bought() <= least && laid.search.over().isEmpty() ? Answer.PROVED : Answer.SEARCHED;
    }

    /**
     * Area of the parts less what offcuts could hold of it whatever was laid on them, over the area inside the trim, up to
     * whole sheets. An offcut could hold its own area of the parts that fit into it, all of them no more than those that fit.
     *
     * @param with added to the sizes of parts and sheets alike
     */
    private int areaBound(Collection<Block.Member> members, List<SheetStock> offcuts, long with) {
        double all = 0;
        double fitting = 0;
        double[] held = new double[offcuts.size()];
        for (Block.Member member : members) {
            SheetPart part = parts.get(member.part());
            double area = (double) (part.length() + with) * (part.width() + with);
            Block alone = Block.of(List.of(List.of(member)), part.grain() == Grain.ANY);
            boolean fits = false;
            for (int i = 0; i < held.length; i++) {
                boolean here = fits(alone, offcuts.get(i));
                held[i] += here ? area : 0;
                fits |= here;
            }
            all += area;
            fitting += fits ? area : 0;
        }
        double most = 0;
        for (int i = 0; i < held.length; i++) {
            most += Math.min(held[i], usable(offcuts.get(i), with));
        }
        double usable = usable(bought, with);
        return usable == 0 ? 0 : (int) Math.max(0, Math.ceil((all - Math.min(most, fitting)) / usable - 1e-9));
    }

    private double usable(SheetStock sheet, long with) {
        return (double) Math.max(0, sheet.length() - 2 * trim + with) * Math.max(0, sheet.width() - 2 * trim + with);
    }

    private List<SheetPlan.Parted> parted(Set<Integer> left) {
        Map<Integer, Integer> runs = new TreeMap<>();
        for (Block block : blocks) {
            int match = parts.get(block.first()).match();
            if (match > 0 && !left.contains(block.first())) {
                runs.merge(match, 1, Integer::sum);
            }
        }
        return runs.entrySet().stream()
                .filter(match -> match.getValue() > 1)
                .map(match -> new SheetPlan.Parted(match.getKey(), match.getValue()))
                .toList();
    }

    private static void takeOut(List<Block> blocks, List<Block> laid) {
        Set<Integer> gone = new HashSet<>();
        laid.forEach(block -> gone.add(block.first()));
        blocks.removeIf(block -> gone.contains(block.first()));
    }
}
