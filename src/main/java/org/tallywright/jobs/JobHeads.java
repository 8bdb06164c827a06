package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.Hours;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.NavItem;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;
import org.tallywright.web.Tag;
import org.tallywright.web.TitleBlock;
import org.tallywright.web.stick.StickForecast;
import org.tallywright.web.stick.StickStage;
import org.tallywright.web.stick.StickWait;
import org.tallywright.web.stick.StoryStick;

/** Reads the top of a job's pages for one reader. */
@Component
public class JobHeads {
    private final HeadRows rows;
    private final ObjectProvider<LoggedHours> logged;
    private final ObjectProvider<TitleCell> cells;
    private final ObjectProvider<StickOutlook> outlooks;
    private final ShopClock clock;
    private final ShopDates dates;

    JobHeads(
            HeadRows rows,
            ObjectProvider<LoggedHours> logged,
            ObjectProvider<TitleCell> cells,
            ObjectProvider<StickOutlook> outlooks,
            ShopClock clock,
            ShopDates dates) {
        this.rows = rows;
        this.logged = logged;
        this.cells = cells;
        this.outlooks = outlooks;
        this.clock = clock;
        this.dates = dates;
    }

    /**
     * @param tab the key of the page's own tab: job, hours, materials, photos, estimate, review, sharing
     * @throws org.tallywright.shared.NotHere for a number that no job has
     */
    @Transactional(readOnly = true)
    public JobHead find(String number, SignedIn me, String tab) {
        HeadRows.Head head = rows.head(number);
        UUID jobId = head.job().id();
        LoggedHours.OnJob hours = loggedOn(jobId, me);
        List<JobHead.Stage> stages = rows.stages(jobId).stream()
                .map(stage -> stage(stage, hours, me))
                .toList();
        List<HeadRows.OpenWait> waits = rows.openWaits(jobId, clock.now());
        TitleBlock block = new TitleBlock(
                number,
                head.job().title(),
                head.client() + ", " + head.address(),
                cells(head, stages, hours, me),
                tags(head, waits));
        return new JobHead(
                head.job(),
                block,
                tabs(number, me, tab),
                stick(head.job(), stages, waits, me).besides(besides(stages, hours)),
                stages,
                hours);
    }

    /** What is logged on the job but on no task of a stage. */
    private static Hours besides(List<JobHead.Stage> stages, LoggedHours.OnJob hours) {
        int drawn = stages.stream().mapToInt(stage -> stage.logged().minutes()).sum();
        return Hours.ofMinutes(hours.total() - drawn);
    }

    /** A helper's stick has equal stages and no hours at all. */
    private StoryStick stick(JobRef job, List<JobHead.Stage> stages, List<HeadRows.OpenWait> waits, SignedIn me) {
        List<UUID> order = stages.stream().map(JobHead.Stage::id).toList();
        List<StickWait> hanging = waits.stream()
                .map(w -> new StickWait(order.indexOf(w.stageId()), w.what() + " until " + dates.moment(w.endsAt())))
                .toList();
        List<StickStage> marks = stages.stream()
                .map(s -> new StickStage(s.name(), s.estimated(), s.logged(), onStick(s.state())))
                .toList();
        return me.seesEstimates() ? StoryStick.of(marks, hanging, outlook(job)) : StoryStick.progress(marks, hanging);
    }

    /** Of a running job, where some module can say where it ends. */
    private @Nullable StickForecast outlook(JobRef job) {
        StickOutlook bean = outlooks.getIfAvailable();
        return bean == null || job.state() != JobState.RUNNING
                ? null
                : bean.of(job.id()).orElse(null);
    }

    private static JobHead.Stage stage(HeadRows.Stage row, LoggedHours.OnJob hours, SignedIn me) {
        int logged = row.taskIds().stream()
                .mapToInt(id -> hours.byTask().getOrDefault(id, 0))
                .sum();
        int estimated = me.seesEstimates() ? row.estimatedMinutes() : 0;
        return new JobHead.Stage(
                row.id(), row.name(), row.state(), Hours.ofMinutes(estimated), Hours.ofMinutes(logged));
    }

