package org.tallywright.daylog;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Tells the rest of the house of hours that came to a job after it was closed. */
@Component
class ClosedJobs {
    private final ApplicationEventPublisher events;

    ClosedJobs(ApplicationEventPublisher events) {
        this.events = events;
    }

    /** @param touched where hours were written or stood before */
    void touched(Stream<Place> touched) {
        Set<UUID> said = new HashSet<>();
        touched.filter(Place::closed).forEach(place -> {
            UUID job = place.jobId();
            if (job != null && said.add(job)) {
                events.publishEvent(new HoursOfClosedJob(job, place.number()));
            }
        });
    }
}
