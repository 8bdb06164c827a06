package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.List;

/** Lays blocks one after the other into the best free rectangle; opens a sheet when none takes the block. */
final class SheetPacker {
    private final long length;
    private final long width;
    private final int most;
    private final List<Filled> sheets = new ArrayList<>();
    private final List<Block> over = new ArrayList<>();
    private long looks;

    /** @param most sheets that may be opened */
    SheetPacker(long length, long width, int most) {
        this.length = length;
        this.width = width;
        this.most = most;
    }

    List<Filled> sheets() {
        return sheets;
    }

    /** Blocks that found no place. */
    List<Block> over() {
        return over;
    }

    /** How many rectangles were looked at. */
    long looks() {
        return looks;
    }

    SheetPacker pack(List<Block> order, Fit fit, Split split) {
        for (Block block : order) {
            if (!lay(block, fit, split)) {
                over.add(block);
            }
        }
        return this;
    }

    /** As {@link #pack}, but gives up at the first block without a place. */
    boolean packAll(List<Block> order, Fit fit, Split split) {
        for (Block block : order) {
            if (!lay(block, fit, split)) {
                return false;
            }
        }
        return true;
    }

    private boolean lay(Block block, Fit fit, Split split) {
        Filled best = null;
        int bestAt = 0;
        boolean bestTurned = false;
        double least = Double.MAX_VALUE;
        for (Filled sheet : sheets) {
            if (sheet.area() - sheet.used < block.area()) {
                continue;
            }
            looks += sheet.free.size();
            for (int at = 0; at < sheet.free.size(); at++) {
                SheetNode node = sheet.free.get(at);
                if (block.length() <= node.length && block.width() <= node.width) {
                    double left = fit.left(node, block.length(), block.width());
                    if (left < least) {
                        least = left;
                        best = sheet;
                        bestAt = at;
                        bestTurned = false;
                    }
                }
                if (block.turnable() && block.width() <= node.length && block.length() <= node.width) {
                    double left = fit.left(node, block.width(), block.length());
                    if (left < least) {
                        least = left;
                        best = sheet;
                        bestAt = at;
                        bestTurned = true;
                    }
                }
            }
        }
        if (best == null) {
            boolean straight = block.length() <= length && block.width() <= width;
            boolean turned = block.turnable() && block.width() <= length && block.length() <= width;
            if (sheets.size() >= most || (!straight && !turned)) {
                return false;
            }
            best = new Filled(length, width);
            sheets.add(best);
            bestTurned = !straight
                    || (turned
                            && fit.left(best.root, block.width(), block.length())
                                    < fit.left(best.root, block.length(), block.width()));
        }
        best.lay(block, bestAt, bestTurned, split);
        return true;
    }
}
