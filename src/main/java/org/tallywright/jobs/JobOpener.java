package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.tallywright.clients.ClientBook;
import org.tallywright.clients.ClientDesk;
import org.tallywright.clients.SiteCard;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Stale;
import org.tallywright.trail.Trail;

/** The first line of a job: its number, its client and its site. */
@Component
class JobOpener {
    private final Jobs jobs;
    private final JobNumbers numbers;
    private final JobRefs refs;
    private final JobHistory history;
    private final Trail trail;
    private final ShopClock clock;
    private final ClientDesk clients;
    private final ClientBook book;

    JobOpener(
            Jobs jobs,
            JobNumbers numbers,
            JobRefs refs,
            JobHistory history,
            Trail trail,
            ShopClock clock,
            ClientDesk clients,
            ClientBook book) {
        this.jobs = jobs;
        this.numbers = numbers;
        this.refs = refs;
        this.history = history;
        this.trail = trail;
        this.clock = clock;
        this.clients = clients;
        this.book = book;
    }

    JobRef open(Opening opening, UUID by) {
        trail.by(by);
        if (opening.newClient() != null) {
            clients.save(opening.newClient());
        }
        if (opening.newSite() != null) {
            clients.save(opening.newSite());
        }
        // Written now: what follows looks the site up by SQL.
        jobs.flush();
        return open(opening.id(), opening.details(), by);
    }

    JobRef open(UUID id, JobDetails details, UUID by) {
        trail.by(by);
        numbers.lock();
        Job known = jobs.findById(id).orElse(null);
        if (known != null) {
            return repeated(known, details);
        }
        refs.guardSite(details);
        LocalDate today = clock.today();
        Job job = jobs.saveAndFlush(new Job(id, numbers.next(today), today, details));
        history.job(id, "", job.state(), today, by, "");
        return JobRef.of(job);
    }

    private JobRef repeated(Job known, JobDetails details) {
        if (!known.details().equals(details)) {
            throw new Stale("job", beside(known.details(), details));
        }
        return JobRef.of(known);
    }

    private List<Stale.Row> beside(JobDetails theirs, JobDetails yours) {
        return List.of(
                new Stale.Row("Site", address(theirs), address(yours)),
                new Stale.Row("Title", theirs.title(), yours.title()),
                new Stale.Row("Promised", promised(theirs), promised(yours)),
                new Stale.Row("Internal note", theirs.note(), yours.note()));
    }

    private String address(JobDetails details) {
        return book.site(details.siteId()).map(SiteCard::address).orElse("");
    }

    private static String promised(JobDetails details) {
        return details.promisedOn() == null ? "" : details.promisedOn().toString();
    }
}
