package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * What is laid on a sheet as one rectangle: a part, or matching parts in rows. Sizes are larger by a kerf than the wood, as
 * those of the sheet are, so that packing need not think of the kerf.
 *
 * @param turnable may lie the other way too
 * @param rows end to end along the length, their members side by side across it
 */
record Block(long length, long width, boolean turnable, List<List<Member>> rows) {
    /** @param across the part's own length lies along the block's width */
    record Member(int part, long length, long width, boolean across) {}

    static Block of(List<List<Member>> rows, boolean turnable) {
        long length = 0;
        long width = 0;
        for (List<Member> row : rows) {
            length += longest(row);
            width = Math.max(width, row.stream().mapToLong(Member::width).sum());
        }
        return new Block(length, width, turnable, rows);
    }

    static long longest(List<Member> row) {
        return row.stream().mapToLong(Member::length).max().orElseThrow();
    }

    List<Member> members() {
        return rows.stream().flatMap(List::stream).toList();
    }

    double area() {
        return (double) length * width;
    }

    /** Tells one block from another: the place of its first part in the list asked for. */
    int first() {
        return rows.get(0).get(0).part();
    }

    boolean fits(long roomLength, long roomWidth) {
        return (length <= roomLength && width <= roomWidth) || (turnable && width <= roomLength && length <= roomWidth);
    }

    /** For parts without matches, which no room arranges. */
    static List<Block> of(List<SheetPart> parts, long kerf) {
        return of(parts, kerf, Long.MAX_VALUE, Long.MAX_VALUE);
    }

    /** @param roomLength of a whole sheet, with the kerf in it as in the blocks: what matching parts are arranged for */
    static List<Block> of(List<SheetPart> parts, long kerf, long roomLength, long roomWidth) {
        Map<Integer, List<Member>> matched = new TreeMap<>();
        List<Block> blocks = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            SheetPart part = parts.get(i);
            boolean across = part.grain() == Grain.ACROSS;
            long length = (across ? part.width() : part.length()) + kerf;
            long width = (across ? part.length() : part.width()) + kerf;
            Member member = new Member(i, length, width, across);
            if (part.match() == 0) {
                blocks.add(of(List.of(List.of(member)), part.grain() == Grain.ANY));
            } else {
                matched.computeIfAbsent(part.match(), m -> new ArrayList<>()).add(member);
            }
        }
        matched.values().forEach(members -> {
            Set<Member> turnable = members.stream()
                    .filter(m -> parts.get(m.part).grain() == Grain.ANY)
                    .collect(Collectors.toSet());
            blocks.addAll(new Matching(members, turnable, roomLength, roomWidth).blocks());
        });
        return blocks;
    }

    /** The largest first; ties in a fixed order. */
    static Comparator<Block> bySize(SheetOrder order) {
        return Comparator.comparingDouble((Block b) -> -order.key(b))
                .thenComparing(Block::length)
                .thenComparing(Block::width)
                .thenComparing(Block::first);
    }
}
