package org.tallywright.calibration.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.calibration.HeldWork;
import org.tallywright.calibration.SamplePast;
import org.tallywright.jobs.JobRef;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

@AppTest
class RecordWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePast past;

    @Autowired
    SamplePeople people;

    @Autowired
    HeldWork held;

    @Autowired
    JdbcClient jdbc;

    private ResultActions see(SignedIn me, String path) throws Exception {
        return mvc.perform(get(path).with(signedIn(me)));
    }

    @Test
    void hasNothingToJudgeAtFirst() throws Exception {
        see(people.owner(), "/calibration")
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("No finished job to judge yet")));
    }

    @Test
    void judgesEveryFinishedJobInWords() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 5, "1.1");
        see(ada, "/calibration")
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Of 5 finished jobs, 5 ended inside the range")))
                .andExpect(content().string(containsString("the true rate may be anywhere between 77 % and 100 %")))
                .andExpect(content().string(containsString("stayed under their P80")))
                .andExpect(content().string(containsString("rework")));
    }

    @Test
    void pointsOutHoursThatAreTheEstimate() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 4, "1");
        see(ada, "/calibration")
                .andExpect(
                        content().string(containsString("8 of 8 tasks of Ada Fenn took the estimate to the minute")));
    }

    @Test
    void namesWhatCouldNotBeLearntFrom() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 2, "1.2");
        JobRef odd = past.job(ada, SamplePast.FIRST.plusMonths(5), "0.01");
        people.asShop(() -> jdbc.sql("delete from time_entry where job_id = ? and minutes = 1")
                .param(odd.id())
                .update());
        past.calibrated();
        see(ada, "/calibration")
                .andExpect(content()
                        .string(containsString("1 task of job " + odd.number() + " left out: no hours logged.")))
                .andExpect(content()
                        .string(containsString("1 task of job " + odd.number()
                                + " cut: more than twenty times off its starting rate.")));
    }

    @Test
    void saysThatHoursThatNeverDifferStillHaveARange() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 8, "1.25");
        see(ada, "/calibration").andExpect(content().string(containsString("narrow but never a point")));
    }

    @Test
    void leavesAJobOutWithAReasonAndSaysWhatChanged() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 3, "1");
        JobRef odd = past.job(ada, SamplePast.FIRST.plusMonths(5), "3");
        past.calibrated();
        String job = odd.id().toString();
        mvc.perform(post("/calibration/left-out").param("job", job).with(csrf()).with(signedIn(ada)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Say why")));
        mvc.perform(post("/calibration/left-out")
                        .param("job", job)
                        .param("reason", "flood in the shop")
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(redirectedUrl("/calibration"));
        see(ada, "/calibration").andExpect(content().string(containsString("Waiting to start")));
        held.run();
        see(ada, "/calibration").andExpect(content().string(containsString("flood in the shop")));
        String id = jdbc.sql("select id from calibration where current")
                .query(String.class)
                .single();
        see(ada, "/calibration/" + id)
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("No longer in it")))
                .andExpect(content().string(containsString("Sand to 150")));
        mvc.perform(post("/calibration/taken-back")
                        .param("job", job)
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(redirectedUrl("/calibration"));
    }

    @Test
    void aRefusedReasonStaysAsItWasTyped() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 2, "1");
        JobRef odd = past.job(ada, SamplePast.FIRST.plusMonths(5), "3");
        past.calibrated();
        String typed = "flood ".repeat(60).strip();
        mvc.perform(post("/calibration/left-out")
                        .param("job", odd.id().toString())
                        .param("reason", typed)
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("value=\"" + typed + "\"")))
                .andExpect(content().string(containsString("id=\"why-error\"")));
    }

    @Test
    void saysThatEveryJobIsLeftOut() throws Exception {
        SignedIn ada = people.owner();
        JobRef odd = past.job(ada, SamplePast.FIRST, "3");
        past.calibrated();
        mvc.perform(post("/calibration/left-out")
                        .param("job", odd.id().toString())
                        .param("reason", "flood in the shop")
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(redirectedUrl("/calibration"));
        held.run();
        see(ada, "/calibration")
                .andExpect(content().string(containsString("Every finished job is left out")))
                .andExpect(content().string(not(containsString("No finished job to judge yet"))));
    }

    /** No bid and no forecast on the way was kept: what can be said stands before what cannot. */
    @Test
    void whatHasSomethingToSayStandsFirst() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 3, "1.1");
        String page = see(ada, "/calibration").andReturn().getResponse().getContentAsString();
        assertThat(page.indexOf("Looking back at every finished job</h2>"))
                .isPositive()
                .isLessThan(page.indexOf("What the bids said</h2>"));
        assertThat(page.indexOf("What tends to be forgotten</h2>"))
                .isPositive()
                .isLessThan(page.indexOf("What was said on the way</h2>"));
        assertThat(page.split("What the bids said</h2>", -1)).hasSize(2);
    }

    /** A job without hours on its lines says nothing of hours beside them. */
    @Test
    void countsTheSameJobsBehindHoursOnNoLineAsTheyWereLearntFrom() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 3, "1.1");
        JobRef blank = past.job(ada, SamplePast.FIRST.plusMonths(5), "1");
        people.asShop(() -> jdbc.sql("delete from time_entry where job_id = ? and task_id is not null")
                .param(blank.id())
                .update());
        past.calibrated();
        see(ada, "/calibration")
                .andExpect(content().string(containsString("that no line names (3 finished jobs; 57 %")));
    }

    @Test
    void isForTheOwnerOnly() throws Exception {
        people.owner();
        see(people.lead(), "/calibration").andExpect(status().isForbidden());
        see(people.helper(), "/calibration").andExpect(status().isForbidden());
    }
}
