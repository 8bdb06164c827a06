package org.tallywright.daylog.web;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.tallywright.daylog.JobHours;
import org.tallywright.daylog.JobHours.Filter;
import org.tallywright.daylog.LateDays;
import org.tallywright.jobs.JobHead;
import org.tallywright.jobs.JobHeads;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** The hours tab of a job: every figure about its hours opens here, narrowed to the entries behind it. */
@Controller
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class JobHoursController {
    private final JobHeads heads;
    private final JobHours hours;
    private final ShopClock clock;

    JobHoursController(JobHeads heads, JobHours hours, ShopClock clock) {
        this.heads = heads;
        this.hours = hours;
        this.clock = clock;
    }

    @GetMapping("/jobs/{number}/hours")
    String index(
            @PathVariable String number,
            @RequestParam(defaultValue = "") String task,
            @RequestParam(name = "class", defaultValue = "") String hourClass,
            @RequestParam(defaultValue = "") String person,
            @RequestParam(defaultValue = "-date") String sort,
            @RequestParam(defaultValue = "1") int page,
            SignedIn me,
            Model model) {
        JobHead head = heads.find(number, me, "hours");
        boolean own = !me.seesEstimates();
        UUID whose = id(person);
        if (own && whose != null && !whose.equals(me.personId())) {
            throw new NotHere("person");
        }
        boolean noTask = task.equals("none");
        Filter filter = new Filter(
                head.job().id(),
                own ? me.personId() : whose,
                noTask ? null : id(task),
                noTask,
                hourClass(hourClass),
                sort,
                page);
        model.addAttribute("head", head);
        model.addAttribute("page", page(head.job().number(), filter, own, address(task, hourClass, person)));
        return "daylog/job-hours";
    }

    private JobHoursPage page(String number, Filter filter, boolean own, String narrowed) {
        String path = "/jobs/" + number + "/hours";
        List<JobHours.Sum> sums = hours.sums(filter);
        JobHours.Sum all = sums.stream()
                .filter(s -> s.of().equals("all"))
                .findFirst()
                .orElse(new JobHours.Sum("all", "", "", 0, 0));
        List<JobHoursPage.Group> groups = Stream.of("task", "class", "person")
                .filter(of -> !(own && of.equals("person")))
                .map(of -> new JobHoursPage.Group(of, of(sums, of, path)))
                .filter(group -> !group.sums().isEmpty())
                .toList();
        return new JobHoursPage(
                path,
                narrowed.isEmpty() ? null : only(filter, sums),
                path + narrowed,
                filter.sort(),
                filter.page(),
                (all.entries() + JobHours.PAGE - 1) / JobHours.PAGE,
                all.entries(),
                Hours.ofMinutes(all.minutes()),
                groups,
                hours.page(filter).stream().map(this::row).toList(),
                own);
    }

    private static List<JobHoursPage.Sum> of(List<JobHours.Sum> sums, String of, String path) {
        return sums.stream()
                .filter(sum -> sum.of().equals(of))
                .map(sum -> new JobHoursPage.Sum(
                        sum.name(),
                        Hours.ofMinutes(sum.minutes()),
                        sum.entries(),
                        path + "?" + of + "=" + sum.key().replace(" ", "+")))
                .toList();
    }

    private static String only(Filter filter, List<JobHours.Sum> sums) {
        return String.join(
                ", ",
                Stream.of(
                                filter.task() == null && !filter.noTask() ? null : first(sums, "task"),
                                filter.hourClass() == null
                                        ? null
                                        : filter.hourClass().label(),
                                filter.person() == null ? null : first(sums, "person"))
                        .filter(java.util.Objects::nonNull)
                        .toList());
    }

    private static @Nullable String first(List<JobHours.Sum> sums, String of) {
        return sums.stream()
                .filter(s -> s.of().equals(of))
                .map(JobHours.Sum::name)
                .findFirst()
                .orElse("nothing yet");
    }

    private JobHoursPage.Row row(JobHours.Row row) {
        LocalDate logged = clock.dateOf(row.loggedAt());
        String words = Stream.of(row.reason(), row.note())
                .filter(text -> !text.isEmpty())
                .reduce((one, other) -> one + "; " + other)
                .orElse("");
        return new JobHoursPage.Row(
                row.id(),
                DayWords.shortDay(row.date()) + " " + row.date().getYear(),
                row.person(),
                row.task() == null ? "" : row.task(),
                row.hourClass().label().toLowerCase(Locale.ROOT),
                Hours.ofMinutes(row.minutes()),
                words,
                !row.correction() && LateDays.late(row.date(), logged),
                row.correction());
    }

    private static String address(String task, String hourClass, String person) {
        String joined = String.join(
                "&",
                Stream.of(part("task", task), part("class", hourClass), part("person", person))
                        .filter(part -> !part.isEmpty())
                        .toList());
        return joined.isEmpty() ? "" : "?" + joined;
    }

    private static String part(String name, String value) {
        return value.isEmpty() ? "" : name + "=" + value.replace(" ", "+");
    }

    private static @Nullable UUID id(String text) {
        if (text.isEmpty()) {
            return null;
        }
        try {
            if (text.length() == 36) {
                return UUID.fromString(text);
            }
        } catch (IllegalArgumentException e) {
            // Said below.
        }
        throw new NotHere("entry");
    }

    private static @Nullable HourClass hourClass(String text) {
        try {
            return text.isEmpty() ? null : HourClass.of(text);
        } catch (NotUnderstood e) {
            throw new NotHere("hour class");
        }
    }
}
