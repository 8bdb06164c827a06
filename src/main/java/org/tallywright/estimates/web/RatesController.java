package org.tallywright.estimates.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.tallywright.estimates.EstimateDesk;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.EstimateRates;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.people.People;
import org.tallywright.people.PersonName;
import org.tallywright.people.Wages;
import org.tallywright.shared.Money;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.ShopConventions;
import org.tallywright.web.Access;
import org.tallywright.web.Flash;
import org.tallywright.web.FormErrors;
import org.tallywright.web.FormReader;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Who does the work and what an hour costs, overhead, contingency, margin, rounding and tax of one job. */
@Controller
@RequestMapping("/jobs/{number}/estimate/rates")
@Access(Role.OWNER)
class RatesController {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    private final JobDesk jobs;
    private final EstimateDesk desk;
    private final EstimatePricer pricer;
    private final People people;
    private final Wages wages;
    private final ShopClock clock;
    private final ShopConventions shop;

    RatesController(
            JobDesk jobs,
            EstimateDesk desk,
            EstimatePricer pricer,
            People people,
            Wages wages,
            ShopClock clock,
            ShopConventions shop) {
        this.jobs = jobs;
        this.desk = desk;
        this.pricer = pricer;
        this.people = people;
        this.wages = wages;
        this.clock = clock;
        this.shop = shop;
    }

    /** A person to give a share to; {@code cost} of his hour today, in words. */
    record Member(String field, String name, String share, String cost) {}

    @GetMapping
    String edit(@PathVariable String number, Model model) {
        JobRef job = jobs.find(number);
        return page(job, RatesForm.of(pricer.of(job.id())), FormErrors.none(), model);
    }

    @PostMapping
    String update(
            @PathVariable String number,
            RatesForm form,
            SignedIn me,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        JobRef job = jobs.find(number);
        FormReader read = new FormReader();
        EstimateRates rates = form.read(read, crew(pricer.of(job.id())));
        if (rates != null) {
            try {
                desk.price(job.id(), form.version(), rates, me.personId());
                Flash.done(redirect, "Rates kept.");
                return "redirect:/jobs/" + job.number() + "/estimate#price";
            } catch (Refused refused) {
                read.refuse(refused);
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        return page(job, form, read.errors(), model);
    }

    /** The crew of today, and whoever has a share still. */
    private List<PersonName> crew(WorkingSum working) {
        List<PersonName> crew = new ArrayList<>(people.crew());
        working.rates().crew().stream()
                .filter(share -> crew.stream().noneMatch(p -> p.id().equals(share.personId())))
                .map(share -> people.named(share.personId()))
                .forEach(crew::add);
        return crew;
    }

    private String page(JobRef job, RatesForm form, FormErrors errors, Model model) {
        model.addAttribute("job", job);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute(
                "crew",
                crew(pricer.of(job.id())).stream().map(p -> member(p, form)).toList());
        return "estimates/rates";
    }

    private Member member(PersonName person, RatesForm form) {
        return new Member(
                "shares[" + person.id() + "]", person.name(), form.share(person.id()), cost(wages.of(person.id())));
    }

    /** What an hour costs today, by which it is priced, and from which day it will cost something else. */
    private String cost(List<Wages.Row> newestFirst) {
        LocalDate today = clock.today();
        String now = newestFirst.stream()
                .filter(wage -> !wage.fromDate().isAfter(today))
                .findFirst()
                .map(wage -> hour(wage) + " an hour with burden")
                .orElse("no wage known today");
        return newestFirst.stream()
                .filter(wage -> wage.fromDate().isAfter(today))
                .reduce((later, sooner) -> sooner)
                .map(next -> now + "; " + hour(next) + " from " + DAY.format(next.fromDate()) + ", not counted here")
                .orElse(now);
    }

    private String hour(Wages.Row wage) {
        return shop.money().format(Money.of(wage.burdenedAmount()));
    }
}
