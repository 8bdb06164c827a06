package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Matching parts as few blocks as a sheet allows: all side by side, else in rows of as many, else end to end; parts of one
 * width but of several lengths the other way about. Where no arrangement takes them all, as many as go from the first on
 * make a block, and the rest another.
 */
final class Matching {
    private final List<Block.Member> members;
    private final Set<Block.Member> turnable;
    private final long length;
    private final long width;

    /**
     * @param turnable those that may lie the other way too: a block does where all its members do
     * @param length of the sheet inside its trim, with a kerf added as in the members
     */
    Matching(List<Block.Member> members, Set<Block.Member> turnable, long length, long width) {
        this.members = members;
        this.turnable = turnable;
        this.length = length;
        this.width = width;
    }

    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        int from = 0;
        while (from < members.size()) {
            Block block = most(members.subList(from, members.size()));
            blocks.add(block);
            from += block.members().size();
        }
        return blocks;
    }

    /** The first arrangement of all, or else of most; one alone where not even that fits. */
    private Block most(List<Block.Member> wanted) {
        List<List<Block.Member>> best = List.of();
        int count = 0;
        boolean turns = turnable.containsAll(wanted);
        int widest = Math.max(1, Math.max(widest(wanted, width), turns ? widest(wanted, length) : 0));
        for (int n = 0; n < widest && count < wanted.size(); n++) {
            int inARow = endToEnd(wanted) ? n + 1 : widest - n;
            for (boolean turned : turns ? new boolean[] {false, true} : new boolean[] {false}) {
                List<List<Block.Member>> rows = evened(wanted, inARow, turned);
                int laid = rows.stream().mapToInt(List::size).sum();
                if (laid > count || (laid == count && rows.size() < best.size())) {
                    best = rows;
                    count = laid;
                }
            }
        }
        List<Block.Member> laid = count == 0 ? wanted.subList(0, 1) : wanted.subList(0, count);
        return Block.of(count == 0 ? List.of(List.copyOf(laid)) : best, turnable.containsAll(laid));
    }

    private static boolean endToEnd(List<Block.Member> wanted) {
        long longest = Block.longest(wanted);
        long widest = wanted.get(0).width();
        return wanted.stream().anyMatch(m -> m.length() != longest)
                && wanted.stream().allMatch(m -> m.width() == widest);
    }

    private static int widest(List<Block.Member> wanted, long across) {
        long taken = 0;
        int count = 0;
        while (count < wanted.size() && taken + wanted.get(count).width() <= across) {
            taken += wanted.get(count++).width();
        }
        return count;
    }

    /** 3 and 3 rather than 4 and 2. */
    private List<List<Block.Member>> evened(List<Block.Member> wanted, int inARow, boolean turned) {
        List<List<Block.Member>> rows = rows(wanted, inARow, turned);
        int laid = rows.stream().mapToInt(List::size).sum();
        if (rows.size() < 2) {
            return rows;
        }
        List<List<Block.Member>> even = rows(wanted.subList(0, laid), (laid + rows.size() - 1) / rows.size(), turned);
        return even.stream().mapToInt(List::size).sum() == laid ? even : rows;
    }

    private List<List<Block.Member>> rows(List<Block.Member> wanted, int inARow, boolean turned) {
        long along = turned ? width : length;
        long across = turned ? length : width;
        List<List<Block.Member>> rows = new ArrayList<>();
        int from = 0;
        while (from < wanted.size()) {
            int most = Math.min(inARow, widest(wanted.subList(from, wanted.size()), across));
            List<Block.Member> row = wanted.subList(from, Math.min(wanted.size(), from + most));
            // Of a row too long a shorter beginning may still go in.
            long room = along;
            int fitting = (int) IntStream.range(0, row.size())
                    .takeWhile(n -> row.get(n).length() <= room)
                    .count();
            if (fitting == 0) {
                break;
            }
            rows.add(List.copyOf(row.subList(0, fitting)));
            along -= Block.longest(row.subList(0, fitting));
            from += fitting;
        }
        return rows;
    }
}
