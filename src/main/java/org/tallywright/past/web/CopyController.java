package org.tallywright.past.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.past.CopyOffer;
import org.tallywright.past.CopyOffers;
import org.tallywright.past.CopyPlan;
import org.tallywright.past.CopyRemoval;
import org.tallywright.past.Copyist;
import org.tallywright.past.PastJob;
import org.tallywright.past.PastJobs;
import org.tallywright.shared.Refused;
import org.tallywright.takeoff.PieceFacts;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Previews a copy of a past piece or job, makes it, and takes it out again. */
@Controller
@RequestMapping("/jobs/{number}")
@Access({Role.OWNER, Role.LEAD})
class CopyController {
    private final JobDesk jobs;
    private final PastJobs past;
    private final CopyOffers offers;
    private final Copyist copyist;
    private final CopyRemoval removal;
    private final PieceFacts pieces;
    private final CopyPages pages;
    private final PastWords words;

    CopyController(
            JobDesk jobs,
            PastJobs past,
            CopyOffers offers,
            Copyist copyist,
            CopyRemoval removal,
            PieceFacts pieces,
            CopyPages pages,
            PastWords words) {
        this.jobs = jobs;
        this.past = past;
        this.offers = offers;
        this.copyist = copyist;
        this.removal = removal;
        this.pieces = pieces;
        this.pages = pages;
        this.words = words;
    }

    /**
     * @param piece null for a whole job
     * @param targets pieces that the job has already
     */
    private record Wanted(
            JobRef into, PastJob from, @Nullable UUID piece, List<PieceFacts.Fact> targets, String action) {}

    private Wanted piece(String number, UUID piece) {
        JobRef into = jobs.find(number);
        return new Wanted(
                into,
                past.piece(piece),
                piece,
                pieces.ofJob(into.id()),
                "/jobs/" + into.number() + "/past-pieces/" + piece);
    }

    private Wanted job(String number, String other, SignedIn me) {
        JobRef into = jobs.find(number);
        PastJob from = past.job(other, me.seesMoney());
        return new Wanted(
                into,
                from,
                null,
                pieces.ofJob(into.id()),
                "/jobs/" + into.number() + "/past-jobs/" + from.ref().number());
    }

    /**
     * @param into id of a piece that the lines are to go to, as offered by the page it comes from
     * @param width likewise, as it was looked for; height and depth too
     */
    @GetMapping("/past-pieces/{id}")
    String showPiece(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String into,
            @RequestParam(defaultValue = "") String width,
            @RequestParam(defaultValue = "") String height,
            @RequestParam(defaultValue = "") String depth,
            SignedIn me,
            Model model) {
        return show(
                piece(number, id),
                CopyForm.blank(id, Map.of("into", into, "width", width, "height", height, "depth", depth)),
                me,
                model);
    }

    @GetMapping("/past-jobs/{other}")
    String showJob(@PathVariable String number, @PathVariable String other, SignedIn me, Model model) {
        return show(job(number, other, me), CopyForm.blank(), me, model);
    }

    private String show(Wanted wanted, CopyForm form, SignedIn me, Model model) {
        copyist.guard(wanted.into(), wanted.from().ref());
        FormReader read = new FormReader();
        CopyOffer offer = offer(wanted, form, read);
        return page(wanted, offer, form, read.errors(), me, model);
    }

    private CopyOffer offer(Wanted wanted, CopyForm form, FormReader read) {
        Map<UUID, PieceDetails> sizes = form.sizes(read, wanted.from().pieces(), wanted.targets(), words);
        return offers.offer(
                wanted.into(),
                wanted.from(),
                wanted.piece() == null,
                sizes,
                form.targets(wanted.from().pieces()));
    }

    private String page(Wanted wanted, CopyOffer offer, CopyForm form, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("page", pages.page(offer, wanted.piece(), wanted.targets(), form, wanted.action(), me));
        model.addAttribute("errors", errors);
        return "past/copy";
    }

    @PostMapping("/past-pieces/{id}")
    String createPiece(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> sent,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return create(piece(number, id), CopyForm.of(sent), me, model, response, redirect);
    }

    @PostMapping("/past-jobs/{other}")
    String createJob(
            @PathVariable String number,
            @PathVariable String other,
            @RequestParam MultiValueMap<String, String> sent,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        return create(job(number, other, me), CopyForm.of(sent), me, model, response, redirect);
    }

    private String create(
            Wanted wanted,
            CopyForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        CopyOffer offer = offer(wanted, form, read);
        boolean anew = form.asksAnew();
        if (anew && !read.refused()) {
            return page(wanted, offer, form, FormErrors.none(), me, model);
        }
        if (!anew) {
            CopyPlan plan = new CopyReading(form, read, offer).plan(wanted.piece());
            if (!copyist.knows(plan.id())) {
                CopySeen.changed(form, offer, me.seesMoney()).ifPresent(why -> read.refuse("", why));
            }
            if (!read.refused() && kept(wanted, plan, read, me)) {
                Flash.done(redirect, "Copied from " + plan.what() + ". Change what is different here.");
                return "redirect:/jobs/" + wanted.into().number() + "/estimate#tasks";
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return page(wanted, offer, form, read.errors(), me, model);
    }

    private boolean kept(Wanted wanted, CopyPlan plan, FormReader read, SignedIn me) {
        try {
            copyist.copy(wanted.into().id(), plan, me.personId());
            return true;
        } catch (Refused refused) {
            // Its field is that of another form.
            read.refuse("", refused.sentence());
            return false;
        }
    }

    @PostMapping("/copies/{id}/removal")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        removal.takeOut(job.id(), id, me.personId(), me.seesMoney());
        Flash.done(redirect, "The copy is taken out.");
        return "redirect:/jobs/" + job.number() + "/estimate#tasks";
    }
}
