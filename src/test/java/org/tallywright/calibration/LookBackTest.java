package org.tallywright.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.WorkerShare;

/** What was judged before is kept exactly as long as judging it again would say the same. */
class LookBackTest {
    private static final LocalDate FIRST = LocalDate.of(2024, 1, 1);
    private static final List<UUID> KINDS = List.of(new UUID(1, 1), new UUID(1, 2), new UUID(1, 3));

    /** Job n is accepted 20 days before it is closed, a week after the one before: three others are open meanwhile. */
    private static Past shop(int jobs, double lastTakes) {
        Random random = new Random(7);
        List<Observation> tasks = new ArrayList<>();
        List<PastJob> all = new ArrayList<>();
        for (int n = 0; n < jobs; n++) {
            LocalDate closed = FIRST.plusDays(7L * n);
            List<PastJob.Line> lines = new ArrayList<>();
            double hours = 0;
            for (int t = 0; t < 4; t++) {
                String kind = KINDS.get((n + t) % 3).toString();
                double estimate = 1 + random.nextInt(8);
                double actual = estimate * Math.exp(0.1 + 0.4 * random.nextGaussian());
                actual = n == jobs - 1 ? actual * lastTakes : actual;
                String key = "t" + n + "." + t;
                lines.add(new PastJob.Line(key, kind, estimate, 1.0, Set.of()));
                tasks.add(new Observation(
                        key,
                        "j" + n,
                        kind,
                        WorkerShare.alone("ada"),
                        estimate,
                        1,
                        actual,
                        closed.minusDays(1),
                        Set.of()));
                hours += actual;
            }
            all.add(new PastJob(
                    "j" + n,
                    "26-" + n,
                    "Job",
                    false,
                    closed.minusDays(20),
                    closed,
                    lines,
                    hours,
                    Map.of("rework", 1.0),
                    null,
                    null,
                    null,
                    List.of()));
        }
        return new Past(tasks, all, Map.of(), Map.of());
    }

    private static List<Judged> full(Past past) {
        return LookBack.record(past, Past.nothing(), List.of(), step -> {});
    }

    private static List<Judged> after(Past past, Past before) {
        return LookBack.record(past, before, full(before), step -> {});
    }

    @Test
    void knowsOnlyWhatWasClosedBefore() {
        assertThat(full(shop(8, 1))).extracting(Judged::knownJobs).containsExactly(0, 0, 0, 1, 2, 3, 4, 5);
    }

    @Test
    void oneMoreJobIsOneMoreJudgement() {
        Past before = shop(11, 1);
        Past now = shop(12, 1);
        Past same = now.of(job -> !job.key().equals("j11"));
        List<Judged> kept = full(same);
        List<Judged> record = LookBack.record(now, same, kept, step -> {});
        assertThat(record).isEqualTo(full(now)).hasSize(12);
        for (int n = 0; n < 11; n++) {
            assertThat(record.get(n)).isSameAs(kept.get(n));
        }
        assertThat(before.jobs()).hasSize(11);
    }

    @Test
    void aJobTakenOutOrPutBackChangesThoseThatKnewIt() {
        Past all = shop(12, 1);
        Past without = all.of(job -> !job.key().equals("j4"));
        assertThat(after(without, all)).isEqualTo(full(without)).isNotEqualTo(full(all));
        assertThat(after(all, without)).isEqualTo(full(all));
        List<Judged> kept = full(all);
        List<Judged> record = LookBack.record(without, all, kept, step -> {});
        assertThat(record.get(3)).isSameAs(kept.get(3));
        assertThat(record.get(10)).isNotSameAs(kept.get(11));
    }

    @Test
    void aJobWhoseHoursChangedIsJudgedAgain() {
        Past before = shop(12, 1);
        Past now = shop(12, 2);
        assertThat(after(now, before)).isEqualTo(full(now)).isNotEqualTo(full(before));
    }

    /** What the shop was on a day, measured against starting rates of 1 until then and of 2 since. */
    private static Past doubled(Past past, LocalDate day) {
        Map<UUID, Double> rates = new HashMap<>();
        Map<UUID, List<RateBefore>> before = new HashMap<>();
        for (UUID kind : KINDS) {
            rates.put(kind, 2.0);
            before.put(kind, List.of(new RateBefore(1, day)));
        }
        return new Past(
                past.tasks().stream().map(task -> task.rebased(2)).toList(),
                past.jobs().stream().map(LookBackTest::twiceTheEstimate).toList(),
                rates,
                before);
    }

    private static PastJob twiceTheEstimate(PastJob job) {
        return new PastJob(
                job.key(),
                job.number(),
                job.title(),
                job.imported(),
                job.knownBy(),
                job.closedOn(),
                job.lines().stream()
                        .map(line ->
                                new PastJob.Line(line.task(), line.kind(), 2 * line.estimate(), 2.0, line.conditions()))
                        .toList(),
                job.lineHours(),
                job.otherHours(),
                job.bidHours(),
                job.labourRate(),
                job.atBid(),
                job.atStages());
    }

    @Test
    void aJobIsJudgedByTheStartingRatesOfItsDay() {
        Past then = shop(12, 1);
        LocalDate day = then.jobs().get(8).knownBy();
        List<Judged> old = full(then);
        List<Judged> now = full(doubled(then, day));
        for (int n = 0; n < 12; n++) {
            boolean before = n <= 8;
            assertThat(now.get(n).estimate())
                    .as("job %d", n)
                    .isEqualTo(old.get(n).estimate() * (before ? 1 : 2));
            if (before) {
                assertThat(now.get(n).hours()).isEqualTo(old.get(n).hours());
            } else {
                assertThat(now.get(n).hours()).isNotEqualTo(old.get(n).hours());
            }
        }
        assertThat(after(doubled(then, day), then)).isEqualTo(now);
    }

    @Test
    void aTaskWhoseUnitWasChangedKeepsItsRate() {
        Past past = doubled(shop(3, 1), LocalDate.of(2030, 1, 1));
        Observation odd = past.tasks().get(0).rebased(3);
        Past with = new Past(List.of(odd), past.jobs(), past.rates(), past.ratesBefore());
        assertThat(with.before(LocalDate.of(2029, 1, 1)).tasks()).containsExactly(odd);
        assertThat(past.before(LocalDate.of(2029, 1, 1)).tasks().get(0).startingUnitHours())
                .isEqualTo(1);
    }

    /** Many jobs of few tasks: beyond a thousand tasks a fit serves for a while, and never knows what came later. */
    @Test
    void aLargeShopsFitsServeForAWhile() {
        Past large = shop(300, 1);
        List<Judged> record = full(large);
        assertThat(record).hasSize(300);
        for (int n = 0; n < 300; n++) {
            int known = Math.max(0, n - 2);
            assertThat(record.get(n).knownJobs()).isLessThanOrEqualTo(known);
            assertThat(record.get(n).knownTasks()).isGreaterThanOrEqualTo((int) (4 * known / 1.02) - 1);
        }
        assertThat(record.stream().skip(255).map(Judged::knownJobs).distinct().count())
                .isLessThan(20);
    }
}
