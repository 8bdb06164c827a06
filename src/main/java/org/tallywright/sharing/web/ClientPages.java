package org.tallywright.sharing.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.tallywright.estimates.BidKind;
import org.tallywright.estimates.BidPaper;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.PaperDifference;
import org.tallywright.photos.PhotoRows;
import org.tallywright.photos.PhotoWords;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.ShopClock;
import org.tallywright.sharing.ClientPage;
import org.tallywright.web.FormErrors;
import org.tallywright.web.stick.StickStage;
import org.tallywright.web.stick.StoryStick;

/** Puts a job on the client's page. */
@Component
class ClientPages {
    private final ClientPage rows;
    private final Bids bids;
    private final PhotoRows photos;
    private final PhotoWords words;
    private final ShopClock clock;

    ClientPages(ClientPage rows, Bids bids, PhotoRows photos, PhotoWords words, ShopClock clock) {
        this.rows = rows;
        this.bids = bids;
        this.photos = photos;
        this.words = words;
        this.clock = clock;
    }

    /**
     * A paper as it stands on the page.
     *
     * @param before number of the bid before it, or empty
     * @param changes that it makes to that one; empty where nothing that the client reads differs
     */
    record Offer(BidPaper paper, String before, List<PaperDifference.Change> changes) {}

    static void keepToYourself(HttpServletResponse response) {
        response.setHeader("X-Robots-Tag", "noindex, nofollow, noarchive");
        response.setHeader("Referrer-Policy", "no-referrer");
        response.setHeader("Cache-Control", "no-store");
    }

    String page(String token, UUID job, AnswerForm form, FormErrors errors, Model model) {
        List<ClientPage.Stage> stages = rows.stages(job);
        model.addAttribute("token", token);
        model.addAttribute("job", rows.job(job));
        model.addAttribute("stages", stages);
        model.addAttribute("stick", stick(stages));
        model.addAttribute("notes", rows.notes(job, false));
        model.addAttribute("visit", rows.visit(job));
        model.addAttribute("punch", rows.punchList(job));
        model.addAttribute(
                "photos", photos.forClient(job).stream().map(words::print).toList());
        model.addAttribute("offers", offers(bids.papersForClient(job)));
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("asOf", clock.wallTime());
        return "sharing/client";
    }

    /** @throws NotHere where the client of that job has no such bid to read */
    BidPaper paper(UUID job, UUID bid) {
        return find(job, bid).orElseThrow(() -> new NotHere("bid"));
    }

    /** Empty where the client of that job has no such bid to read, or no more. */
    Optional<BidPaper> find(UUID job, UUID bid) {
        return bids.papersForClient(job).stream()
                .filter(paper -> paper.id().equals(bid))
                .findFirst();
    }

    String choice(String token, BidPaper paper, AnswerForm form, FormErrors errors, Model model) {
        model.addAttribute("token", token);
        model.addAttribute("paper", paper);
        model.addAttribute("total", paper.totalWith(form.ticks()));
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "sharing/choice";
    }

    /** Each bid beside the one before it that the client can still read. */
    private static List<Offer> offers(List<BidPaper> papers) {
        List<Offer> offers = new ArrayList<>();
        BidPaper before = null;
        for (BidPaper paper : papers) {
            if (paper.kind() != BidKind.BID || before == null) {
                offers.add(new Offer(paper, "", List.of()));
            } else {
                offers.add(new Offer(
                        paper, before.number(), PaperDifference.between(before.document(), paper.document())));
            }
            before = paper.kind() == BidKind.BID ? paper : before;
        }
        return offers;
    }

    private static StoryStick stick(List<ClientPage.Stage> stages) {
        return StoryStick.progress(stages.stream().map(ClientPages::mark).toList(), List.of());
    }

    private static StickStage mark(ClientPage.Stage stage) {
        StickStage.State state = switch (stage.state()) {
            case "done" -> StickStage.State.DONE;
            case "entered" -> StickStage.State.UNDER_WAY;
            default -> StickStage.State.AHEAD;
        };
        return StickStage.of(stage.name(), state);
    }
}
