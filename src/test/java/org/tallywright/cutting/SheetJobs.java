package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;

/**
 * The thirty jobs that the layout is measured on, made by rule so that anybody can make them again. In sixteenths of an inch:
 * sheets 96 x 48 in; job n (0 to 29) draws from {@code new SplittableRandom(1000 + n)} 120 parts, each first its length,
 * 16 x nextInt(12, 45) + nextInt(16), then its width, 16 x nextInt(6, 24) + nextInt(16), then whether its grain is kept,
 * nextInt(100) below the share. Kerf 2 for even n, else 3; trim 0 for n divisible by 3, else 4; share of parts with grain 0, 30,
 * 60, 100 for n mod 4 = 0, 1, 2, 3.
 */
public record SheetJobs(int number, long kerf, long trim, int grainShare, List<SheetPart> parts) {
    public static final SheetStock SHEET = new SheetStock(96 * 16, 48 * 16);
    private static final int PARTS = 120;
    private static final int JOBS = 30;
    private static final int[] SHARES = {0, 30, 60, 100};

    public static List<SheetJobs> all() {
        return Stream.iterate(0, n -> n + 1).limit(JOBS).map(SheetJobs::of).toList();
    }

    static SheetJobs of(int number) {
        SplittableRandom random = new SplittableRandom(1000 + number);
        int share = SHARES[number % SHARES.length];
        List<SheetPart> parts =
                Stream.generate(() -> part(random, share)).limit(PARTS).toList();
        return new SheetJobs(number, number % 2 == 0 ? 2 : 3, number % 3 == 0 ? 0 : 4, share, parts);
    }

    private static SheetPart part(SplittableRandom random, int share) {
        long length = 16L * random.nextInt(12, 45) + random.nextInt(16);
        long width = 16L * random.nextInt(6, 24) + random.nextInt(16);
        return new SheetPart(length, width, random.nextInt(100) < share ? Grain.ALONG : Grain.ANY, 0);
    }

    public SheetPlan plan() {
        return SheetPlanner.plan(SHEET, List.of(), parts, kerf, trim);
    }

    /** Walks the plan with the saw and fails where it is none, or leaves a part out. */
    public void check(SheetPlan plan) {
        SheetCheck.check(plan, SHEET, List.of(), parts, kerf, trim);
        assertThat(plan.unplaced()).isEmpty();
    }
}
