package org.tallywright.costing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tallywright.shared.Checks;

/** The split of a job's cost against published exercises, a worked example of the trade, and its own rule of adding up. */
class CostSplitTest {
    private static final BigDecimal ZERO = BigDecimal.ZERO;

    static List<Checks.Row> exercises() {
        return Checks.read("variances.csv");
    }

    /** Each exercise as a job of one task or one material. */
    @ParameterizedTest
    @MethodSource("exercises")
    void agreesWithPublishedExercises(Checks.Row row) {
        BigDecimal actual = row.number("actual");
        BigDecimal second = row.number("second");
        BigDecimal third = row.number("third");
        List<SplitLine> split = switch (row.text("check")) {
            case "rate" -> labour(actual, actual, third, actual.multiply(second));
            case "efficiency" -> labour(actual, second, third, actual.multiply(third));
            case "price" -> material(actual, actual, third, actual.multiply(second));
            case "quantity" -> material(actual, second, third, actual.multiply(third));
            default -> throw new IllegalStateException(row.toString());
        };
        Cause cause = switch (row.text("check")) {
            case "rate" -> Cause.RATE;
            case "efficiency" -> Cause.EFFICIENCY;
            case "price" -> Cause.MATERIAL_PRICE;
            default -> Cause.MATERIAL_YIELD;
        };
        assertThat(amount(split, cause)).isCloseTo(row.number("expected"), within(new BigDecimal("0.01")));
    }

    private static List<SplitLine> labour(BigDecimal hours, BigDecimal allowed, BigDecimal rate, BigDecimal labour) {
        TaskFigures task =
                task("done", minutes(allowed), "10", allowed.multiply(rate), "10", minutes(hours), 0, labour);
        CostSums planned = sums(minutes(allowed), allowed.multiply(rate), ZERO);
        return CostSplit.of(planned, sums(minutes(hours), labour, ZERO), List.of(task), ZERO, 0, List.of(), true);
    }

    private static List<SplitLine> material(BigDecimal used, BigDecimal allowed, BigDecimal price, BigDecimal cost) {
        MaterialFigures line = new MaterialFigures(
                null,
                "Oak",
                "bf",
                new MaterialFigures.Planned(BigDecimal.TEN, allowed, ZERO, allowed.multiply(price)),
                used,
                BigDecimal.TEN,
                cost);
        return CostSplit.of(
                sums(0, ZERO, allowed.multiply(price)), sums(0, ZERO, cost), List.of(), ZERO, 0, List.of(line), true);
    }

    private static int minutes(BigDecimal hours) {
        return hours.multiply(BigDecimal.valueOf(60)).intValueExact();
    }

    /**
     * A worked example with invented figures: 92 h at 69.72 and 2,340 of material sold for 10,700; it took
     * 109 h and 2,480. Left 620 = 5.8 % where 18.2 % were planned, earned 75.41 an hour where 90.87 were; 28 hours more than
     * planned would have emptied it.
     */
    @Test
    void saysWhatAnHourMoreTakes() {
        BigDecimal price = new BigDecimal("10700");
        CostSums planned = new CostSums(
                92 * 60, new BigDecimal("5209.04"), new BigDecimal("1205.20"), new BigDecimal("2340"), ZERO, price);
        CostSums actual = new CostSums(
                109 * 60, new BigDecimal("6171.58"), new BigDecimal("1427.90"), new BigDecimal("2480"), ZERO, price);
        assertThat(planned.marginPercent()).contains(new BigDecimal("18.2"));
        assertThat(actual.marginPercent()).contains(new BigDecimal("5.8"));
        assertThat(planned.earnedPerHour()).contains(new BigDecimal("90.87"));
        assertThat(actual.earnedPerHour()).contains(new BigDecimal("75.41"));
        Slack before = Slack.of(
                        planned,
                        sums(0, ZERO, ZERO, price),
                        List.of(task("planned", 92 * 60, "1", planned.labour(), null, 0, 0, ZERO)),
                        List.of(planned(new BigDecimal("2340"))),
                        false)
                .orElseThrow();
        assertThat(before.costOfHour()).isEqualByComparingTo("69.72");
        assertThat(before.minutes()).isBetween(27 * 60, 28 * 60);
        Slack after = Slack.of(planned, actual, List.of(), List.of(), true).orElseThrow();
        assertThat(after.left()).isEqualByComparingTo("620.52");
        assertThat(after.minutes()).isEqualTo(534);
    }

