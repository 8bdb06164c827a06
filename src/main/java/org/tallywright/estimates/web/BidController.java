package org.tallywright.estimates.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Objects;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.estimates.BidDesk;
import org.tallywright.estimates.BidKind;
import org.tallywright.estimates.BidStanding;
import org.tallywright.estimates.BidWords;
import org.tallywright.estimates.EstimateDesk;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.IssueBid;
import org.tallywright.estimates.PaymentPlan;
import org.tallywright.estimates.PriceSum;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Refused;
import org.tallywright.shop.ShopSettings;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The words of a bid, and issuing it. */
@Controller
@Access(Role.OWNER)
class BidController {
    private final JobDesk jobs;
    private final BidDesk bids;
    private final EstimateDesk desk;
    private final EstimatePricer pricer;
    private final ShopSettings settings;
    private final Deposits deposits;

    BidController(
            JobDesk jobs,
            BidDesk bids,
            EstimateDesk desk,
            EstimatePricer pricer,
            ShopSettings settings,
            Deposits deposits) {
        this.jobs = jobs;
        this.bids = bids;
        this.desk = desk;
        this.pricer = pricer;
        this.settings = settings;
        this.deposits = deposits;
    }

    @GetMapping("/jobs/{number}/bids/new")
    String blank(@PathVariable String number, @RequestParam(defaultValue = "") String about, Model model) {
        JobRef job = jobs.find(number);
        WorkingSum working = pricer.of(job.id());
        IssueForm form =
                IssueForm.of(working, job.title(), about, settings.current().bidValidDays());
        return page(job, working, form, FormErrors.none(), model);
    }

    @PostMapping("/jobs/{number}/bids")
    String create(
            @PathVariable String number,
            IssueForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        FormReader read = new FormReader();
        IssueBid said = form.read(read);
        if (said != null
                && !form.knowsTheLimit()
                && !deposits.over(said.words(), pricer.of(job.id())).isEmpty()) {
            read.refuse("overLimit", "Ask for less first, or tick that you know.");
            said = null;
        }
        if (said != null) {
            try {
                bids.issue(job.id(), said, me.personId());
                Flash.done(redirect, "Issued. Print it, or share the job's link with the client.");
                return "redirect:/bids/" + said.id() + "/sums";
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        WorkingSum now = pricer.of(job.id());
        return page(job, now, form.seeing(now), read.errors(), model);
    }

    /** The steps of the payment plan in money, before anything is kept or issued. */
    @PostMapping("/jobs/{number}/bids/preview")
    String preview(@PathVariable String number, IssueForm form, Model model, HttpServletResponse response) {
        JobRef job = jobs.find(number);
        WorkingSum working = pricer.of(job.id());
        FormReader read = new FormReader();
        form.readPayments(read);
        String view = page(job, working, form, read.errors(), model);
        if (read.refused()
                || !Objects.toString(model.getAttribute("unpayable"), "").isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        }
        return view;
    }

    @PostMapping("/jobs/{number}/estimate/words")
    String keepWords(
            @PathVariable String number,
            IssueForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        FormReader read = new FormReader();
        BidWords words = form.words(read);
        if (words != null) {
            try {
                desk.word(job.id(), form.version(), words, me.personId());
                Flash.done(redirect, "The words are kept; nothing was issued.");
                return "redirect:/jobs/" + job.number() + "/bids/new";
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return page(job, pricer.of(job.id()), form, read.errors(), model);
    }

    private String page(JobRef job, WorkingSum working, IssueForm form, FormErrors errors, Model model) {
        model.addAttribute("job", job);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("kind", working.sheet().nextKind());
        model.addAttribute("followed", followed(working));
        model.addAttribute("sum", working.sum().orElse(null));
        model.addAttribute("options", working.options());
        steps(form, working, model);
        BidWords words = form.words(new FormReader());
        model.addAttribute("deposit", words == null ? "" : deposits.over(words, working));
        model.addAttribute(
                "ready", working.sum().isPresent() && !working.sheet().next().isEmpty());
        return "estimates/issue";
    }

    /** As they would stand on the paper; none where they cannot be told, and then why. */
    private static void steps(IssueForm form, WorkingSum working, Model model) {
        List<PaymentPlan.Payment> steps = List.of();
        String why = "";
        PaymentPlan plan = form.readPayments(new FormReader());
        PriceSum sum = working.sum().orElse(null);
        if (plan != null && sum != null) {
            try {
                steps = plan.of(sum.total());
            } catch (Refused tooMuch) {
                why = tooMuch.sentence();
            }
        }
        model.addAttribute("steps", steps);
        model.addAttribute("unpayable", why);
    }

    /** The bid that is out and that a new one would take the place of; empty where there is none. */
    private static String followed(WorkingSum working) {
        return working.bids().stream()
                .filter(b -> working.sheet().nextKind() == BidKind.BID && b.standing() == BidStanding.OPEN)
                .map(EstimateSheet.BidRow::number)
                .findFirst()
                .orElse("");
    }
}
