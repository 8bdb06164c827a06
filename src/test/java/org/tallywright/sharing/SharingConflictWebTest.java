package org.tallywright.sharing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** Two owners at one sharing tab: the later save from an older page is shown beside the kept one. */
@AppTest
class SharingConflictWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    ClientPage pages;

    SignedIn ada;
    JobRef job;

    @BeforeEach
    void adaRunsAJob() {
        ada = people.owner();
        job = jobs.windowSeat(ada);
    }

    @Test
    void keepsTheVisitThatSomebodyElseAnnounced() throws Exception {
        visit("2026-12-01", "2026-12-02", "").andExpect(status().is3xxRedirection());
        visit("2026-12-01", "2026-12-02", "").andExpect(status().is3xxRedirection());
        visit("2026-12-08", "2026-12-09", "")
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("2026-12-01")))
                .andExpect(content().string(containsString("2026-12-08")));
        visit("", "", "").andExpect(status().isConflict());
        mvc.perform(get("/jobs/{n}/sharing", job.number()).with(signedIn(ada)))
                .andExpect(content().string(containsString("name=\"version\" value=\"0\"")));
        visit("2026-12-08", "2026-12-09", "0").andExpect(status().is3xxRedirection());
        visit("2026-12-10", "2026-12-10", "0").andExpect(status().isConflict());
        assertThat(pages.visit(job.id()))
                .isNotNull()
                .satisfies(kept -> assertThat(kept.fromDate()).hasToString("2026-12-08"));
        visit("", "", "1").andExpect(status().is3xxRedirection());
        assertThat(pages.visit(job.id())).isNull();
        visit("2026-12-10", "2026-12-10", "1").andExpect(status().isConflict());
    }

    @Test
    void showsBothWordingsOfANote() throws Exception {
        String id = Ids.next().toString();
        note(id, "Cases are glued up.").andExpect(status().is3xxRedirection());
        note(id, "Cases are glued up.").andExpect(status().is3xxRedirection());
        note(id, "Cases are sanded.")
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("Cases are glued up.")))
                .andExpect(content().string(containsString("Cases are sanded.")));
    }

    private ResultActions visit(String from, String to, String version) throws Exception {
        return mvc.perform(post("/jobs/{n}/sharing/visit", job.number())
                .with(csrf())
                .with(signedIn(ada))
                .param("from", from)
                .param("to", to)
                .param("visitNote", "")
                .param("version", version));
    }

    private ResultActions note(String id, String text) throws Exception {
        return mvc.perform(post("/jobs/{n}/sharing/notes", job.number())
                .with(csrf())
                .with(signedIn(ada))
                .param("id", id)
                .param("text", text)
                .param("shown", "true"));
    }
}
