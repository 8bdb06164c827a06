package org.tallywright.jobs.web;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobHead;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobPhotos;
import org.tallywright.jobs.JobState;
import org.tallywright.jobs.ShopDates;
import org.tallywright.jobs.TaskState;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;
import org.tallywright.web.Tag;

/** Puts a job's page together for one reader, from a fixed number of queries. */
@Component
class JobPages {
    private static final int NEXT = 6;
    private static final int EVENTS = 40;
    private static final int PHOTOS = 6;
    private static final Duration RECENT = Duration.ofDays(3);

    private final JobHeads heads;
    private final JobPageRows rows;
    private final WaitRows waits;
    private final EventRows events;
    private final ObjectProvider<JobPhotos> photos;
    private final Wording wording;
    private final ShopDates dates;
    private final ShopClock clock;

    JobPages(
            JobHeads heads,
            JobPageRows rows,
            WaitRows waits,
            EventRows events,
            ObjectProvider<JobPhotos> photos,
            Wording wording,
            ShopDates dates,
            ShopClock clock) {
        this.heads = heads;
        this.rows = rows;
        this.waits = waits;
        this.events = events;
        this.photos = photos;
        this.wording = wording;
        this.dates = dates;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public JobPage page(String number, SignedIn me) {
        JobHead head = heads.find(number, me, "job");
        UUID jobId = head.job().id();
        JobPageRows.JobRow job = rows.job(jobId);
        Map<UUID, JobPageRows.PieceRow> pieces = byId(rows.pieces(jobId), JobPageRows.PieceRow::id);
        List<JobPageRows.TaskRow> tasks = rows.tasks(jobId);
        JobPage.Rights may = rights(head, me);
        TaskLines lines = lines(jobId, pieces, tasks, head, me);
        List<JobPageRows.MeasureRow> measures = rows.measures(jobId);
        List<JobPageRows.TaskRow> next = next(tasks, me);
        return new JobPage(
                head,
                may,
                facts(job, me),
                may.seesHours() && !job.note().isEmpty() ? job.note() : null,
                next.stream().map(lines::of).toList(),
                (int) tasks.stream().filter(t -> t.state().isOpen()).count(),
                stages(head, tasks, lines, may),
                cautions(next),
                waits(jobId),
                pieces.values().stream().map(p -> piece(p, measures)).toList(),
                measures(measures, null),
                photos(jobId),
                rows.punchList(jobId).stream().map(this::punch).toList(),
                may.seesHours()
                        ? events.of(jobId, EVENTS).stream().map(this::event).toList()
                        : List.of(),
                head.hours().withoutTask() == 0
                        ? null
                        : Hours.ofMinutes(head.hours().withoutTask()).toString());
    }

    private JobPhotos.Shown photos(UUID jobId) {
        JobPhotos bean = photos.getIfAvailable();
        return bean == null ? JobPhotos.Shown.NOTHING : bean.of(jobId, PHOTOS);
    }

    private TaskLines lines(
            UUID jobId,
            Map<UUID, JobPageRows.PieceRow> pieces,
            List<JobPageRows.TaskRow> tasks,
            JobHead head,
            SignedIn me) {
        return new TaskLines(wording, dates, pieces, tasks, rows.before(jobId), head.hours(), me.seesEstimates());
    }

    /** One task of a job; nothing where the job has no such task. */
    @Transactional(readOnly = true)
    public TaskPage task(String number, UUID taskId, SignedIn me) {
        JobHead head = heads.find(number, me, "job");
        UUID jobId = head.job().id();
        List<JobPageRows.TaskRow> tasks = rows.tasks(jobId);
        JobPageRows.TaskRow task =
                tasks.stream().filter(t -> t.id().equals(taskId)).findFirst().orElseThrow(() -> new NotHere("task"));
        Map<UUID, JobPageRows.PieceRow> pieces = byId(rows.pieces(jobId), JobPageRows.PieceRow::id);
        List<JobPage.EventLine> events = me.seesEstimates()
                ? this.events.ofTask(jobId, taskId).stream().map(this::event).toList()
                : List.of();
        return new TaskPage(
                head,
                rights(head, me),
                lines(jobId, pieces, tasks, head, me).of(task),
                task,
                me.seesEstimates() ? Hours.ofMinutes(task.estimatedMinutes()).toString() : null,
                waits.ofTask(jobId, taskId).stream().map(this::wait).toList(),
                events);
    }

    static JobPage.Rights rights(JobHead head, SignedIn me) {
        boolean open = head.job().state() != JobState.CLOSED;
        boolean planner = me.is(Role.OWNER, Role.LEAD);
        return new JobPage.Rights(open && planner, open, true, planner, me.is(Role.OWNER), me.seesEstimates());
    }

    private static <T> Map<UUID, T> byId(Collection<T> rows, Function<T, UUID> id) {
        return rows.stream().collect(Collectors.toMap(id, r -> r, (a, b) -> a, LinkedHashMap::new));
    }

    private List<JobPage.Fact> facts(JobPageRows.JobRow job, SignedIn me) {
        List<JobPage.Fact> facts = new ArrayList<>();
        add(facts, "Access", job.accessNote());
        add(facts, "Telephone", job.phone());
        String conditions = conditions(job);
        if (!conditions.isEmpty()) {
            facts.add(new JobPage.Fact("At the site", conditions, me.seesEstimates() ? "/rates#conditions" : null));
        }
        add(facts, "Opened", dates.day(job.openedOn()));
        add(facts, "Accepted", job.acceptedOn() == null ? "" : dates.day(job.acceptedOn()));
        add(facts, "Closed", job.closedOn() == null ? "" : dates.day(job.closedOn()));
        return facts;
    }

    private static void add(List<JobPage.Fact> facts, String name, String value) {
        if (!value.isEmpty()) {
            facts.add(new JobPage.Fact(name, value, null));
        }
    }

    private static String conditions(JobPageRows.JobRow job) {
        List<String> known = new ArrayList<>();
        if (job.occupied()) {
            known.add("lived in");
        }
        if (job.outOfSquare()) {
            known.add("out of square");
        }
        if (job.stairs()) {
            known.add("stairs or lift");
        }
        return String.join(", ", known);
    }

    /** What is begun, then what is planned for a day, then the order of the stages; one's own before the others'. */
    private static List<JobPageRows.TaskRow> next(List<JobPageRows.TaskRow> tasks, SignedIn me) {
        return tasks.stream()
                .filter(t -> t.state().isOpen())
                .sorted(Comparator.comparing((JobPageRows.TaskRow t) -> t.state() != TaskState.STARTED)
                        .thenComparing(t -> !me.personId().equals(t.assignedTo()))
                        .thenComparing(JobPageRows.TaskRow::plannedOn, Comparator.nullsLast(Comparator.naturalOrder())))
                .limit(NEXT)
                .toList();
    }

    private List<JobPage.StageTasks> stages(
            JobHead head, List<JobPageRows.TaskRow> tasks, TaskLines lines, JobPage.Rights may) {
        Map<String, List<JobPage.TaskLine>> byStage = tasks.stream()
                .collect(Collectors.groupingBy(
                        JobPageRows.TaskRow::stage, Collectors.mapping(lines::of, Collectors.toList())));
        return head.stages().stream()
                .map(s -> new JobPage.StageTasks(
                        s.id(),
                        s.name(),
                        stageTag(s.state()),
                        s.state(),
                        may.seesHours() ? hours(s) : "",
                        byStage.getOrDefault(s.name(), List.of())))
                .toList();
    }

    private static String hours(JobHead.Stage stage) {
        return stage.logged().isZero() && stage.estimated().isZero()
                ? ""
                : JobHead.used(stage.logged(), stage.estimated());
    }

    private static Tag stageTag(String state) {
        return switch (state) {
            case "entered" -> new Tag(Tag.Sort.NOW, "Under way");
            case "done" -> new Tag(Tag.Sort.GOOD, "Done");
            case "skipped" -> new Tag(Tag.Sort.DONE, "Skipped");
            default -> new Tag(Tag.Sort.PLAIN, "Ahead");
        };
    }

    /** Each caution of what is next once. */
    private static List<JobPage.Caution> cautions(List<JobPageRows.TaskRow> next) {
        return next.stream()
                .filter(t -> !t.caution().isEmpty())
                .map(t -> new JobPage.Caution(t.caution(), t.cautionSource()))
                .distinct()
                .toList();
    }

    /** What still runs comes first, then what ended in the last days. */
    private List<JobPage.WaitLine> waits(UUID jobId) {
        return waits.since(jobId, clock.now().minus(RECENT)).stream()
                .map(this::wait)
                .sorted(Comparator.comparing(w -> !w.running()))
                .toList();
    }

    private JobPage.WaitLine wait(WaitRows.Row wait) {
        Instant ended = wait.endedAt();
        boolean running = ended == null && wait.endsAt().isAfter(clock.now());
        String text = ended != null
                ? "ended " + dates.moment(ended)
                : (running ? "until " : "over since ") + dates.moment(wait.endsAt());
        Tag tag = new Tag(running ? Tag.Sort.WAIT : Tag.Sort.GOOD, text);
        return new JobPage.WaitLine(
                wait.id(), wait.task(), wait.what(), text, running, tag, "since " + dates.moment(wait.startedAt()));
    }

    private JobPage.PieceBlock piece(JobPageRows.PieceRow piece, List<JobPageRows.MeasureRow> measures) {
        return new JobPage.PieceBlock(
                piece.id(),
                piece.name(),
                piece.kind() == null ? "" : piece.kind(),
                wording.sizes(piece.width(), piece.height(), piece.depth()),
                piece.count(),
                piece.note(),
                measures(measures, piece.id()));
    }

    private List<JobPage.MeasureLine> measures(List<JobPageRows.MeasureRow> all, @Nullable UUID piece) {
        return all.stream()
                .filter(m -> Objects.equals(m.pieceId(), piece))
                .map(m -> new JobPage.MeasureLine(
                        m.id(),
                        m.name(),
                        wording.length(m.length()),
                        (m.measuredBy() == null ? "" : m.measuredBy() + ", ") + dates.day(m.measuredOn()),
                        m.note()))
                .toList();
    }

    private JobPage.PunchLine punch(JobPageRows.PunchRow item) {
        boolean done = item.doneOn() != null;
        boolean signed = item.signedOffOn() != null;
        Tag tag = signed
                ? new Tag(Tag.Sort.GOOD, "Signed off")
                : done ? new Tag(Tag.Sort.NOW, "Done") : new Tag(Tag.Sort.PLAIN, "Open");
        return new JobPage.PunchLine(
                item.id(),
                item.piece() == null ? item.text() : item.piece() + ": " + item.text(),
                "raised " + dates.day(item.raisedOn()) + named(item.raisedBy()),
                item.doneOn() == null ? "" : "done " + dates.day(item.doneOn()) + named(item.doneBy()),
                item.signedOffOn() == null
                        ? ""
                        : "signed off " + dates.day(item.signedOffOn()) + named(item.signedOffBy()),
                tag,
                done,
                signed);
    }

    private static String named(@Nullable String person) {
        return person == null || person.isEmpty() ? "" : " by " + person;
    }

    private JobPage.EventLine event(EventRows.Row event) {
        return new JobPage.EventLine(
                dates.day(event.on()),
                event.person() == null ? "The client" : event.person(),
                Wording.event(event),
                event.note());
    }
}
