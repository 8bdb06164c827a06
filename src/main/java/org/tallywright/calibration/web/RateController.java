package org.tallywright.calibration.web;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
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
import org.tallywright.calibration.ConditionBook;
import org.tallywright.calibration.RateBook;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.UnitHours;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The rate book: hours per unit of every task kind, and one kind's history. Hours only, so a lead reads it too. */
@Controller
@RequestMapping("/rates")
@Access({Role.OWNER, Role.LEAD})
class RateController {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    private final RateBook book;
    private final ConditionBook conditions;
    private final ShopClock clock;

    RateController(RateBook book, ConditionBook conditions, ShopClock clock) {
        this.book = book;
        this.conditions = conditions;
        this.clock = clock;
    }

    @GetMapping
    String index(SignedIn me, Model model) {
        List<RateBook.Entry> all = book.entries();
        model.addAttribute("owner", me.is(Role.OWNER));
        model.addAttribute("state", state());
        model.addAttribute(
                "own", all.stream().filter(entry -> entry.tasks() > 0).toList());
        model.addAttribute("people", book.people());
        model.addAttribute(
                "others", all.stream().filter(entry -> entry.tasks() == 0).toList());
        model.addAttribute(
                "conditions",
                conditions.conditions().stream().map(ConditionRow::of).toList());
        return "calibration/rates";
    }

    @GetMapping("/{id}")
    String show(@PathVariable UUID id, SignedIn me, Model model) {
        RateBook.KindHistory history = book.history(id);
        TaskKindCard.Merge merge = history.entry().kind().merge();
        return merge == null ? page(history, me, null, model) : "redirect:/rates/" + merge.into();
    }

    @PostMapping("/{id}/acceptance")
    @Access(Role.OWNER)
    String accept(
            @PathVariable UUID id,
            @RequestParam int version,
            @RequestParam String rate,
            SignedIn me,
            Model model,
            jakarta.servlet.http.HttpServletResponse response,
            RedirectAttributes redirect) {
        RateBook.KindHistory history = book.history(id);
        try {
            String basis = "the shop's own hours, " + history.entry().tasks() + " finished tasks on "
                    + history.entry().jobs() + " jobs, " + DAY.format(clock.today());
            book.accept(id, version, UnitHours.of(rate), basis, me.personId());
        } catch (Refused refused) {
            response.setStatus(422);
            return page(history, me, refused.sentence(), model);
        }
        Flash.done(redirect, "This is the starting rate from now on. The past is measured against it too.");
        return "redirect:/rates/" + id;
    }

    private String page(RateBook.KindHistory history, SignedIn me, @Nullable String refusal, Model model) {
        RateBook.Entry entry = history.entry();
        model.addAttribute("history", history);
        model.addAttribute("entry", entry);
        model.addAttribute("state", state());
        model.addAttribute("size", RateWords.hours(entry.size()));
        model.addAttribute("trend", entry.trend() == null ? null : RateWords.trend(entry.trend()));
        model.addAttribute("plot", RatePlot.of(history));
        model.addAttribute("refusal", refusal);
        model.addAttribute("merged", history.merged().stream().map(this::merged).toList());
        UnitHours typical = entry.typical();
        model.addAttribute(
                "accepts",
                me.is(Role.OWNER)
                        && entry.tasks() > 0
                        && typical != null
                        && !typical.equals(entry.kind().unitHours()));
        return "calibration/rate";
    }

    private String merged(RateBook.Merged other) {
        String since = ", counted here since " + DAY.format(clock.dateOf(other.at())) + " by " + other.by() + ".";
        return other.tasks() == 0
                ? "Also counts \"" + other.name() + "\"" + since + " This calibration has no finished task of it."
                : "Also counts " + other.tasks() + (other.tasks() == 1 ? " task" : " tasks") + " of \"" + other.name()
                        + "\"" + since;
    }

    /** One line on what stands behind the page. */
    private String state() {
        RateBook.State state = book.state();
        String now = state.underWay().isEmpty()
                ? ""
                : " A new calibration is being made; until then this one holds. " + state.underWay() + ".";
        if (state.madeAt() == null) {
            return "Nothing learnt yet: everything is the starting rate." + now;
        }
        LocalDate made = clock.dateOf(state.madeAt());
        return "Learnt from " + state.tasks() + " finished tasks on " + state.jobs()
                + (state.jobs() == 1 ? " job" : " jobs") + ", calibrated " + DAY.format(made) + "." + now;
    }
}
