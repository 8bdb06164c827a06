package org.tallywright.daylog.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.tallywright.daylog.DayReads;
import org.tallywright.daylog.LikelyTask.Why;
import org.tallywright.daylog.MorningReads;
import org.tallywright.shared.Length;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.ShopConventions;
import org.tallywright.web.Access;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** What one has to know in the morning: where, what, how big, what is curing, what to beware of. */
@Controller
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class MorningController {
    /** Of what is likely, what belongs on the list of the day; the rest is only offered for logging. */
    private static final Set<Why> TODAY = EnumSet.of(Why.PLANNED, Why.LAST_DAY, Why.READY, Why.LEFT_OVER, Why.YOURS);

    private final DayReads days;
    private final MorningReads reads;
    private final ShopConventions conventions;
    private final ShopClock clock;

    MorningController(DayReads days, MorningReads reads, ShopConventions conventions, ShopClock clock) {
        this.days = days;
        this.reads = reads;
        this.conventions = conventions;
        this.clock = clock;
    }

    @GetMapping("/morning")
    String show(SignedIn me, Model model) {
        LocalDate today = clock.today();
        Map<UUID, String> why = days.likely(me.personId(), today).stream()
                .filter(task ->
                        TODAY.contains(task.why()) && task.place().target().taskId() != null)
                .collect(Collectors.toMap(
                        task -> Objects.requireNonNull(task.place().target().taskId()),
                        task -> task.why() == Why.PLANNED ? "" : DayWords.why(task, today)));
        List<MorningReads.Task> tasks = reads.tasks(why.keySet());
        Map<String, List<MorningReads.Task>> byJob = tasks.stream()
                .collect(Collectors.groupingBy(MorningReads.Task::number, LinkedHashMap::new, Collectors.toList()));
        List<MorningPage.Job> jobs =
                byJob.values().stream().map(all -> job(all, why)).toList();
        model.addAttribute("page", new MorningPage(DayWords.day(today), jobs, cures(tasks), cautions(tasks), "/"));
        return "daylog/morning";
    }

    private MorningPage.Job job(List<MorningReads.Task> tasks, Map<UUID, String> why) {
        MorningReads.Task first = tasks.get(0);
        String conditions = Stream.of(first.occupied() ? "lived in" : "", first.stairs() ? "stairs" : "")
                .filter(word -> !word.isEmpty())
                .collect(Collectors.joining(", "));
        return new MorningPage.Job(
                first.number(),
                first.title(),
                first.address(),
                first.accessNote(),
                conditions,
                tasks.stream().anyMatch(task -> task.place().equals("site")),
                tasks.stream()
                        .map(task -> task(task, why.getOrDefault(task.id(), "")))
                        .toList());
    }

    private MorningPage.Task task(MorningReads.Task task, String why) {
        Integer count = task.count();
        String piece = task.piece() == null
                ? ""
                : task.piece() + (count == null || count == 1 ? "" : " (" + count + " of them)");
        return new MorningPage.Task(
                task.name(),
                "/jobs/" + task.number() + "/tasks/" + task.id(),
                task.quantity().stripTrailingZeros().toPlainString() + " " + task.unit() + " · " + task.stage(),
                piece,
                sizes(task),
                why);
    }

    private String sizes(MorningReads.Task task) {
        List<String> words = new ArrayList<>();
        size(words, "wide", task.width());
        size(words, "high", task.height());
        size(words, "deep", task.depth());
        return String.join(" × ", words);
    }

    private void size(List<String> words, String way, @Nullable Long units) {
        if (units != null) {
            words.add(new Length(units).format(conventions.units()) + " " + way);
        }
    }

    private List<MorningPage.Cure> cures(List<MorningReads.Task> tasks) {
        ZonedDateTime now = clock.wallTime();
        Instant at = now.toInstant();
        return reads
                .curing(tasks.stream().map(MorningReads.Task::jobId).distinct().toList(), at)
                .stream()
                .map(cure -> new MorningPage.Cure(cure.name(), cure.what(), DayWords.until(cure.until(), now)))
                .toList();
    }

    private static List<MorningPage.Caution> cautions(List<MorningReads.Task> tasks) {
        return tasks.stream()
                .filter(task -> !task.caution().isEmpty())
                .map(task -> new MorningPage.Caution(task.caution(), task.cautionSource()))
                .distinct()
                .toList();
    }
}
