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

import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.calibration.RateBook;
import org.tallywright.calibration.SamplePast;
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
