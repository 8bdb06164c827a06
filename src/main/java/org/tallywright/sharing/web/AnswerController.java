package org.tallywright.sharing.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Objects;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.tallywright.estimates.BidPaper;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.ClientYes;
import org.tallywright.estimates.Refusal;
import org.tallywright.shared.Refused;
import org.tallywright.sharing.ClientLinks;
import org.tallywright.web.Access;
import org.tallywright.web.FormErrors;

/** The client says yes or no to a bid. Saying it twice is the same as once. */
@Controller
@RequestMapping("/c/{token}/bids/{bid}")
@Access(open = true)
class AnswerController {
    private final ClientLinks links;
    private final ClientPages pages;
    private final Bids bids;

    AnswerController(ClientLinks links, ClientPages pages, Bids bids) {
        this.links = links;
        this.pages = pages;
        this.bids = bids;
    }

    @ModelAttribute
    void keepToYourself(HttpServletResponse response) {
        ClientPages.keepToYourself(response);
    }

    /** What the bid comes to with the options he ticked, before he says yes to it. */
    @GetMapping("/acceptance")
    String choice(
            @PathVariable String token,
            @PathVariable UUID bid,
            AnswerForm form,
            Model model,
            HttpServletResponse response) {
        UUID job = links.jobOf(token);
        BidPaper paper = pages.paper(job, bid);
        if (!paper.standing().isOpen()) {
            return "redirect:/c/" + token;
        }
        try {
            BidPaper.guardOneOfEach(paper.options(), form.ticks().ids());
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            FormErrors errors = FormErrors.of("options-" + bid, refused.sentence());
            return pages.page(token, job, form.to(bid), errors, model);
        }
        return pages.choice(token, paper, form.to(bid), FormErrors.none(), model);
    }

    private interface Answer {
        void give(UUID job);
    }

    @PostMapping("/acceptance")
    String accept(
            @PathVariable String token,
            @PathVariable UUID bid,
            AnswerForm form,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        return answer(
                token,
                form.to(bid),
                "accepted",
                "name-",
                model,
                response,
                job -> bids.acceptByLink(
                        bid,
                        job,
                        new ClientYes(
                                SharingForm.text(form.name()), form.ticks().ids(), request.getRemoteAddr())));
    }

    @PostMapping("/refusal")
    String decline(
            @PathVariable String token,
            @PathVariable UUID bid,
            AnswerForm form,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        return answer(
                token,
                form.to(bid),
                "declined",
                "reason-",
                model,
                response,
                job -> bids.declineByLink(
                        bid,
                        job,
                        Refusal.of(SharingForm.text(form.pick()), SharingForm.text(form.reason())),
                        request.getRemoteAddr()));
    }

    private String answer(
            String token,
            AnswerForm form,
            String said,
            String box,
            Model model,
            HttpServletResponse response,
            Answer answer) {
        UUID job = links.jobOf(token);
        UUID bid = Objects.requireNonNull(form.bid());
        try {
            answer.give(job);
            return "redirect:/c/" + token + "?" + said;
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            model.addAttribute("refused", refused.sentence());
            FormErrors errors = FormErrors.of(box + bid, refused.sentence());
            return pages.find(job, bid)
                    .filter(paper -> said.equals("accepted")
                            && paper.standing().isOpen()
                            && !paper.options().isEmpty())
                    .map(paper -> pages.choice(token, paper, form, errors, model))
                    .orElseGet(() -> pages.page(token, job, form, errors, model));
        }
    }
}
