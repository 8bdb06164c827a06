package org.tallywright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.tallywright.jobs.JobHead;
import org.tallywright.jobs.JobState;
import org.tallywright.jobs.LoggedHours;
import org.tallywright.jobs.ShopDates;
import org.tallywright.shared.Hours;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.NavItem;
import org.tallywright.web.Role;
import org.tallywright.web.Search;
import org.tallywright.web.SignedIn;

/** All jobs: by state, by client, by words. */
@Controller
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class JobListController {
    private final JobListRows rows;
    private final ObjectProvider<LoggedHours> logged;
    private final ShopClock clock;
    private final ShopDates dates;

    JobListController(JobListRows rows, ObjectProvider<LoggedHours> logged, ShopClock clock, ShopDates dates) {
        this.rows = rows;
        this.logged = logged;
        this.clock = clock;
        this.dates = dates;
    }

    @GetMapping("/jobs")
    String index(
            SignedIn me,
            @RequestParam(required = false) @Nullable String state,
            @RequestParam(required = false) @Nullable String client,
            @RequestParam(defaultValue = "") String q,
            @RequestParam(required = false) @Nullable String sort,
            @RequestParam(required = false) @Nullable String page,
            Model model,
            HttpServletResponse response) {
        Search search = Search.of(q, response);
        model.addAttribute("search", search);
        model.addAttribute("page", page(JobFilter.of(state, client, search.words(), sort, page), me));
        return "jobs/index";
    }

    private JobListPage page(JobFilter filter, SignedIn me) {
        List<JobListRows.Row> found = rows.page(filter);
        Map<String, Integer> counts = rows.counts(filter.client());
        int all = counts.values().stream().mapToInt(Integer::intValue).sum();
        int total = total(filter, found, counts, all);
        Map<UUID, Integer> minutes = me.seesEstimates() ? minutes(found) : Map.of();
        return new JobListPage(
                filter,
                filter.client() == null
                        ? null
                        : rows.clientName(filter.client()).orElse(null),
                states(filter, counts, all),
                found.stream().map(row -> shown(row, minutes, me)).toList(),
                total,
                Math.max(1, (total + JobListRows.PAGE_SIZE - 1) / JobListRows.PAGE_SIZE),
                me.seesEstimates(),
                me.seesEstimates(),
                me.is(Role.OWNER),
                all == 0 && filter.client() == null);
    }

    /** The counts know it, but for a search. */
    private static int total(JobFilter filter, List<JobListRows.Row> found, Map<String, Integer> counts, int all) {
        if (!filter.q().isEmpty()) {
            return found.isEmpty() ? 0 : found.get(0).found();
        }
        return filter.state().equals(JobFilter.ALL) ? all : counts.getOrDefault(filter.state(), 0);
    }

    private Map<UUID, Integer> minutes(List<JobListRows.Row> found) {
        LoggedHours bean = logged.getIfAvailable();
        return bean == null || found.isEmpty()
                ? Map.of()
                : bean.totals(found.stream().map(JobListRows.Row::id).toList());
    }

    private static List<NavItem> states(JobFilter filter, Map<String, Integer> counts, int all) {
        List<NavItem> items = new ArrayList<>();
        for (JobState state :
                List.of(JobState.RUNNING, JobState.BIDDING, JobState.LEAD, JobState.CLOSED, JobState.LOST)) {
            String name = state == JobState.LEAD ? "Leads" : state.label();
            items.add(item(filter, state.code(), name, counts.getOrDefault(state.code(), 0)));
        }
        items.add(item(filter, JobFilter.ALL, "All", all));
        return items;
    }

    private static NavItem item(JobFilter filter, String state, String name, int count) {
        return new NavItem(state, name + " " + count, filter.withState(state), state.equals(filter.state()));
    }

    private JobListPage.Row shown(JobListRows.Row row, Map<UUID, Integer> minutes, SignedIn me) {
        LocalDate promised = row.promisedOn();
        int logged = minutes.getOrDefault(row.id(), 0);
        return new JobListPage.Row(
                row.number(),
                row.title(),
                row.client(),
                row.stage() == null ? "" : row.stage(),
                StateTags.of(row.state()),
                promised == null ? "" : dates.day(promised),
                row.state() == JobState.RUNNING && promised != null && promised.isBefore(clock.today()),
                me.seesEstimates()
                        ? JobHead.used(Hours.ofMinutes(logged), Hours.ofMinutes(row.estimatedMinutes()))
                        : null,
                me.seesEstimates() && row.estimatedMinutes() > 0 && logged > row.estimatedMinutes());
    }
}
