package org.tallywright.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.web.SignedIn;

@AppTest
class JobDeskSqlTest {
    @Autowired
    JobDesk desk;

    @Autowired
    SampleJobs sample;

    @Autowired
    SamplePeople people;

    @Autowired
    JdbcClient jdbc;

    @Test
    void numbersJobsByYearAndSequence() {
        SignedIn ada = people.owner();
        assertThat(sample.lead(ada, "Linen cupboard").number()).isEqualTo("26-001");
        assertThat(sample.lead(ada, "Alcoves").number()).isEqualTo("26-002");
    }

    @Test
    void givesTwoOpeningsAtOnceTwoNumbers() throws Exception {
        SignedIn ada = people.owner();
        UUID client = sample.client("Lio Candrake");
        UUID site = sample.site(client, "2 Mill Row");
        List<Callable<JobRef>> openings = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            JobDetails details = new JobDetails(client, site, "Study " + i, null, "");
            openings.add(() -> desk.open(Ids.next(), details, ada.personId()));
        }
        assertThat(atOnce(openings))
                .extracting(JobRef::number)
                .doesNotHaveDuplicates()
                .hasSize(8);
        assertThat(jdbc.sql("select max(sequence) from job")
                        .query(Integer.class)
                        .single())
                .isEqualTo(8);
    }

    @Test
    void takesADoubleSubmitForOneJob() throws Exception {
        SignedIn ada = people.owner();
        UUID client = sample.client("Lio Candrake");
        JobDetails details = new JobDetails(client, sample.site(client, "2 Mill Row"), "Study", null, "");
        UUID id = Ids.next();
        List<JobRef> opened = atOnce(
                List.of(() -> desk.open(id, details, ada.personId()), () -> desk.open(id, details, ada.personId())));
        assertThat(opened.get(0).number()).isEqualTo(opened.get(1).number());
        assertThat(count("job")).isEqualTo(1);
        assertThat(count("job_event")).isEqualTo(1);
    }

    private static <T> List<T> atOnce(List<Callable<T>> calls) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(calls.size());
        try {
            List<T> results = new ArrayList<>();
            for (Future<T> future : threads.invokeAll(calls, 30, TimeUnit.SECONDS)) {
                results.add(future.get());
            }
            return results;
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void refusesASiteOfAnotherClient() {
        SignedIn ada = people.owner();
        UUID elsewhere = sample.site(sample.client("Wilda Kettrow"), "1 High Street");
        JobDetails details = new JobDetails(sample.client("Lio Candrake"), elsewhere, "Study", null, "");
        assertThatThrownBy(() -> desk.open(Ids.next(), details, ada.personId()))
                .isInstanceOf(Refused.class)
                .hasMessage("Pick a site of this client.");
        assertThat(count("job")).isZero();
    }

    @Test
    void refusesAChangeOfAnOlderVersion() {
        SignedIn ada = people.owner();
        JobRef job = sample.lead(ada, "Study");
        JobDetails first = new JobDetails(job.clientId(), job.siteId(), "Study with desk", null, "");
        JobDetails second = new JobDetails(job.clientId(), job.siteId(), "Study, oak", null, "");
        desk.change(job.id(), 0, first, ada.personId());
        desk.change(job.id(), 0, first, ada.personId());
        assertThatThrownBy(() -> desk.change(job.id(), 0, second, ada.personId()))
                .isInstanceOf(Stale.class);
        assertThat(desk.get(job.id()).title()).isEqualTo("Study with desk");
    }

    @Test
    void goesFromLeadOverBiddingToRunningAndKeepsTheRecord() {
        SignedIn ada = people.owner();
        JobRef job = sample.lead(ada, "Study");
        desk.startBidding(job.id(), ada.personId());
        desk.startBidding(job.id(), ada.personId());
        desk.award(job.id(), LocalDate.of(2026, 11, 24), ada.personId(), "by telephone");
        desk.award(job.id(), LocalDate.of(2026, 11, 25), ada.personId(), "again");
        assertThat(desk.get(job.id()).state()).isEqualTo(JobState.RUNNING);
        assertThat(steps(job)).containsExactly("->lead", "lead->bidding", "bidding->running");
        assertThat(jdbc.sql("select accepted_on from job")
                        .query(LocalDate.class)
                        .single())
                .isEqualTo(LocalDate.of(2026, 11, 24));
    }

    @Test
    void bringsALostJobBackToWhereItWas() {
        SignedIn ada = people.owner();
        JobRef job = sample.lead(ada, "Study");
        desk.startBidding(job.id(), ada.personId());
        desk.lose(job.id(), "took another", ada.personId());
        assertThat(desk.get(job.id()).state()).isEqualTo(JobState.LOST);
        desk.reopen(job.id(), "changed their mind", ada.personId());
        assertThat(desk.get(job.id()).state()).isEqualTo(JobState.BIDDING);
    }

    @Test
    void takesCallBacksOnlyWhenClosed() {
        SignedIn ada = people.owner();
        JobRef job = sample.running(ada, "Study");
        assertThat(desk.takesEntries(job.id(), HourClass.DIRECT)).isTrue();
        desk.close(job.id(), Closing.PLAIN, ada.personId());
        assertThat(desk.takesEntries(job.id(), HourClass.DIRECT)).isFalse();
        assertThat(desk.takesEntries(job.id(), HourClass.CALL_BACK)).isTrue();
        desk.guardEntry(job.id(), HourClass.CALL_BACK);
        assertThatThrownBy(() -> desk.guardEntry(job.id(), HourClass.DIRECT)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> desk.holdOpen(job.id(), ada.personId()))
                .hasMessage("The job is closed; reopen it to change this.");
    }

    @Test
    void knowsNothingOfAnUnknownNumber() {
        assertThatThrownBy(() -> desk.find("26-999")).isInstanceOf(NotHere.class);
        assertThatThrownBy(() -> desk.get(Ids.next())).isInstanceOf(NotHere.class);
    }

    private List<String> steps(JobRef job) {
        return jdbc.sql("select from_state || '->' || to_state from job_event where job_id = ? order by at, id")
                .param(job.id())
                .query(String.class)
                .list();
    }

    private int count(String table) {
        return jdbc.sql("select count(*) from " + table).query(Integer.class).single();
    }
}
