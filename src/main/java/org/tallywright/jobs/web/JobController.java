package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.clients.ClientBook;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobDetails;
import org.tallywright.jobs.JobHeads;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.Opening;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.Search;
import org.tallywright.web.SignedIn;

/** Opens a job, shows it, and changes what is written about it. */
@Controller
@RequestMapping("/jobs")
@Access({Role.OWNER, Role.LEAD})
class JobController {
    private final JobDesk desk;
    private final JobPages pages;
    private final JobHeads heads;
    private final JobPageRows rows;
    private final SiteChoice sites;
    private final ClientBook book;

    JobController(JobDesk desk, JobPages pages, JobHeads heads, JobPageRows rows, SiteChoice sites, ClientBook book) {
        this.desk = desk;
        this.pages = pages;
        this.heads = heads;
        this.rows = rows;
        this.sites = sites;
        this.book = book;
    }

    @GetMapping("/new")
    String blank(
            @RequestParam(defaultValue = "") String find,
            @RequestParam(defaultValue = "") String site,
            @RequestParam(defaultValue = "") String client,
            @RequestParam(defaultValue = "") String like,
            Model model,
            HttpServletResponse response) {
        Search search = Search.of(find, response);
        OpeningForm form = OpeningForm.blank().at(site, client);
        if (like.isEmpty()) {
            return blank(form, "", search, FormErrors.none(), model);
        }
        JobRef other = desk.find(like);
        return blank(form.titled(other.title()), other.number(), search, FormErrors.none(), model);
    }

    /** @param like number of the job that is to be copied from once this one is open; empty for none */
    private String blank(OpeningForm form, String like, Search find, FormErrors errors, Model model) {
        model.addAttribute("like", like);
        model.addAttribute("form", form);
        model.addAttribute("find", find);
        model.addAttribute("sites", sites.sites(find.words(), form.site()));
        model.addAttribute("clients", sites.clients(find.words(), form.client()));
        model.addAttribute("errors", errors);
        return "jobs/blank";
    }

    @PostMapping
    String create(
            OpeningForm form,
            @RequestParam(defaultValue = "") String like,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        String known = like.isEmpty() ? "" : desk.find(like).number();
        FormReader read = new FormReader();
        Opening opening = form.read(read, book);
        if (opening != null) {
            try {
                JobRef job = desk.open(opening, me.personId());
                Flash.done(redirect, "Job " + job.number() + " is open.");
                return "redirect:/jobs/" + job.number() + (known.isEmpty() ? "" : "/past-jobs/" + known);
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        Answer.refused(response);
        return blank(form, known, Search.NONE, read.errors(), model);
    }

    @GetMapping("/{number}")
    @Access({Role.OWNER, Role.LEAD, Role.HELPER})
    String show(@PathVariable String number, SignedIn me, Model model) {
        model.addAttribute("page", pages.page(number, me));
        model.addAttribute("decision", Decision.none());
        return "jobs/show";
    }

    @GetMapping("/{number}/edit")
    String edit(@PathVariable String number, SignedIn me, Model model) {
        JobRef job = desk.find(number).guardOpen();
        return edit(job, kept(job), FormErrors.none(), me, model);
    }

    private String edit(JobRef job, JobForm form, FormErrors errors, SignedIn me, Model model) {
        model.addAttribute("head", heads.find(job.number(), me, "job"));
        model.addAttribute("form", form);
        model.addAttribute("sites", sites.sites("", form.site()));
        model.addAttribute("errors", errors);
        return "jobs/edit";
    }

    private JobForm kept(JobRef job) {
        JobPageRows.JobRow row = rows.job(job.id());
        return new JobForm(
                row.version(),
                job.siteId().toString(),
                job.title(),
                row.promisedOn() == null ? "" : row.promisedOn().toString(),
                row.note());
    }

    @PostMapping("/{number}")
    String update(
            @PathVariable String number,
            JobForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = desk.find(number);
        FormReader read = new FormReader();
        JobDetails details = form.read(read, book);
        if (details != null) {
            try {
                desk.change(job.id(), form.version() == null ? -1 : form.version(), details, me.personId());
                Flash.done(redirect, "The job is changed.");
                return "redirect:/jobs/" + number;
            } catch (Refused refused) {
                read.refuse(refused);
            } catch (Stale stale) {
                throw new Stale(stale.what(), form.beside(kept(desk.find(number)), this::siteName));
            }
        }
        Answer.refused(response);
        return edit(job, form, read.errors(), me, model);
    }

    private String siteName(String site) {
        @Nullable UUID id = site.isEmpty() ? null : UUID.fromString(site);
        return id == null ? "" : sites.sites("", site).getOrDefault(site, "");
    }
}