    private static StickStage.State onStick(String state) {
        return switch (state) {
            case "entered" -> StickStage.State.UNDER_WAY;
            case "done" -> StickStage.State.DONE;
            case "skipped" -> StickStage.State.SKIPPED;
            default -> StickStage.State.AHEAD;
        };
    }

    /** Everybody's minutes for owner and lead, one's own for a helper. */
    private LoggedHours.OnJob loggedOn(UUID jobId, SignedIn me) {
        LoggedHours bean = logged.getIfAvailable();
        return bean == null ? LoggedHours.OnJob.NOTHING : bean.onJob(jobId, me.seesEstimates() ? null : me.personId());
    }

    private List<TitleBlock.Cell> cells(
            HeadRows.Head head, List<JobHead.Stage> stages, LoggedHours.OnJob hours, SignedIn me) {
        List<TitleBlock.Cell> all = new ArrayList<>();
        all.add(new TitleBlock.Cell("Stage", stageNow(stages)));
        LocalDate promised = head.promisedOn();
        all.add(new TitleBlock.Cell("Promised", promised == null ? "No date yet" : dates.day(promised)));
        String hoursPage = "/jobs/" + head.job().number() + "/hours";
        if (me.seesEstimates()) {
            Hours estimated =
                    Hours.sum(stages.stream().map(JobHead.Stage::estimated).toList());
            String value = JobHead.used(Hours.ofMinutes(hours.total()), estimated);
            all.add(new TitleBlock.Cell(estimated.isZero() ? "Logged" : "Logged of estimated", value, hoursPage));
        } else {
            all.add(new TitleBlock.Cell(
                    "Your hours", Hours.ofMinutes(hours.total()).toString(), hoursPage));
        }
        cells.orderedStream().forEach(cell -> all.addAll(cell.cells(head.job().id(), me)));
        return all;
    }

    /** The furthest stage that the job has entered. */
    private static String stageNow(List<JobHead.Stage> stages) {
        JobHead.Stage furthest = null;
        for (JobHead.Stage stage : stages) {
            if (stage.state().equals("entered") || stage.state().equals("done")) {
                furthest = stage;
            }
        }
        if (furthest == null) {
            return "Not begun";
        }
        return furthest.state().equals("done") ? furthest.name() + ", done" : furthest.name();
    }

    private List<Tag> tags(HeadRows.Head head, List<HeadRows.OpenWait> waits) {
        List<Tag> tags = new ArrayList<>();
        tags.add(stateTag(head.job().state()));
        LocalDate promised = head.promisedOn();
        if (head.job().state() == JobState.RUNNING && promised != null && promised.isBefore(clock.today())) {
            tags.add(new Tag(Tag.Sort.OVER, "Promised date has passed"));
        }
        for (HeadRows.OpenWait wait : waits) {
            tags.add(new Tag(Tag.Sort.WAIT, wait.what() + " until " + dates.moment(wait.endsAt())));
        }
        return tags;
    }

    static Tag stateTag(JobState state) {
        Tag.Sort sort = switch (state) {
            case RUNNING -> Tag.Sort.NOW;
            case CLOSED, LOST -> Tag.Sort.DONE;
            case LEAD, BIDDING -> Tag.Sort.PLAIN;
        };
        return new Tag(sort, state.label());
    }

    private static List<NavItem> tabs(String number, SignedIn me, @Nullable String current) {
        String base = "/jobs/" + number;
        List<NavItem> tabs = new ArrayList<>();
        tabs.add(tab("job", base, current));
        tabs.add(tab("hours", base + "/hours", current));
        tabs.add(tab("materials", base + "/materials", current));
        if (!me.is(Role.BOOKKEEPER)) {
            tabs.add(tab("photos", base + "/photos", current));
        }
        if (me.seesEstimates()) {
            tabs.add(tab("estimate", base + "/estimate", current));
            tabs.add(tab("forecast", base + "/forecast", current));
        }
        if (me.is(Role.OWNER)) {
            tabs.add(tab("review", base + "/review", current));
            tabs.add(tab("sharing", base + "/sharing", current));
        }
        return tabs;
    }

    private static NavItem tab(String key, String href, @Nullable String current) {
        return new NavItem(key, "jobs.tab." + key, href, key.equals(current));
    }
}
