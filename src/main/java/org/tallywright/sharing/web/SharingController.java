package org.tallywright.sharing.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobHeads;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.sharing.ClientLinks;
import org.tallywright.sharing.ClientPage;
import org.tallywright.sharing.SharingDesk;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** What the client of a job may see: links, notes, the next visit. */
@Controller
@RequestMapping("/jobs/{number}/sharing")
@Access(Role.OWNER)
class SharingController {
    private final JobHeads heads;
    private final JobDesk jobs;
    private final ClientLinks links;
    private final ClientPage pages;
    private final SharingDesk desk;
    private final ShopClock clock;

    SharingController(
            JobHeads heads, JobDesk jobs, ClientLinks links, ClientPage pages, SharingDesk desk, ShopClock clock) {
        this.heads = heads;
        this.jobs = jobs;
        this.links = links;
        this.pages = pages;
        this.desk = desk;
        this.clock = clock;
    }

    @GetMapping
    String show(@PathVariable String number, SignedIn me, Model model) {
        return page(number, me, SharingForm.BLANK, FormErrors.none(), model);
    }

    /** The address is in this answer and nowhere else. */
    @PostMapping("/links")
    String createLink(
            @PathVariable String number,
            SharingForm form,
            SignedIn me,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response) {
        UUID job = jobs.find(number).id();
        FormReader read = new FormReader();
        Integer days = read.field("days", () -> days(SharingForm.text(form.days())));
        String token = days == null
                ? null
                : read.field("label", () -> links.make(job, SharingForm.text(form.label()), days, me.personId()));
        if (token == null) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return page(number, me, form, read.errors(), model);
        }
        model.addAttribute(
                "address",
                ServletUriComponentsBuilder.fromContextPath(request)
                        .path("/c/{token}")
                        .buildAndExpand(token)
                        .toUriString());
        return page(number, me, SharingForm.BLANK, FormErrors.none(), model);
    }

    @PostMapping("/links/{link}/revocation")
    String revokeLink(@PathVariable String number, @PathVariable UUID link, SignedIn me, RedirectAttributes redirect) {
        links.revoke(jobs.find(number).id(), link, me.personId());
        Flash.done(redirect, "The link no longer opens anything.");
        return back(number);
    }

    @PostMapping("/notes")
    String createNote(
            @PathVariable String number,
            SharingForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        FormReader read = new FormReader();
        UUID job = jobs.find(number).id();
        UUID id = form.id() == null ? Ids.next() : form.id();
        read.field("text", () -> {
            desk.write(id, job, SharingForm.text(form.text()), "true".equals(form.shown()), me.personId());
            return id;
        });
        if (read.refused()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return page(number, me, form, read.errors(), model);
        }
        Flash.done(redirect, "The note is kept.");
        return back(number);
    }

    @PostMapping("/notes/{note}/showing")
    String showNote(
            @PathVariable String number,
            @PathVariable UUID note,
            @RequestParam(defaultValue = "true") boolean shown,
            SignedIn me,
            RedirectAttributes redirect) {
        desk.show(jobs.find(number).id(), note, shown, me.personId());
        Flash.done(redirect, shown ? "The client sees this note now." : "The client no longer sees this note.");
        return back(number);
    }

    @PostMapping("/notes/{note}/removal")
    String destroyNote(@PathVariable String number, @PathVariable UUID note, SignedIn me, RedirectAttributes redirect) {
        desk.remove(jobs.find(number).id(), note, me.personId());
        Flash.done(redirect, "The note is removed.");
        return back(number);
    }

    @PostMapping("/visit")
    String updateVisit(
            @PathVariable String number,
            SharingForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        UUID job = jobs.find(number).id();
        if (SharingForm.text(form.from()).isBlank()
                && SharingForm.text(form.to()).isBlank()) {
            desk.noVisit(job, form.version(), me.personId());
            Flash.done(redirect, "No visit is announced.");
            return back(number);
        }
        FormReader read = new FormReader();
        LocalDate from = read.field("from", () -> day(SharingForm.text(form.from())));
        LocalDate to = read.field("to", () -> day(SharingForm.text(form.to())));
        if (from != null && to != null) {
            try {
                desk.visit(job, from, to, SharingForm.text(form.visitNote()), form.version(), me.personId());
            } catch (Refused refused) {
                read.refuse(refused.field() == null ? refused.at("visitNote") : refused);
            }
        }
        if (read.refused()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return page(number, me, form, read.errors(), model);
        }
        Flash.done(redirect, "The client sees the next visit.");
        return back(number);
    }

    private String page(String number, SignedIn me, SharingForm form, FormErrors errors, Model model) {
        var head = heads.find(number, me, "sharing");
        UUID job = head.job().id();
        ClientPage.Visit visit = pages.visit(job);
        model.addAttribute("head", head);
        model.addAttribute("number", number);
        model.addAttribute("links", links.of(job));
        model.addAttribute("now", clock.now());
        model.addAttribute("zone", clock.zone());
        model.addAttribute("notes", pages.notes(job, true));
        model.addAttribute("form", form == SharingForm.BLANK ? SharingForm.of(Ids.next(), visit) : form);
        model.addAttribute("visit", visit);
        model.addAttribute("errors", errors);
        return "sharing/show";
    }

    private static String back(String number) {
        return "redirect:/jobs/" + number + "/sharing";
    }

    private static int days(String typed) {
        if (!typed.strip().matches("\\d{1,4}")) {
            throw new Refused("Give a number of days, such as 90.");
        }
        return Integer.parseInt(typed.strip());
    }

    private static LocalDate day(@Nullable String typed) {
        try {
            LocalDate day = LocalDate.parse(SharingForm.text(typed).strip());
            if (day.getYear() < 2000 || day.getYear() > 2199) {
                throw new Refused("This day is too far away.");
            }
            return day;
        } catch (DateTimeParseException notDate) {
            throw new Refused("Give a day, such as 2026-12-01.");
        }
    }
}