    @Test
    void countsATaskPastItsEstimateAsNothingLeftToDo() {
        TaskFigures over = task("started", 60, "1", new BigDecimal("44"), null, 90, 0, new BigDecimal("75"));
        TaskFigures under = task("started", 60, "1", new BigDecimal("44"), null, 20, 0, new BigDecimal("15"));
        assertThat(over.remainingMinutes()).isZero();
        assertThat(under.remainingMinutes()).isEqualTo(40);
    }

    @Test
    void doesNotJudgeATaskThatIsNotFinished() {
        TaskFigures open = task("started", 120, "1", new BigDecimal("88"), null, 60, 0, new BigDecimal("50"));
        List<SplitLine> split = CostSplit.of(
                sums(120, new BigDecimal("88"), ZERO),
                sums(60, new BigDecimal("50"), ZERO),
                List.of(open),
                ZERO,
                0,
                List.of(),
                false);
        assertThat(split).containsExactly(new SplitLine(Cause.OPEN_TASKS, new BigDecimal("-38.00"), -60));
    }

    @Test
    void leavesMaterialOpenUntilTheNetIsSaidOrTheJobCloses() {
        MaterialFigures silent = planned(new BigDecimal("500"));
        CostSums planned = sums(0, ZERO, new BigDecimal("500"));
        CostSums nothing = sums(0, ZERO, ZERO);
        assertThat(CostSplit.of(planned, nothing, List.of(), ZERO, 0, List.of(silent), false))
                .extracting(SplitLine::cause)
                .containsExactly(Cause.OPEN_MATERIAL);
        assertThat(CostSplit.of(planned, nothing, List.of(), ZERO, 0, List.of(silent), true))
                .extracting(SplitLine::cause)
                .containsExactly(Cause.MATERIAL_USAGE);
    }

    @Test
    void tellsWhatTheBidHeldBeyondItsLines() {
        TaskFigures done = task("done", 120, "1", new BigDecimal("88"), "1", 150, 0, new BigDecimal("110"));
        List<SplitLine> split = CostSplit.of(
                sums(165, new BigDecimal("121"), ZERO),
                sums(150, new BigDecimal("110"), ZERO),
                List.of(done),
                ZERO,
                0,
                List.of(),
                true);
        assertThat(split)
                .containsExactly(
                        new SplitLine(Cause.EFFICIENCY, new BigDecimal("22.00"), 30),
                        new SplitLine(Cause.BEYOND_LINES, new BigDecimal("-33.00"), -45));
    }

    /** A few hundred made-up jobs with awkward figures: the lines add up to the difference to the cent, always. */
    @Test
    void addsUpWhateverTheFigures() {
        Random random = new Random(20261125);
        for (int job = 0; job < 300; job++) {
            List<TaskFigures> tasks = new ArrayList<>();
            List<MaterialFigures> materials = new ArrayList<>();
            BigDecimal labour = ZERO;
            BigDecimal plannedLabour = ZERO;
            BigDecimal material = ZERO;
            BigDecimal plannedMaterial = ZERO;
            for (int i = random.nextInt(6); i > 0; i--) {
                TaskFigures task = anyTask(random);
                tasks.add(task);
                labour = labour.add(task.labour());
                TaskFigures.Planned plan = task.planned();
                plannedLabour = plannedLabour.add(plan == null || plan.labour() == null ? ZERO : plan.labour());
                MaterialFigures line = anyMaterial(random);
                materials.add(line);
                material = material.add(line.cost());
                MaterialFigures.Planned bought = line.planned();
                plannedMaterial = plannedMaterial.add(bought == null ? ZERO : bought.amount());
            }
            CostSums planned = sums(0, plannedLabour.setScale(2, RoundingMode.HALF_EVEN), plannedMaterial);
            CostSums actual = sums(0, labour, material);
            boolean closed = random.nextBoolean();
            List<SplitLine> split = CostSplit.of(planned, actual, tasks, ZERO, 0, materials, closed);
            sharesAddUp(split, CostSplit.shares(tasks, materials, closed));
            BigDecimal sum = split.stream().map(SplitLine::amount).reduce(ZERO, BigDecimal::add);
            assertThat(sum).isEqualByComparingTo(actual.cost().subtract(planned.cost()));
            assertThat(split)
                    .allSatisfy(line -> assertThat(line.amount().scale()).isLessThanOrEqualTo(2));
            assertThat(amount(split, Cause.ROUNDING).abs()).isLessThanOrEqualTo(new BigDecimal("0.06"));
        }
    }

