package org.tallywright.jobs;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Refused;

/** A job for a client at a site, from the first call to the close. */
@Entity
@Table(name = "job")
public class Job {
    static final String CLOSED_SENTENCE = "The job is closed; reopen it to change this.";

    @Id
    private UUID id;

    private int year;
    private int sequence;
    private String number;
    private UUID clientId;
    private UUID siteId;
    private String title;

    @Enumerated(EnumType.STRING)
    private JobState state;

    private LocalDate openedOn;
    private @Nullable LocalDate acceptedOn;
    private @Nullable LocalDate promisedOn;
    private @Nullable LocalDate closedOn;
    private String note;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Job() {}

    Job(UUID id, JobNumber number, LocalDate openedOn, JobDetails details) {
        this.id = id;
        this.year = number.year();
        this.sequence = number.sequence();
        this.number = number.toString();
        this.state = JobState.LEAD;
        this.openedOn = openedOn;
        this.clientId = details.clientId();
        this.siteId = details.siteId();
        this.title = details.title();
        this.promisedOn = details.promisedOn();
        this.note = details.note();
    }

    JobDetails details() {
        return new JobDetails(clientId, siteId, title, promisedOn, note);
    }

    void change(JobDetails details) {
        guardOpen();
        clientId = details.clientId();
        siteId = details.siteId();
        title = details.title();
        promisedOn = details.promisedOn();
        note = details.note();
    }

    void promise(LocalDate on) {
        promisedOn = on;
    }

    void startBidding() {
        to(JobState.BIDDING);
    }

    void award(LocalDate on) {
        to(JobState.RUNNING);
        acceptedOn = on;
    }

    void lose() {
        to(JobState.LOST);
    }

    void close(LocalDate on) {
        to(JobState.CLOSED);
        closedOn = on;
    }

    /** A closed job runs again; a lost one goes back to where it was. */
    void reopen(JobState back) {
        to(back);
        closedOn = null;
    }

    private void to(JobState next) {
        if (!state.next().contains(next)) {
            throw new Refused("A job that is " + state.code() + " cannot become " + next.code() + ".");
        }
        state = next;
    }

    void guardOpen() {
        if (state == JobState.CLOSED) {
            throw new Refused(CLOSED_SENTENCE);
        }
    }

    public UUID id() {
        return id;
    }

    public String number() {
        return number;
    }

    public UUID clientId() {
        return clientId;
    }

    public UUID siteId() {
        return siteId;
    }

    public String title() {
        return title;
    }

    public JobState state() {
        return state;
    }

    public LocalDate openedOn() {
        return openedOn;
    }

    public @Nullable LocalDate acceptedOn() {
        return acceptedOn;
    }

    public @Nullable LocalDate promisedOn() {
        return promisedOn;
    }

    public @Nullable LocalDate closedOn() {
        return closedOn;
    }

    public int version() {
        return version == null ? 0 : version;
    }
}
