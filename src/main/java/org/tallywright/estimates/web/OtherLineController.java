package org.tallywright.estimates.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.estimates.CostSort;
import org.tallywright.estimates.EstimateLines;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.EstimateSheet;
import org.tallywright.estimates.OtherDraft;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.NotHere;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormSave;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

@Controller
@RequestMapping("/jobs/{number}/estimate/others")
@Access(Role.OWNER)
class OtherLineController {
    private static final Map<String, String> SORTS = Arrays.stream(CostSort.values())
            .collect(Collectors.toMap(CostSort::code, CostSort::label, (a, b) -> a, LinkedHashMap::new));

    private final JobDesk jobs;
    private final EstimateLines desk;
    private final EstimatePricer pricer;

    OtherLineController(JobDesk jobs, EstimateLines desk, EstimatePricer pricer) {
        this.jobs = jobs;
        this.desk = desk;
        this.pricer = pricer;
    }

    @GetMapping("/new")
    String blank(@PathVariable String number, Model model) {
        return page(jobs.find(number), OtherForm.blank(), FormErrors.none(), model);
    }

    @GetMapping("/{id}")
    String edit(@PathVariable String number, @PathVariable UUID id, Model model) {
        JobRef job = jobs.find(number);
        EstimateSheet.OtherRow row = pricer.sheet(job.id()).others().stream()
                .filter(o -> o.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new NotHere("cost"));
        return page(job, OtherForm.of(row), FormErrors.none(), model);
    }

    @PostMapping
    String create(
            @PathVariable String number,
            OtherForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        return new FormSave<OtherDraft>(form::read)
                .keeping(draft -> {
                    desk.save(job.id(), draft, me.personId());
                    Flash.done(redirect, "Cost kept.");
                    return "redirect:/jobs/" + job.number() + "/estimate"
                            + (form.another() ? "/others/new" : "#others");
                })
                .or(response, errors -> page(job, form, errors, model));
    }

    @PostMapping("/{id}/removal")
    String destroy(@PathVariable String number, @PathVariable UUID id, SignedIn me, RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        desk.removeOther(job.id(), id, me.personId());
        Flash.done(redirect, "Cost removed.");
        return "redirect:/jobs/" + job.number() + "/estimate#others";
    }

    private static String page(JobRef job, OtherForm form, FormErrors errors, Model model) {
        model.addAttribute("job", job);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("sorts", SORTS);
        return "estimates/other";
    }
}
