package org.tallywright.daylog.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.tallywright.daylog.DayReads;
import org.tallywright.daylog.Place;
import org.tallywright.shared.ShopAccount;

/** What a row offers to log on: short on the page that is opened each day, everything when asked for. */
@Component
class DayChoices {
    private static final int SHORT = 60;
    private static final int ALL = 400;
    private static final List<DayPage.Choice> SHOP = Stream.of(ShopAccount.values())
            .map(account -> new DayPage.Choice("shop:" + account.code(), account.label()))
            .toList();

    private final DayReads reads;

    DayChoices(DayReads reads) {
        this.reads = reads;
    }

    List<DayPage.Choices> of(boolean all) {
        List<Place> tasks = reads.openTasks(all ? ALL : SHORT);
        List<DayPage.Choices> groups = new ArrayList<>();
        Map<String, List<DayPage.Choice>> byJob = new LinkedHashMap<>();
        for (Place job : reads.openJobs()) {
            byJob.computeIfAbsent(job.number() + " " + job.jobTitle(), n -> new ArrayList<>())
                    .add(new DayPage.Choice(job.target().code(), job.number() + ", no task"));
        }
        if (all || tasks.size() <= SHORT) {
            for (Place task : tasks) {
                byJob.computeIfAbsent(task.number() + " " + task.jobTitle(), n -> new ArrayList<>())
                        .add(new DayPage.Choice(task.target().code(), task.name()));
            }
        }
        byJob.forEach((job, choices) -> groups.add(new DayPage.Choices(job, choices)));
        groups.add(new DayPage.Choices("The shop's own account", SHOP));
        if (all) {
            List<DayPage.Choice> closed =
                    reads.closedJobs().stream().map(DayChoices::inFull).toList();
            groups.add(new DayPage.Choices("Closed, call-backs only", closed));
        }
        return groups;
    }

    /** Everything that a day line may mean. */
    List<Place> places() {
        List<Place> all = new ArrayList<>(reads.openTasks(ALL));
        all.addAll(reads.openJobs());
        Stream.of(ShopAccount.values()).map(Place::ofShop).forEach(all::add);
        return all;
    }

    static DayPage.Choice inFull(Place place) {
        String where = place.target().taskId() == null ? place.jobTitle() : place.name();
        return new DayPage.Choice(
                place.target().code(), place.number().isEmpty() ? place.name() : place.number() + " " + where);
    }
}
