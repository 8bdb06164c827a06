package org.tallywright.cutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Few sheets of one size for many blocks: lays them in every simple order first, then takes a badly filled sheet and one to
 * three others apart again and again and keeps what fills them less evenly, until a sheet is empty. A fixed seed and a
 * fixed amount of looking make the answer the same every time and on every machine.
 */
final class SheetSearch {
    private static final long SEED = 20_261_125L;
    private static final long MOST_LOOKS = 28_000_000L;
    private static final long LOOKS_A_BLOCK = 250_000L;
    private static final int MOST_BLOCKS = 1_500;
    /** Tries at a larger offcut once no sheet can be saved any more. */
    private static final int POLISH = 400;

    private static final double OFFCUT_WEIGHT = 1e-3;
    private static final Fit[] FITS = Fit.values();
    private static final Split[] SPLITS = Split.values();
    private static final SheetOrder[] ORDERS = SheetOrder.values();
    private static final Comparator<Keyed> LARGEST_FIRST =
            Comparator.comparingDouble((Keyed k) -> -k.key).thenComparingInt(k -> k.block.first());

    private record Keyed(double key, Block block) {}

    private final long length;
    private final long width;
    private final List<Block> blocks;
    private final int bound;
    private final SplittableRandom random = new SplittableRandom(SEED);
    private List<Filled> best = List.of();
    private List<Block> over = List.of();
    private long looks;

    SheetSearch(long length, long width, List<Block> blocks, int bound) {
        this.length = length;
        this.width = width;
        this.blocks = blocks;
        this.bound = bound;
    }

    List<Filled> sheets() {
        return best;
    }

    List<Block> over() {
        return over;
    }

    boolean isCoarse() {
        return blocks.size() > MOST_BLOCKS;
    }

    SheetSearch run() {
        for (SheetOrder order : SheetOrder.values()) {
            List<Block> sorted = blocks.stream().sorted(Block.bySize(order)).toList();
            for (Fit fit : Fit.values()) {
                for (Split split : Split.values()) {
                    SheetPacker packer = new SheetPacker(length, width, Integer.MAX_VALUE).pack(sorted, fit, split);
                    looks += packer.looks();
                    if (best.isEmpty() || isBetter(packer)) {
                        best = new ArrayList<>(packer.sheets());
                        over = packer.over();
                    }
                    if (isCoarse()) {
                        return this;
                    }
                }
            }
        }
        improve();
        return this;
    }

    private boolean isBetter(SheetPacker packer) {
        int sheets = packer.sheets().size();
        return sheets < best.size() || (sheets == best.size() && unevenness(packer.sheets()) > unevenness(best));
    }

    /** Fuller and emptier sheets before evenly filled ones; between equals the one with larger offcuts. */
    private static double unevenness(List<Filled> sheets) {
        double sum = 0;
        for (Filled sheet : sheets) {
            double share = sheet.used / sheet.area();
            sum += share * share;
            for (SheetNode free : sheet.free) {
                double left = (double) free.length * free.width / sheet.area();
                sum += OFFCUT_WEIGHT * left * left;
            }
        }
        return sum;
    }

    private void improve() {
        int polish = 0;
        long most = Math.min(MOST_LOOKS, LOOKS_A_BLOCK * blocks.size());
        while (looks < most && polish < POLISH) {
            polish += best.size() <= bound ? 1 : 0;
            looks += 50;
            if (best.size() < 2) {
                return;
            }
            List<Filled> some = some();
            List<Block> pool = new ArrayList<>();
            some.forEach(sheet -> pool.addAll(sheet.blocks));
            shuffle(pool);
            Fit fit = FITS[random.nextInt(FITS.length)];
            Split split = SPLITS[random.nextInt(SPLITS.length)];
            SheetPacker packer = new SheetPacker(length, width, some.size());
            boolean whole = packer.packAll(pool, fit, split);
            looks += packer.looks();
            if (whole && unevenness(packer.sheets()) >= unevenness(some)) {
                best.removeAll(some);
                best.addAll(packer.sheets());
            }
        }
    }

    /** The worst filled sheet more often than not, and one to three others. */
    private List<Filled> some() {
        List<Filled> rest = new ArrayList<>(best);
        List<Filled> some = new ArrayList<>();
        if (random.nextInt(10) < 7) {
            int worst = 0;
            for (int i = 1; i < rest.size(); i++) {
                worst = rest.get(i).used < rest.get(worst).used ? i : worst;
            }
            some.add(rest.remove(worst));
        }
        int wanted = some.size() + 1 + random.nextInt(3);
        while (some.size() < wanted && !rest.isEmpty()) {
            some.add(rest.remove(random.nextInt(rest.size())));
        }
        return some;
    }

    /** By a simple order with some noise on it, so that large parts still come early. */
    private void shuffle(List<Block> pool) {
        SheetOrder order = ORDERS[random.nextInt(ORDERS.length)];
        double noise = random.nextInt(4) * 0.25;
        List<Keyed> keyed = new ArrayList<>(pool.size());
        pool.forEach(block -> keyed.add(new Keyed(order.key(block) * (1 + noise * random.nextDouble()), block)));
        keyed.sort(LARGEST_FIRST);
        pool.clear();
        keyed.forEach(k -> pool.add(k.block));
    }
}
