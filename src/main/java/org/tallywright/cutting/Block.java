package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What is laid on a sheet as one rectangle: a part, or matching parts in a row. Sizes are larger by a kerf than the
 * wood, as those of the sheet are, so that packing need not think of the kerf.
 *
 * @param beside the parts lie side by side across the length, else end to end
 * @param turnable may lie the other way too
 */
record Block(long length, long width, boolean beside, boolean turnable, List<Member> members) {
    /** @param across the part's own length lies along the block's width */
    record Member(int part, long length, long width, boolean across) {}

    double area() {
        return (double) length * width;
    }

    /** Tells one block from another: the place of its first part in the list asked for. */
    int first() {
        return members.get(0).part();
    }

    static List<Block> of(List<SheetPart> parts, long kerf) {
        Map<Integer, List<Member>> matched = new TreeMap<>();
        List<Block> blocks = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            SheetPart part = parts.get(i);
            boolean across = part.grain() == Grain.ACROSS;
            long length = (across ? part.width() : part.length()) + kerf;
            long width = (across ? part.length() : part.width()) + kerf;
            Member member = new Member(i, length, width, across);
            if (part.match() == 0) {
                blocks.add(new Block(length, width, true, part.grain() == Grain.ANY, List.of(member)));
            } else {
                matched.computeIfAbsent(part.match(), m -> new ArrayList<>()).add(member);
            }
        }
        matched.values().forEach(members -> blocks.add(row(members, parts)));
        return blocks;
    }

    private static Block row(List<Member> members, List<SheetPart> parts) {
        long longest = members.stream().mapToLong(Member::length).max().orElseThrow();
        long widest = members.stream().mapToLong(Member::width).max().orElseThrow();
        boolean sameLength = members.stream().allMatch(m -> m.length == longest);
        boolean sameWidth = members.stream().allMatch(m -> m.width == widest);
        boolean turnable = members.stream().allMatch(m -> parts.get(m.part).grain() == Grain.ANY);
        boolean beside = sameLength || !sameWidth;
        long length =
                beside ? longest : members.stream().mapToLong(Member::length).sum();
        long width = beside ? members.stream().mapToLong(Member::width).sum() : widest;
        return new Block(length, width, beside, turnable, List.copyOf(members));
    }

    /** The largest first; ties in a fixed order. */
    static Comparator<Block> bySize(SheetOrder order) {
        return Comparator.comparingDouble((Block b) -> -order.key(b))
                .thenComparing(Block::length)
                .thenComparing(Block::width)
                .thenComparing(Block::first);
    }
}
