package org.tallywright.past.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.UUID;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.past.SamplePast;
import org.tallywright.web.SignedIn;

/** What the material of one piece cost, where of some pieces nobody knows. */
@AppTest
class BuiltFiguresWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePast sample;

    @Autowired
    SampleJobs jobs;

    @Autowired
    JdbcClient jdbc;

    SamplePast.Built built;

    @BeforeEach
    void buildOne() {
        built = sample.running();
    }

    private String figures(SignedIn who) throws Exception {
        return Jsoup.parse(mvc.perform(get("/past?kind=" + built.kind()).with(signedIn(who)))
                        .andExpect(status().isOk())
                        .andReturn()
                        .getResponse()
                        .getContentAsString())
                .select(".figures")
                .text();
    }

    /** A built seat of the same kind; nothing was bought for its job. */
    private UUID another(JobRef job) {
        SignedIn owner = built.seat().owner();
        UUID piece = jobs.piece(job, "Seat, south", "48", "18", "15", owner);
        jdbc.sql("update piece set piece_kind_id = ? where id = ?")
                .params(built.kind(), piece)
                .update();
        UUID kind = jdbc.sql("select id from task_kind where code = 'rip_hardwood'")
                .query(UUID.class)
                .single();
        UUID task = jobs.task(job, piece, kind, "80", owner);
        jdbc.sql("update task set state = 'done', done_on = date '2026-11-12', quantity_done = 80 where id = ?")
                .param(task)
                .update();
        return piece;
    }

    /** Oak 601.00 and screws 5.00 of the only piece of its job. */
    @Test
    void namesHowManyHaveNoFigure() throws Exception {
        assertThat(figures(built.seat().owner()))
                .contains("Material for one piece $606.00 1 built, too few for a range")
                .doesNotContain("without a figure");

        another(jobs.running(built.seat().owner(), "Seat for the study"));

        assertThat(figures(built.seat().owner()))
                .contains("Material for one piece $606.00 1 built, too few for a range; 1 more without a figure");
        assertThat(figures(built.seat().lead())).doesNotContain("Material", "without a figure");
    }

    /** A second piece in the job of the first: the oak and screws that no line gives to either are nobody's. */
    @Test
    void saysSoWhereItKnowsOfNone() throws Exception {
        another(built.seat().job());

        assertThat(figures(built.seat().owner()))
                .contains("Material for one piece not known")
                .doesNotContain("$");
        assertThat(figures(built.seat().lead())).doesNotContain("Material", "not known");
    }
}
