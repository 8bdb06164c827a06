package org.tallywright.photos.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
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
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.photos.PhotoDesk;
import org.tallywright.photos.PhotoDetails;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The photos of a job: sent, said something of, shown to the client, taken out and put back. */
@Controller
@RequestMapping("/jobs/{number}/photos")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class PhotoController {
    private final JobDesk jobs;
    private final PhotoDesk desk;
    private final PhotoPages pages;

    PhotoController(JobDesk jobs, PhotoDesk desk, PhotoPages pages) {
        this.jobs = jobs;
        this.desk = desk;
        this.pages = pages;
    }

    @GetMapping
    String index(
            @PathVariable String number,
            @RequestParam(defaultValue = "") String piece,
            @RequestParam(defaultValue = "") String caption,
            @RequestParam(defaultValue = "1") String page,
            SignedIn me,
            Model model) {
        int at = page.matches("\\d{1,4}") ? Integer.parseInt(page) : 1;
        return pages.sheet(number, PhotoForm.blank(piece, caption), FormErrors.none(), at, me, model);
    }

    @PostMapping
    String create(
            @PathVariable String number,
            PhotoForm form,
            @RequestParam(required = false) @Nullable List<MultipartFile> photos,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect)
            throws IOException {
        JobRef job = jobs.find(number);
        FormReader read = new FormReader();
        List<MultipartFile> files = Sent.chosen(photos);
        if (files.isEmpty()) {
            read.refuse("photos", "Choose a photo, or several.");
        } else if (files.size() > Sent.MOST) {
            read.refuse("photos", "Send at most " + Sent.MOST + " photos at once.");
        }
        PhotoDetails details = form.read(read);
        if (details != null) {
            try {
                Sent sent = new Sent();
                sent.keep(desk, job.id(), files, details, me);
                if (!sent.refusedSome()) {
                    Flash.done(redirect, sent.done());
                    return back(number);
                }
                read.refuse("photos", sent.refusal());
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return pages.sheet(number, form, read.errors(), 1, me, model);
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable String number, @PathVariable UUID id, SignedIn me, Model model) {
        JobRef job = jobs.find(number).guardOpen();
        return pages.edit(number, PhotoForm.of(desk.find(job.id(), id, me)), id, FormErrors.none(), me, model);
    }

    @PostMapping("/{id}")
    String update(
            @PathVariable String number,
            @PathVariable UUID id,
            PhotoForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        FormReader read = new FormReader();
        PhotoDetails details = form.read(read);
        if (details != null) {
            try {
                desk.change(job.id(), id, form.version() == null ? -1 : form.version(), details, me);
                Flash.done(redirect, "What is said of the photo is changed.");
                return back(number);
            } catch (Refused refused) {
                read.refuse(refused);
            } catch (Stale stale) {
                PhotoForm theirs = PhotoForm.of(desk.find(job.id(), id, me));
                throw new Stale(stale.what(), form.beside(theirs, pages.pieces(job.id())));
            }
        }
        var guard = desk.find(job.id(), id, me);
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return pages.edit(number, form, guard.id(), read.errors(), me, model);
    }

    @PostMapping("/{id}/showing")
    @Access(Role.OWNER)
    String show(
            @PathVariable String number,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "true") boolean shown,
            SignedIn me,
            RedirectAttributes redirect) {
        desk.show(jobs.find(number).id(), id, shown, me);
        Flash.done(redirect, shown ? "The client sees this photo now." : "The client no longer sees this photo.");
        return back(number);
    }

    @PostMapping("/{id}/removal")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        desk.remove(jobs.find(number).id(), id, me);
        Flash.done(redirect, "The photo is taken out. If that was a mistake, put it back here.");
        redirect.addFlashAttribute("takenOut", id);
        return back(number);
    }

    @PostMapping("/{id}/return")
    String putBack(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        desk.putBack(jobs.find(number).id(), id, me);
        Flash.done(redirect, "The photo is back.");
        return back(number);
    }

    private static String back(String number) {
        return "redirect:/jobs/" + number + "/photos";
    }
}
