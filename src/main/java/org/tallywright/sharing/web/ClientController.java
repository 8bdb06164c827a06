package org.tallywright.sharing.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.tallywright.estimates.BidPaper;
import org.tallywright.estimates.Bids;
import org.tallywright.photos.PhotoRows;
import org.tallywright.photos.PhotoWords;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.sharing.ClientLinks;
import org.tallywright.sharing.ClientPage;
import org.tallywright.web.Access;
import org.tallywright.web.FormErrors;
import org.tallywright.web.stick.StickStage;
import org.tallywright.web.stick.StoryStick;

/** The client's page. The token is the only key: no account, no session; nothing of it is kept by search engines. */
@Controller
@RequestMapping("/c/{token}")
@Access(open = true)
class ClientController {
    private final ClientLinks links;
    private final ClientPage pages;
    private final Bids bids;
    private final PhotoRows photos;
    private final PhotoWords words;
    private final ShopClock clock;

    ClientController(
            ClientLinks links, ClientPage pages, Bids bids, PhotoRows photos, PhotoWords words, ShopClock clock) {
        this.links = links;
        this.pages = pages;
        this.bids = bids;
        this.photos = photos;
        this.words = words;
        this.clock = clock;
    }

    /** The address is the secret: it must not travel on in a referrer, a search index or a shared cache. */
    @ModelAttribute
    void keepToYourself(HttpServletResponse response) {
        response.setHeader("X-Robots-Tag", "noindex, nofollow, noarchive");
        response.setHeader("Referrer-Policy", "no-referrer");
        response.setHeader("Cache-Control", "no-store");
    }

    @GetMapping
    String show(@PathVariable String token, Model model) {
        UUID job = links.jobOf(token);
        links.seen(token);
        return page(token, job, FormErrors.none(), "", model);
    }

    @GetMapping("/bids/{bid}")
    String showBid(@PathVariable String token, @PathVariable UUID bid, Model model) {
        model.addAttribute("paper", paper(links.jobOf(token), bid));
        model.addAttribute("token", token);
        return "sharing/paper";
    }

    @GetMapping("/photos/{photo}")
    ResponseEntity<byte[]> showPhoto(@PathVariable String token, @PathVariable UUID photo) {
        return picture(links.jobOf(token), photo, false);
    }

    @GetMapping("/photos/{photo}/small")
    ResponseEntity<byte[]> showSmallPhoto(@PathVariable String token, @PathVariable UUID photo) {
        return picture(links.jobOf(token), photo, true);
    }

    private ResponseEntity<byte[]> picture(UUID job, UUID photo, boolean small) {
        byte[] jpeg = photos.pictureForClient(job, photo, small).orElseThrow(() -> new NotHere("photo"));
        return ResponseEntity.ok().contentType(MediaType.IMAGE_JPEG).body(jpeg);
    }

    /** Accepting twice is the same as once. */
    @PostMapping("/bids/{bid}/acceptance")
    String acceptBid(
            @PathVariable String token,
            @PathVariable UUID bid,
            @RequestParam(defaultValue = "") String name,
            Model model,
            HttpServletResponse response) {
        UUID job = links.jobOf(token);
        var unused = paper(job, bid);
        try {
            bids.acceptByLink(bid, job, name);
            return "redirect:/c/" + token + "?accepted";
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return page(token, job, FormErrors.of("name-" + bid, refused.sentence()), name, model);
        }
    }

    private BidPaper paper(UUID job, UUID bid) {
        return bids.papersForClient(job).stream()
                .filter(paper -> paper.id().equals(bid))
                .findFirst()
                .orElseThrow(() -> new NotHere("bid"));
    }

    private String page(String token, UUID job, FormErrors errors, String name, Model model) {
        List<ClientPage.Stage> stages = pages.stages(job);
        model.addAttribute("token", token);
        model.addAttribute("job", pages.job(job));
        model.addAttribute("stages", stages);
        model.addAttribute("stick", stick(stages));
        model.addAttribute("notes", pages.notes(job, false));
        model.addAttribute("visit", pages.visit(job));
        model.addAttribute("punch", pages.punchList(job));
        model.addAttribute(
                "photos", photos.forClient(job).stream().map(words::print).toList());
        model.addAttribute("papers", bids.papersForClient(job));
        model.addAttribute("errors", errors);
        model.addAttribute("name", name);
        model.addAttribute("asOf", clock.wallTime());
        return "sharing/client";
    }

    private static StoryStick stick(List<ClientPage.Stage> stages) {
        return StoryStick.progress(stages.stream().map(ClientController::mark).toList(), List.of());
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
