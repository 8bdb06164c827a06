package org.tallywright.estimates.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.estimates.AcceptedBid;
import org.tallywright.estimates.BidDesk;
import org.tallywright.estimates.BidPaper;
import org.tallywright.estimates.BidTask;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.MoneyAtRisk;
import org.tallywright.estimates.web.EstimatePage.Entry;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.ShopConventions;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** An issued bid: the paper that the client reads, the frozen sums inside it, and what became of it. */
@Controller
@RequestMapping("/bids/{id}")
@Access(Role.OWNER)
class PaperController {
    private final Bids bids;
    private final BidDesk desk;
    private final JobDesk jobs;
    private final Ladder ladder;
    private final RiskRungs risk;
    private final ShopClock clock;
    private final ShopConventions shop;

    PaperController(
            Bids bids,
            BidDesk desk,
            JobDesk jobs,
            Ladder ladder,
            RiskRungs risk,
            ShopClock clock,
            ShopConventions shop) {
        this.bids = bids;
        this.desk = desk;
        this.jobs = jobs;
        this.ladder = ladder;
        this.risk = risk;
        this.clock = clock;
        this.shop = shop;
    }

    /** @param on the day of the yes, as typed */
    record AcceptanceForm(@Nullable String name, @Nullable String on) {}

    @GetMapping
    String paper(@PathVariable UUID id, Model model) {
        model.addAttribute("paper", bids.paper(id));
        // Not even the title names the shop as it is today.
        model.addAttribute("shell", null);
        return "estimates/paper";
    }

    @GetMapping("/sums")
    String show(@PathVariable UUID id, Model model) {
        BidPaper paper = bids.paper(id);
        AcceptanceForm form =
                new AcceptanceForm(paper.document().clientName(), clock.today().toString());
        return page(paper, form, FormErrors.none(), model);
    }

    @PostMapping("/acceptance")
    String accept(
            @PathVariable UUID id,
            AcceptanceForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        LocalDate on = read.field("on", () -> day(form.on()));
        if (on != null) {
            try {
                bids.accept(id, Picked.text(form.name()), on, me.personId());
                Flash.done(redirect, "Accepted. The job runs.");
                return "redirect:/bids/" + id + "/sums";
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return page(bids.paper(id), form, read.errors(), model);
    }

    @PostMapping("/withdrawal")
    String withdraw(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        desk.withdraw(id, me.personId());
        Flash.done(redirect, "Withdrawn. The client's link no longer offers it.");
        return "redirect:/bids/" + id + "/sums";
    }

    @PostMapping("/refusal")
    String decline(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        desk.decline(id, me.personId());
        Flash.done(redirect, "Marked as declined.");
        return "redirect:/bids/" + id + "/sums";
    }

    private static LocalDate day(@Nullable String typed) {
        try {
            return LocalDate.parse(Picked.text(typed).strip());
        } catch (DateTimeParseException wrong) {
            throw new Refused("Write the day like 2026-11-25.");
        }
    }

    private String page(BidPaper paper, AcceptanceForm form, FormErrors errors, Model model) {
        AcceptedBid inside = bids.inside(paper.id());
        List<Entry> materials = inside.materials().stream()
                .map(m -> new Entry(
                        m.name() + ": " + m.netQuantity() + " " + m.unit() + " net / " + m.yield() + ", buys "
                                + m.purchaseQuantity() + " at " + shop.money().format(m.unitPrice()),
                        shop.money().format(m.amount())))
                .toList();
        List<Entry> others = inside.others().stream()
                .map(o -> new Entry(o.description(), shop.money().format(o.amount())))
                .toList();
        model.addAttribute("paper", paper);
        model.addAttribute("bid", inside);
        model.addAttribute("tag", EstimatePages.tag(paper.standing()));
        model.addAttribute("job", jobs.get(paper.jobId()));
        MoneyAtRisk said = bids.risk(paper.id()).orElse(null);
        model.addAttribute("ladder", ladder.of(inside, said == null ? null : said.confidence(), materials, others));
        model.addAttribute("risk", said == null ? List.of() : risk.of(said));
        model.addAttribute("hint", said == null ? "" : RiskRungs.hint(said));
        model.addAttribute(
                "lineHours",
                Hours.sum(inside.tasks().stream().map(BidTask::hours).toList()));
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "estimates/sums";
    }
}
