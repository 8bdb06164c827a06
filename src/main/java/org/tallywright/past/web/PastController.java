package org.tallywright.past.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.past.BuiltSearch;
import org.tallywright.past.WholeJobs;
import org.tallywright.takeoff.PieceFacts;
import org.tallywright.web.Access;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.Search;
import org.tallywright.web.SignedIn;

/** Pieces built before, with their ranges, and whole jobs; to look at, or to copy into a job that is being estimated. */
@Controller
@RequestMapping("/past")
@Access({Role.OWNER, Role.LEAD})
class PastController {
    private final JobDesk jobs;
    private final BuiltPages pages;
    private final PieceFacts pieces;
    private final PastWords words;

    PastController(JobDesk jobs, BuiltPages pages, PieceFacts pieces, PastWords words) {
        this.jobs = jobs;
        this.pages = pages;
        this.pieces = pieces;
        this.words = words;
    }

    @GetMapping
    String index(BuiltForm asked, SignedIn me, Model model, HttpServletResponse response) {
        JobRef job = job(asked);
        BuiltForm form = job == null ? asked : likeness(asked, job);
        Search typed = Search.of(form.q(), response);
        FormReader read = new FormReader();
        BuiltSearch search = form.search(read, typed.words(), words.units(), job == null ? null : job.id());
        if (read.refused()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        }
        model.addAttribute("search", typed);
        model.addAttribute("errors", read.errors());
        model.addAttribute("page", pages.pieces(form, search, job, me));
        return "past/pieces";
    }

    @GetMapping("/jobs")
    String jobs(BuiltForm form, Model model, HttpServletResponse response) {
        JobRef job = job(form);
        Search search = Search.of(form.q(), response);
        List<WholeJobs.Row> rows = pages.jobs(search.words(), job, form.pageNumber());
        int found = rows.isEmpty() ? 0 : rows.get(0).total();
        model.addAttribute("search", search);
        model.addAttribute("form", form);
        model.addAttribute("job", job == null ? null : job.number());
        model.addAttribute("tabs", BuiltPages.tabs(form, "/past/jobs"));
        model.addAttribute("rows", rows.stream().map(pages::jobRow).toList());
        model.addAttribute("pages", BuiltPages.pages(found));
        model.addAttribute("number", form.pageNumber());
        model.addAttribute("path", form.path("/past/jobs"));
        return "past/jobs";
    }

    private BuiltForm likeness(BuiltForm form, JobRef job) {
        return pieces.ofJob(job.id()).stream()
                .filter(piece -> piece.id().toString().equals(form.piece()))
                .findFirst()
                .map(piece -> form.likeness(piece, words))
                .orElse(form);
    }

    /** The job that is being estimated, where somebody comes from one. */
    private @Nullable JobRef job(BuiltForm form) {
        return form.job().isEmpty() ? null : jobs.find(form.job());
    }
}
