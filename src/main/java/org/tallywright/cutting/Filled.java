package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.List;

/** A sheet being filled: its tree, its free rectangles and the blocks on it. */
final class Filled {
    final SheetNode root;
    final List<SheetNode> free = new ArrayList<>();
    final List<Block> blocks = new ArrayList<>();
    double used;

    Filled(long length, long width) {
        root = new SheetNode(0, 0, length, width);
        free.add(root);
    }

    double area() {
        return (double) root.length * root.width;
    }

    /** Puts the block into the corner of a free rectangle and cuts it free. */
    void lay(Block block, int at, boolean turned, Split split) {
        SheetNode node = free.remove(at);
        long length = turned ? block.width() : block.length();
        long width = turned ? block.length() : block.width();
        boolean ripFirst = split.ripFirst(node, length, width);
        SheetNode corner = node;
        for (int pass = 0; pass < 2; pass++) {
            boolean rip = ripFirst == (pass == 0);
            if (rip ? corner.width > width : corner.length > length) {
                SheetNode parent = corner;
                corner = parent.cut(rip, rip ? width : length);
                if (parent.second != null) {
                    free.add(parent.second);
                }
            }
        }
        corner.block = block;
        corner.turned = turned;
        blocks.add(block);
        used += block.area();
    }
}
