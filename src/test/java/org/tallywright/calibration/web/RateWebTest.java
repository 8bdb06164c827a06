package org.tallywright.calibration.web;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.calibration.RateBook;
import org.tallywright.calibration.SamplePast;
import org.tallywright.catalog.TaskKindMerging;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

@AppTest
class RateWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePast past;

    @Autowired
    SamplePeople people;

    @Autowired
    RateBook book;

    @Autowired
    TaskKindMerging merging;

    @Autowired
    JdbcClient jdbc;

    @Test
    void saysWhatBelongsHereWhileNothingIsLearnt() throws Exception {
        SignedIn ada = people.owner();
        past.sanding();
        mvc.perform(get("/rates").with(signedIn(ada)))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("No finished work yet")))
                .andExpect(content().string(containsString("Sand to 150")));
        mvc.perform(get("/rates/" + past.sanding()).with(signedIn(ada)))
                .andExpect(status().isOk())
                .andExpect(content().string(not(containsString("<svg class=\"rate-plot\""))));
    }

    @Test
    void showsRateRangeObservationsAndStartingShare() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 6, "1.5");
        mvc.perform(get("/rates").with(signedIn(people.lead())))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("6 on 6 jobs")))
                .andExpect(content().string(containsString("Four times in five")));
        mvc.perform(get("/rates/" + past.sanding()).with(signedIn(ada)))
                .andExpect(content().string(containsString("rate-plot")))
                .andExpect(content().string(containsString("no clear change")))
                .andExpect(content().string(containsString("Bookcase of 2026-03-02")))
                .andExpect(content().string(containsString("the starting rate</button>")));
    }

    @Test
    void saysHowLittleOneTaskOnePersonAndOneKindSay() throws Exception {
        SignedIn ada = people.owner();
        past.handSandingJob(ada, SamplePast.FIRST, "40", 600);
        past.calibrated();
        mvc.perform(get("/rates").with(signedIn(ada)))
                .andExpect(content().string(containsString("All of it is one kind of work")))
                .andExpect(content().string(containsString("All of it is the work of one person")));
        mvc.perform(get("/rates/" + past.handSanding()).with(signedIn(ada)))
                .andExpect(content().string(containsString("One finished task says little")));
        past.jobs(ada, 1, "1");
        past.handSandingJob(people.helper(), SamplePast.FIRST.plusMonths(2), "40", 600);
        past.calibrated();
        mvc.perform(get("/rates").with(signedIn(ada)))
                .andExpect(content().string(not(containsString("one kind of work"))))
                .andExpect(content().string(not(containsString("work of one person"))));
    }

    @Test
    void twoHundredKindsAreOneListOfWhatTheShopDidAndOneOfTheRest() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 2, "1.5");
        for (int n = 0; n < 198; n++) {
            past.kind(n);
        }
        past.calibrated();
        mvc.perform(get("/rates").with(signedIn(ada)))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("No hours of your own yet: 198 kinds")))
                .andExpect(content().string(containsString("Kind 197")));
    }

    @Test
    void saysWhatElseCountsHereAndLeadsThere() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 2, "1.5");
        past.handSandingJob(ada, SamplePast.FIRST.plusMonths(4), "40", 600);
        past.calibrated();
        UUID byHand = past.handSanding();
        merging.merge(byHand, 0, past.sanding(), ada.personId());
        mvc.perform(get("/rates/" + past.sanding()).with(signedIn(ada)))
                .andExpect(
                        content()
                                .string(
                                        containsString(
                                                "Also counts &quot;Sand by hand&quot;, counted here since 25 November 2026 by Ada Fenn. This calibration has no finished task of it.")));
        past.calibrated();
        mvc.perform(get("/rates/" + past.sanding()).with(signedIn(ada)))
                .andExpect(
                        content()
                                .string(
                                        containsString(
                                                "Also counts 1 task of &quot;Sand by hand&quot;, counted here since 25 November 2026 by Ada Fenn.")));
        mvc.perform(get("/rates/" + byHand).with(signedIn(ada))).andExpect(redirectedUrl("/rates/" + past.sanding()));
    }

    @Test
    void saysWhichSiteConditionsCount() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 8, "1");
        upstairs("closed_on < date '2026-06-30'");
        past.calibrated();
        mvc.perform(get("/rates").with(signedIn(people.lead())))
                .andExpect(content().string(containsString("Which site conditions count")))
                .andExpect(content().string(containsString("off until the shop has data")))
                .andExpect(content().string(containsString("still missing 4 finished tasks with it")))
                .andExpect(content().string(containsString("12 finished tasks on 3 more jobs with it")));
        past.jobs(ada, 3, "1");
        past.jobs(ada, 4, "1.4");
        upstairs("id in (select job_id from time_entry where minutes = 336)");
        past.calibrated();
        mvc.perform(get("/rates").with(signedIn(people.lead())))
                .andExpect(content().string(containsString("% longer</b>")));
    }

    private void upstairs(String which) {
        UUID site = Ids.next();
        jdbc.sql("insert into site (id, client_id, address, stairs, version)"
                        + " select ?, client_id, '4 Tower Hill', true, 0 from job limit 1")
                .param(site)
                .update();
        jdbc.sql("update job set site_id = ?, client_id = (select client_id from site where id = ?) where " + which)
                .params(site, site)
                .update();
    }

    @Test
    void acceptsARateByOneButtonAndRefusesOneThatIsNoLongerShown() throws Exception {
        SignedIn ada = people.owner();
        past.jobs(ada, 6, "1.5");
        RateBook.Entry entry = book.history(past.sanding()).entry();
        String path = "/rates/" + past.sanding();
        mvc.perform(post(path + "/acceptance")
                        .param("version", "0")
                        .param("rate", "0.777")
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(status().isUnprocessableContent());
        mvc.perform(post(path + "/acceptance")
                        .param("version", "" + entry.kind().version())
                        .param("rate", "" + entry.typical())
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(redirectedUrl(path));
        mvc.perform(get("/catalog/task-kinds/" + past.sanding()).with(signedIn(ada)))
                .andExpect(content().string(containsString("own hours")));
    }

    @Test
    void isNotForHelperOrBookkeeper() throws Exception {
        people.owner();
        mvc.perform(get("/rates").with(signedIn(people.helper()))).andExpect(status().isForbidden());
        mvc.perform(get("/rates").with(signedIn(people.bookkeeper()))).andExpect(status().isForbidden());
        mvc.perform(get("/rates/" + Ids.next()).with(signedIn(people.lead()))).andExpect(status().isNotFound());
    }
}
