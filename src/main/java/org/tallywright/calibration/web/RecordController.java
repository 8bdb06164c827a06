package org.tallywright.calibration.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.calibration.CalibrationChanges;
import org.tallywright.calibration.RateBook;
import org.tallywright.calibration.Recalibration;
import org.tallywright.calibration.TrackRecord;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.ShopConventions;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** How good the bids were, the kept calibrations, and what each of them changed. */
@Controller
@RequestMapping("/calibration")
@Access(Role.OWNER)
class RecordController {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

    private final TrackRecord record;
    private final CalibrationChanges changes;
    private final RateBook book;
    private final Recalibration recalibration;
    private final TaskKinds kinds;
    private final ShopClock clock;
    private final ShopConventions shop;

    RecordController(
            TrackRecord record,
            CalibrationChanges changes,
            RateBook book,
            Recalibration recalibration,
            TaskKinds kinds,
            ShopClock clock,
            ShopConventions shop) {
        this.record = record;
        this.changes = changes;
        this.book = book;
        this.recalibration = recalibration;
        this.kinds = kinds;
        this.clock = clock;
        this.shop = shop;
    }

    @GetMapping
    String show(Model model) {
        return page(Refusal.NONE, model);
    }

    /** A job that could not be left out, with the reason as typed. */
    record Refusal(@Nullable String sentence, String job, String typed) {
        static final Refusal NONE = new Refusal(null, "", "");

        public boolean of(Row row) {
            return sentence != null && row.job().key().equals(job);
        }
    }

    /** @param result in money, signed and in words; empty without a bid */
    record Row(TrackRecord.Line job, String estimate, String likely, String range, String actual, String result) {}

    private String page(Refusal refusal, Model model) {
        TrackRecord.Page page = record.page();
        model.addAttribute("page", page);
        model.addAttribute("words", RecordWords.of(page, shop.money()));
        model.addAttribute("rows", page.lines().stream().map(this::row).toList());
        model.addAttribute(
                "bids", page.bids().lines().stream().map(this::bidRow).toList());
        model.addAttribute("underWay", book.state().underWay());
        model.addAttribute("refusal", refusal);
        model.addAttribute(
                "calibrations",
                page.calibrations().stream()
                        .map(kept -> new Made(kept, day(kept)))
                        .toList());
        return "calibration/record";
    }

    /** A job with a forecast kept from its bid, in words. */
    record BidRow(
            TrackRecord.BidLine job,
            String on,
            String likely,
            String range,
            @Nullable String dropped,
            String actual,
            String result) {}

    private BidRow bidRow(TrackRecord.BidLine line) {
        return new BidRow(
                line,
                DAY.format(line.on()),
                RateWords.hours(line.said().median()),
                RateWords.hours(line.said().low()) + " to "
                        + RateWords.hours(line.said().high()),
                dropped(line),
                RateWords.hours(line.actual()),
                line.result() == null ? "" : shop.money().format(line.result()));
    }

    private static @Nullable String dropped(TrackRecord.BidLine line) {
        return line.droppedTasks() == 0
                ? null
                : "without " + (line.droppedTasks() == 1 ? "1 task" : line.droppedTasks() + " tasks")
                        + " dropped since, " + Math.round(100 * line.droppedShare()) + " % of its hours";
    }

    record Made(TrackRecord.Kept kept, String day) {}

    private String day(TrackRecord.Kept kept) {
        return RecordWords.MOMENT.format(kept.at().atZone(clock.zone()));
    }

    private Row row(TrackRecord.Line line) {
        return new Row(
                line,
                RateWords.hours(line.estimate()),
                RateWords.hours(line.said().median()),
                RateWords.hours(line.said().low()) + " to "
                        + RateWords.hours(line.said().high()),
                RateWords.hours(line.actual()),
                line.result() == null ? "" : shop.money().format(line.result()));
    }

    @PostMapping
    String recalibrate(RedirectAttributes redirect) {
        recalibration.ask("Asked for by hand");
        Flash.done(redirect, "A calibration is being made, unless nothing has changed. This one holds until then.");
        return "redirect:/calibration";
    }

    /** A rate before and after, in words. */
    record MovedRow(UUID kind, String name, String before, String after, String tasks) {}

    @GetMapping("/{id}")
    String change(@PathVariable UUID id, Model model) {
        CalibrationChanges.Change change = changes.change(id);
        Map<UUID, String> names = new HashMap<>();
        kinds.all()
                .forEach(kind -> names.put(
                        kind.id(), kind.name() + ", h per " + kind.unit().label()));
        List<MovedRow> moved = change.moved().stream()
                .map(m -> new MovedRow(
                        m.kind(),
                        names.getOrDefault(m.kind(), "?"),
                        m.before() == null ? "" : RateWords.figure3(m.before()),
                        RateWords.figure3(m.after()),
                        m.tasksBefore() == m.tasks() ? "" + m.tasks() : m.tasksBefore() + ", now " + m.tasks()))
                .toList();
        model.addAttribute("change", change);
        model.addAttribute("moved", moved);
        TrackRecord.Kept before = change.before();
        model.addAttribute("day", day(change.row()));
        model.addAttribute("before", before == null ? null : day(before));
        return "calibration/change";
    }

    @PostMapping("/{id}/use")
    String use(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        recalibration.use(id, me.personId());
        Flash.done(
                redirect, "In use again, as it was. The next closed job or a recalibration by hand makes a new one.");
        return "redirect:/calibration";
    }

    @PostMapping("/left-out")
    String leaveOut(
            @RequestParam String job,
            @RequestParam(defaultValue = "") String reason,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        try {
            recalibration.leaveOut(job, reason, me.personId());
        } catch (Refused refused) {
            response.setStatus(422);
            return page(new Refusal(refused.sentence(), job, reason), model);
        }
        Flash.done(redirect, "Left out. A new calibration is being made without it.");
        return "redirect:/calibration";
    }

    @PostMapping("/taken-back")
    String takeBack(@RequestParam String job, SignedIn me, RedirectAttributes redirect) {
        recalibration.takeBack(job, me.personId());
        Flash.done(redirect, "It counts again. A new calibration is being made with it.");
        return "redirect:/calibration";
    }
}
