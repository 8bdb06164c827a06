package org.tallywright.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.ClientYes;
import org.tallywright.estimates.OptionDesk;
import org.tallywright.estimates.OptionDraft;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** Which job has a material that the shop had not had before. */
@AppTest
class UnfamiliarMaterialSqlTest {
    @Autowired
    WorkRows rows;

    @Autowired
    SampleEstimates estimates;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SamplePeople people;

    @Autowired
    SamplePast past;

    @Autowired
    PastReader reader;

    @Autowired
    OptionDesk options;

    @Autowired
    Bids bids;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;

    @BeforeEach
    void owner() {
        ada = people.owner();
    }

    private JobRef with(String title, UUID material) {
        JobRef job = jobs.lead(ada, title);
        estimates.material(job, null, material, "5", ada);
        return job;
    }

    @Test
    void theFirstJobOfAMaterialIsTheOneItIsNewTo() {
        UUID oak = estimates.whiteOak();
        UUID maple = estimates.material("maple", "Maple", "bf", "0.7", "9");
        JobRef first = with("First oak", oak);
        JobRef second = with("Second oak", oak);
        JobRef third = with("Oak and maple", oak);
        estimates.material(third, null, maple, "3", ada);
        assertThat(rows.unfamiliarJobs()).containsExactlyInAnyOrder(first.id(), third.id());
        assertThat(rows.isUnfamiliar(first.id())).isTrue();
        assertThat(rows.isUnfamiliar(second.id())).isFalse();
        assertThat(rows.isUnfamiliar(third.id())).isTrue();
    }

    @Test
    void anOptionThatWasLeftOutMakesNothingFamiliar() {
        UUID maple = estimates.material("maple", "Maple", "bf", "0.7", "9");
        JobRef first = estimates.windowSeat(ada);
        JobRef oakAgain = with(
                "Oak again",
                jdbc.sql("select id from material where code = 'white_oak'")
                        .query(UUID.class)
                        .single());
        UUID line = estimates.material(oakAgain, null, maple, "3", ada);
        options.save(oakAgain.id(), new OptionDraft(Ids.next(), null, "Maple", "", "", Set.of(line)), ada.personId());
        JobRef later = with("Maple later", maple);
        assertThat(rows.isUnfamiliar(oakAgain.id())).isTrue();
        assertThat(rows.isUnfamiliar(later.id())).isFalse();

        bids.acceptByLink(estimates.issued(oakAgain, ada), oakAgain.id(), new ClientYes("Orrin", Set.of(), ""));
        assertThat(rows.isUnfamiliar(oakAgain.id())).isFalse();
        assertThat(rows.isUnfamiliar(later.id())).isTrue();
        assertThat(rows.unfamiliarJobs()).containsExactlyInAnyOrder(first.id(), later.id());
    }

    @Test
    void newHingesMakeNoWorkUnfamiliar() {
        UUID hinge = estimates.material("hinge", "Hinge", "each", "1", "4");
        jdbc.sql("update material set material_group = 'hardware'").update();
        JobRef job = with("Cabinet", hinge);
        assertThat(rows.unfamiliarJobs()).isEmpty();
        assertThat(rows.isUnfamiliar(job.id())).isFalse();
    }

    @Test
    void itIsLearntWithTheTasksOfTheJob() {
        JobRef job = past.job(ada, SamplePast.FIRST, "1");
        JobRef other = past.job(ada, SamplePast.FIRST.plusMonths(1), "1");
        people.asShop(() -> jdbc.sql(
                        "insert into estimate (job_id, overhead_rate, contingency_percent, margin_percent, rounding_step_amount, version)"
                                + " values (?, 0, 0, 0, 0, 0)")
                .param(job.id())
                .update());
        people.asShop(() -> jdbc.sql("""
                        insert into estimate_material (id, job_id, material_id, net_quantity, yield, purchase_quantity, unit_price, amount, version)
                        values (gen_random_uuid(), ?, ?, 1, 1, 1, 1, 1, 0)""").params(job.id(), estimates.whiteOak()).update());
        assertThat(reader.read().tasks())
                .allSatisfy(task -> assertThat(task.conditions().contains("unfamiliar material"))
                        .isEqualTo(task.job().equals(job.id().toString())));
        assertThat(other.id()).isNotEqualTo(job.id());
    }
}
