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
import org.tallywright.estimates.BidDesk;
import org.tallywright.estimates.BidPaper;
import org.tallywright.estimates.BidPrinter;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.Refusal;
import org.tallywright.estimates.Ticks;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.PdfFile;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** An issued bid: the paper that the client reads, the frozen sums inside it, and what became of it. */
@Controller
@RequestMapping("/bids/{id}")
@Access(Role.OWNER)
class PaperController {
    private final Bids bids;
    private final BidPrinter printer;
    private final BidDesk desk;
    private final SumsPages pages;
    private final ShopClock clock;

    PaperController(Bids bids, BidPrinter printer, BidDesk desk, SumsPages pages, ShopClock clock) {
        this.bids = bids;
        this.printer = printer;
        this.desk = desk;
        this.pages = pages;
        this.clock = clock;
    }

    /**
     * @param on the day of the yes, as typed
     * @param options ids of those that the client took
     * @param oneOf the same of those that exclude each other, one for each group
     */
    record AcceptanceForm(
            @Nullable String name,
            @Nullable String on,
            @Nullable List<String> options,
            @Nullable List<@Nullable String> oneOf) {
        public Ticks ticks() {
            return new Ticks(options, oneOf);
        }
    }

    record RefusalForm(@Nullable String pick, @Nullable String reason) {
        static final RefusalForm BLANK = new RefusalForm("", "");
    }

    @GetMapping
    String paper(@PathVariable UUID id, Model model) {
        model.addAttribute("paper", bids.paper(id));
        // Not even the title names the shop as it is today.
        model.addAttribute("shell", null);
        return "estimates/paper";
    }

    /** The same paper as a file; where its font has not every sign, the page itself says so. */
    @GetMapping("/paper.pdf")
    Object pdf(@PathVariable UUID id, Model model, HttpServletResponse response) {
        try {
            BidPrinter.Printed pdf = printer.print(id);
            return PdfFile.answer(pdf.name(), pdf.bytes());
        } catch (Refused unprintable) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            model.addAttribute("said", unprintable.sentence());
            return paper(id, model);
        }
    }

    @GetMapping("/sums")
    String show(@PathVariable UUID id, Model model) {
        BidPaper paper = bids.paper(id);
        return page(paper, blank(paper), RefusalForm.BLANK, FormErrors.none(), model);
    }

    private AcceptanceForm blank(BidPaper paper) {
        return new AcceptanceForm(paper.document().clientName(), clock.today().toString(), List.of(), List.of());
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
                bids.accept(id, Picked.text(form.name()), on, form.ticks().ids(), me.personId());
                Flash.done(redirect, "Accepted. The job runs.");
                return "redirect:/bids/" + id + "/sums";
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return page(bids.paper(id), form, RefusalForm.BLANK, read.errors(), model);
    }

    @PostMapping("/withdrawal")
    String withdraw(@PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        desk.withdraw(id, me.personId());
        Flash.done(redirect, "Withdrawn. The client's link no longer offers it.");
        return "redirect:/bids/" + id + "/sums";
    }

    @PostMapping("/refusal")
    String decline(
            @PathVariable UUID id,
            RefusalForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        try {
            desk.decline(id, Refusal.of(Picked.text(form.pick()), Picked.text(form.reason())), me.personId());
            Flash.done(redirect, "Marked as declined. Write a revision when you have an answer to the reason.");
            return "redirect:/bids/" + id + "/sums";
        } catch (Refused refused) {
            read.refuse(refused);
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        BidPaper paper = bids.paper(id);
        return page(paper, blank(paper), form, read.errors(), model);
    }

    private static LocalDate day(@Nullable String typed) {
        try {
            return LocalDate.parse(Picked.text(typed).strip());
        } catch (DateTimeParseException wrong) {
            throw new Refused("Write the day like 2026-11-25.");
        }
    }

    private String page(BidPaper paper, AcceptanceForm form, RefusalForm refusal, FormErrors errors, Model model) {
        pages.fill(paper, model);
        model.addAttribute("form", form);
        model.addAttribute("refusal", refusal);
        model.addAttribute("errors", errors);
        return "estimates/sums";
    }
}
