package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Lays parts out on sheets by cuts from edge to edge, for a panel or track saw: kerf between neighbours, a trim all round,
 * grain kept, matching parts together. Offcuts in the shop are filled before a sheet is bought.
 *
 * <p>Method: guillotine packing into free rectangles from many orders, improved by taking sheets apart and laying them out
 * anew ({@link SheetSearch}); offcuts by {@link OffcutFill}, exactly where few sizes fit.
 */
public final class SheetPlanner {
    private SheetPlanner() {}

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
        long length = bought.length() - 2 * trim + kerf;
        long width = bought.width() - 2 * trim + kerf;
        List<Block> all = Block.of(parts, kerf, length, width);
        List<Block> blocks = new ArrayList<>(all);
        List<SheetPlan.Sheet> sheets = new ArrayList<>();
        List<Integer> smallFirst = IntStream.range(0, owned.size())
                .boxed()
                .sorted(Comparator.comparingDouble(
                        i -> (double) owned.get(i).length() * owned.get(i).width()))
                .toList();
        for (int i : smallFirst) {
            Filled filled = filled(owned.get(i), blocks, kerf, trim);
            if (filled != null) {
                sheets.add(new SheetPlan.Sheet(owned.get(i), i, filled.root.region(kerf, trim)));
                takeOut(blocks, filled.blocks);
            }
        }
        int bound = areaBound(parts, blocks, bought, trim);
        int least = Math.max(bound, boundWithKerf(blocks, length, width));
        SheetSearch search = new SheetSearch(length, width, blocks, least).run();
        search.sheets().stream()
                .sorted(Comparator.comparingDouble(sheet -> -sheet.used))
                .forEach(sheet -> sheets.add(new SheetPlan.Sheet(bought, -1, sheet.root.region(kerf, trim))));
        List<Integer> unplaced = search.over().stream()
                .flatMap(block -> block.members().stream())
                .map(Block.Member::part)
                .sorted()
                .toList();
        List<SheetPlan.Parted> parted = parted(all, parts, new HashSet<>(unplaced));
        return new SheetPlan(sheets, unplaced, parted, bound, answer(search, least, unplaced));
    }

    private static Answer answer(SheetSearch search, int bound, List<Integer> unplaced) {
        if (search.isCoarse()) {
            return Answer.COARSE;
        }
        return search.sheets().size() <= bound && unplaced.isEmpty() ? Answer.PROVED : Answer.SEARCHED;
    }

    /** Net area of the parts over the area inside the trim, up to whole sheets. */
    private static int areaBound(List<SheetPart> parts, List<Block> blocks, SheetStock bought, long trim) {
        double area = 0;
        for (Block block : blocks) {
            for (Block.Member member : block.members()) {
                SheetPart part = parts.get(member.part());
                area += (double) part.length() * part.width();
            }
        }
        double usable = Math.max(0, (double) bought.length() - 2 * trim) * Math.max(0, bought.width() - 2 * trim);
        return usable == 0 ? 0 : (int) Math.ceil(area / usable - 1e-9);
    }

    /** The same with a kerf on every part and on the sheet, as they are laid: never less. */
    private static int boundWithKerf(List<Block> blocks, long length, long width) {
        double area = blocks.stream()
                .flatMap(block -> block.members().stream())
                .mapToDouble(member -> (double) member.length() * member.width())
                .sum();
        return length <= 0 || width <= 0 ? 0 : (int) Math.ceil(area / ((double) length * width) - 1e-9);
    }

    private static @org.jspecify.annotations.Nullable Filled filled(
            SheetStock sheet, List<Block> blocks, long kerf, long trim) {
        long length = sheet.length() - 2 * trim + kerf;
        long width = sheet.width() - 2 * trim + kerf;
        List<Block> fitting = blocks.stream()
                .filter(b -> b.fits(length, width))
                .toList();
        return fitting.isEmpty() ? null : OffcutFill.fullest(length, width, fitting);
    }

    private static List<SheetPlan.Parted> parted(List<Block> blocks, List<SheetPart> parts, Set<Integer> left) {
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
