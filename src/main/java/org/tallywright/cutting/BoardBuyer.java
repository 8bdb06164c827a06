package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * How much random-width lumber a list of parts takes. Draws lots of boards from a fixed seed, cuts the parts from them
 * board by board, the best of three off the pile, and reads the need from the spread of the tries: what a rule of thumb calls
 * waste follows from the sizes.
 *
 * <p>A part wider than a middling board is glued up from equal staves, each larger by {@link BoardRules#roughWidth}.
 */
public final class BoardBuyer {
    private static final long SEED = 20_261_125L;
    private static final int TRIES = 25;
    private static final int TRIES_OF_MANY = 3;
    private static final int MANY = 800;
    private static final int FEW = 150;
    private static final SheetOrder[] ONE_ORDER = {SheetOrder.LENGTH};
    /** Off the pile he takes the one of so many boards that the parts use best. */
    private static final int PICKED_FROM = 3;

    private static final int MOST_MISSES = 400;

    private BoardBuyer() {}

    public static BoardNeed need(List<BoardPart> parts, BoardRules rules) {
        List<Integer> staves = new ArrayList<>();
        List<Integer> unplaced = new ArrayList<>();
        List<SheetPart> blanks = new ArrayList<>();
        long net = 0;
        for (int i = 0; i < parts.size(); i++) {
            BoardPart part = parts.get(i);
            net = Math.addExact(net, Math.multiplyExact(part.length(), part.width()));
            int count = staves(part, rules);
            staves.add(count);
            SheetPart blank = blank(part, count, rules);
            if (count < 0 || blank.length() > clear(rules.longest(), rules)) {
                unplaced.add(i);
            } else {
                for (int n = 0; n < count; n++) {
                    blanks.add(blank);
                }
            }
        }
        int tries = blanks.size() > MANY ? TRIES_OF_MANY : TRIES;
        List<Lot> lots = new ArrayList<>();
        for (int t = 0; t < tries; t++) {
            lots.add(lot(blanks, rules, new SplittableRandom(SEED + t)));
        }
        lots.sort((a, b) -> Long.compare(a.area, b.area));
        Lot middling = lots.get(tries / 2);
        Lot safe = lots.get((int) Math.ceil(tries * 0.8) - 1);
        return new BoardNeed(net, middling.area, safe.area, tries, middling.boards, staves, unplaced);
    }

    private record Lot(long area, int boards) {}

    /** Equal widths that a middling board gives; -1 where even a very narrow one does not fit. */
    private static int staves(BoardPart part, BoardRules rules) {
        long room = rules.middlingWidth() - rules.roughWidth();
        return room <= 0 ? -1 : (int) Math.max(1, (part.width() + room - 1) / room);
    }

    private static SheetPart blank(BoardPart part, int count, BoardRules rules) {
        int staves = Math.max(1, count);
        long width = (part.width() + staves - 1) / staves + rules.roughWidth();
        return new SheetPart(part.length() + rules.roughLength(), width, Grain.ALONG, 0);
    }

    private static long clear(long length, BoardRules rules) {
        return (long) Math.floor((length - 2 * rules.endTrim()) * (1 - rules.defects()));
    }

    private static Lot lot(List<SheetPart> blanks, BoardRules rules, SplittableRandom random) {
        List<Block> wanted = new ArrayList<>(Block.of(blanks, rules.kerf()));
        wanted.sort(Block.bySize(SheetOrder.LENGTH));
        long area = 0;
        int boards = 0;
        int misses = 0;
        while (!wanted.isEmpty() && misses < MOST_MISSES) {
            Filled board = null;
            long taken = 0;
            for (int pick = 0; pick < PICKED_FROM; pick++) {
                long length = random.nextLong(rules.shortest(), rules.longest() + 1);
                long width = random.nextLong(rules.narrowest(), rules.widest() + 1);
                Filled one = filled(
                        clear(length, rules) + rules.kerf(), width - 2 * rules.edgeLoss() + rules.kerf(), wanted);
                if (board == null || one.used * taken > board.used * (length * width)) {
                    board = one;
                    taken = length * width;
                }
            }
            if (board == null || board.blocks.isEmpty()) {
                misses++;
            } else {
                misses = 0;
                boards++;
                area += taken;
                takeOut(wanted, board);
            }
        }
        // What only the longest and widest board takes, and chance did not bring one.
        area += wanted.size() * rules.longest() * rules.widest();
        return new Lot(area, boards + wanted.size());
    }

    private static Filled filled(long length, long width, List<Block> wanted) {
        Filled best = new Filled(length, width);
        if (length <= 0 || width <= 0) {
            return best;
        }
        for (SheetOrder order : wanted.size() > FEW ? ONE_ORDER : SheetOrder.values()) {
            List<Block> sorted = wanted.stream().sorted(Block.bySize(order)).toList();
            for (Split split : new Split[] {Split.RIP, Split.CROSSCUT, Split.LARGEST_LEFT}) {
                SheetPacker packer = new SheetPacker(length, width, 1).pack(sorted, Fit.SHORT_SIDE, split);
                for (Filled sheet : packer.sheets()) {
                    best = sheet.used > best.used ? sheet : best;
                }
            }
        }
        return best;
    }

    private static void takeOut(List<Block> wanted, Filled board) {
        Set<Integer> gone = new HashSet<>();
        board.blocks.forEach(block -> gone.add(block.first()));
        wanted.removeIf(block -> gone.contains(block.first()));
    }
}
