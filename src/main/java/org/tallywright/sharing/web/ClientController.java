package org.tallywright.sharing.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.tallywright.estimates.BidPaper;
import org.tallywright.estimates.BidPrinter;
import org.tallywright.estimates.Bids;
import org.tallywright.photos.PhotoRows;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.sharing.ClientLinks;
import org.tallywright.web.Access;
import org.tallywright.web.FormErrors;
import org.tallywright.web.PdfFile;

/** The client's page. The token is the only key: no account, no session; nothing of it is kept by search engines. */
@Controller
@RequestMapping("/c/{token}")
@Access(open = true)
class ClientController {
    private final ClientLinks links;
    private final ClientPages pages;
    private final Bids bids;
    private final BidPrinter printer;
    private final PhotoRows photos;

    ClientController(ClientLinks links, ClientPages pages, Bids bids, BidPrinter printer, PhotoRows photos) {
        this.links = links;
        this.pages = pages;
        this.bids = bids;
        this.printer = printer;
        this.photos = photos;
    }

    /** The address is the secret: it must not travel on in a referrer, a search index or a shared cache. */
    @ModelAttribute
    void keepToYourself(HttpServletResponse response) {
        ClientPages.keepToYourself(response);
    }

    @GetMapping
    String show(@PathVariable String token, Model model) {
        UUID job = links.jobOf(token);
        links.seen(token);
        return pages.page(token, job, AnswerForm.BLANK, FormErrors.none(), model);
    }

    @GetMapping("/bids/{bid}")
    String showBid(@PathVariable String token, @PathVariable UUID bid, Model model) {
        model.addAttribute("paper", pages.paper(links.jobOf(token), bid));
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

    @GetMapping("/bids/{bid}/paper.pdf")
    Object pdfOfBid(@PathVariable String token, @PathVariable UUID bid, Model model, HttpServletResponse response) {
        BidPaper paper = pages.paper(links.jobOf(token), bid);
        try {
            BidPrinter.Printed pdf = printer.print(paper.id());
            return PdfFile.answer(pdf.name(), pdf.bytes());
        } catch (Refused unprintable) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            model.addAttribute("said", unprintable.sentence());
            return showBid(token, bid, model);
        }
    }
}
