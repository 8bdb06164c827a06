package org.tallywright.cutting;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** As much area as possible on one sheet or offcut: the best of every simple order, or exactly where few sizes fit. */
final class OffcutFill {
    private static final int MOST_NODES = 3_000;

    private OffcutFill() {}

    static Filled fullest(long length, long width, List<Block> blocks) {
        Filled best = new Filled(length, width);
        for (SheetOrder order : SheetOrder.values()) {
            List<Block> sorted = blocks.stream().sorted(Block.bySize(order)).toList();
            for (Fit fit : Fit.values()) {
                for (Split split : Split.values()) {
                    SheetPacker packer = new SheetPacker(length, width, 1).pack(sorted, fit, split);
                    for (Filled sheet : packer.sheets()) {
                        best = sheet.used > best.used ? sheet : best;
                    }
                }
            }
        }
        return best.blocks.size() == blocks.size() ? best : better(length, width, blocks, best);
    }

    private record Size(long length, long width, boolean turnable) {}

    private static Filled better(long length, long width, List<Block> blocks, Filled greedy) {
        Map<Size, Deque<Block>> bySize = new LinkedHashMap<>();
        for (Block block : blocks) {
            bySize.computeIfAbsent(new Size(block.length(), block.width(), block.turnable()), s -> new ArrayDeque<>())
                    .add(block);
        }
        List<ValuedPart> parts = new ArrayList<>();
        bySize.forEach((size, same) -> parts.add(new ValuedPart(
                size.length, size.width, same.size(), (double) size.length * size.width, size.turnable)));
        OneSheet.Best best = OneSheet.best(length, width, parts, MOST_NODES);
        OneSheet.Built built = best.built();
        if (built == null || best.value() <= greedy.used) {
            return greedy;
        }
        Filled filled = new Filled(length, width);
        filled.free.clear();
        lay(filled, filled.root, built, List.copyOf(bySize.values()));
        return filled;
    }

    private static void lay(Filled filled, SheetNode at, OneSheet.Built built, List<Deque<Block>> bySize) {
        OneSheet.Built first = built.first();
        OneSheet.Built second = built.second();
        if (first != null && second != null) {
            SheetNode near = at.cut(built.rip(), built.rip() ? first.width() : first.length());
            lay(filled, near, first, bySize);
            if (at.second != null) {
                lay(filled, at.second, second, bySize);
            }
            return;
        }
        SheetNode corner = at;
        if (corner.width > built.width()) {
            corner = corner.cut(true, built.width());
        }
        if (corner.length > built.length()) {
            corner = corner.cut(false, built.length());
        }
        Block block = bySize.get(built.part()).remove();
        corner.block = block;
        corner.turned = built.turned();
        filled.blocks.add(block);
        filled.used += block.area();
    }
}
