package org.tallywright.estimates.web;

import java.util.UUID;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.tallywright.estimates.LineOrigins;
import org.tallywright.jobs.JobHead;
import org.tallywright.jobs.JobHeads;
import org.tallywright.web.Access;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

@Controller
@Access({Role.OWNER, Role.LEAD})
class EstimateController {
    private final JobHeads heads;
    private final EstimatePages pages;
    private final ObjectProvider<LineOrigins> origins;

    EstimateController(JobHeads heads, EstimatePages pages, ObjectProvider<LineOrigins> origins) {
        this.heads = heads;
        this.pages = pages;
        this.origins = origins;
    }

    @GetMapping("/jobs/{number}/estimate")
    String show(
            @PathVariable String number, @RequestParam(defaultValue = "piece") String by, SignedIn me, Model model) {
        JobHead head = heads.find(number, me, "estimate");
        model.addAttribute("head", head);
        model.addAttribute("page", pages.page(head.job(), by.equals("stage") ? "stage" : "piece", me));
        model.addAttribute("copied", copied(head.job().id()));
        return "estimates/show";
    }

    private LineOrigins.Origins copied(UUID job) {
        LineOrigins bean = origins.getIfAvailable();
        return bean == null ? LineOrigins.Origins.NONE : bean.of(job);
    }
}