    /** What the tasks and materials add to a cause is its line, to the cent and the minute. */
    private static void sharesAddUp(List<SplitLine> split, List<SplitShare> shares) {
        for (SplitLine line : split) {
            if (line.cause() == Cause.ROUNDING || line.cause() == Cause.BEYOND_LINES) {
                continue;
            }
            List<SplitShare> own =
                    shares.stream().filter(s -> s.cause() == line.cause()).toList();
            assertThat(own.stream().map(SplitShare::amount).reduce(ZERO, BigDecimal::add))
                    .as("%s", line)
                    .isEqualByComparingTo(line.amount());
            Integer minutes = line.minutes();
            if (minutes != null) {
                assertThat(own.stream()
                                .map(SplitShare::minutes)
                                .mapToInt(m -> m == null ? 0 : m)
                                .sum())
                        .as("%s", line)
                        .isEqualTo(minutes);
            }
        }
    }

    private static TaskFigures anyTask(Random random) {
        int planned = random.nextInt(600);
        BigDecimal labour = BigDecimal.valueOf(planned)
                .multiply(new BigDecimal("43.33"))
                .divide(BigDecimal.valueOf(60), MathContext.DECIMAL128);
        String[] states = {"planned", "started", "done", "dropped"};
        String state = states[random.nextInt(states.length)];
        String done = state.equals("dropped") ? "0" : random.nextBoolean() ? "" + random.nextInt(50) : null;
        BigDecimal cost = BigDecimal.valueOf(random.nextInt(100000), 2);
        return task(
                state, planned, "" + random.nextInt(40), labour, done, random.nextInt(900), random.nextInt(60), cost);
    }

    private static MaterialFigures anyMaterial(Random random) {
        BigDecimal quantity = BigDecimal.valueOf(1 + random.nextInt(999), 1);
        BigDecimal freight = BigDecimal.valueOf(random.nextInt(5000), 2);
        BigDecimal amount = quantity.multiply(BigDecimal.valueOf(random.nextInt(2000), 2))
                .setScale(2, RoundingMode.HALF_EVEN)
                .add(freight);
        MaterialFigures.Planned plan =
                new MaterialFigures.Planned(BigDecimal.valueOf(1 + random.nextInt(99)), quantity, freight, amount);
        return new MaterialFigures(
                null,
                "Oak",
                "bf",
                random.nextInt(4) == 0 ? null : plan,
                BigDecimal.valueOf(random.nextInt(999), 1),
                random.nextBoolean() ? BigDecimal.valueOf(random.nextInt(99)) : null,
                BigDecimal.valueOf(random.nextInt(100000), 2));
    }

    private static MaterialFigures planned(BigDecimal amount) {
        return new MaterialFigures(
                null,
                "Oak",
                "bf",
                new MaterialFigures.Planned(new BigDecimal("30"), new BigDecimal("50"), ZERO, amount),
                ZERO,
                null,
                ZERO);
    }

    private static TaskFigures task(
            String state,
            int planned,
            String quantity,
            BigDecimal plannedLabour,
            @Nullable String done,
            int rateMinutes,
            int otherMinutes,
            BigDecimal labour) {
        return new TaskFigures(
                UUID.randomUUID(),
                "Rip hardwood",
                "",
                "Mill",
                "lf",
                state,
                new TaskFigures.Planned(planned, new BigDecimal(quantity), plannedLabour),
                done == null ? null : new BigDecimal(done),
                true,
                rateMinutes,
                otherMinutes,
                labour);
    }

    private static CostSums sums(int minutes, BigDecimal labour, BigDecimal material) {
        return sums(minutes, labour, material, null);
    }

    private static CostSums sums(int minutes, BigDecimal labour, BigDecimal material, @Nullable BigDecimal price) {
        return new CostSums(minutes, labour, ZERO, material, ZERO, price);
    }

    private static BigDecimal amount(List<SplitLine> split, Cause cause) {
        return split.stream()
                .filter(line -> line.cause() == cause)
                .map(SplitLine::amount)
                .findFirst()
                .orElse(ZERO);
    }
}
