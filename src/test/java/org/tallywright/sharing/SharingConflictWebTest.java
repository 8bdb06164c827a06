package org.tallywright.sharing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import org.jsoup.Jsoup;
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
        String first = shownVersion();
        visit("2026-12-08", "2026-12-09", first).andExpect(status().is3xxRedirection());
        visit("2026-12-10", "2026-12-10", first).andExpect(status().isConflict());
        assertThat(pages.visit(job.id()))
                .isNotNull()
                .satisfies(kept -> assertThat(kept.fromDate()).hasToString("2026-12-08"));
        String second = shownVersion();
        visit("", "", second).andExpect(status().is3xxRedirection());
        assertThat(pages.visit(job.id())).isNull();
        visit("2026-12-10", "2026-12-10", second).andExpect(status().isConflict());
    }

    @Test
    void tellsAVisitAnnouncedAgainFromTheOneTakenBack() throws Exception {
        visit("2026-12-01", "2026-12-02", "").andExpect(status().is3xxRedirection());
        String old = shownVersion();
        visit("", "", old).andExpect(status().is3xxRedirection());
        visit("2026-12-15", "2026-12-16", "").andExpect(status().is3xxRedirection());
        visit("2026-12-03", "2026-12-04", old)
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("2026-12-15")));
        visit("", "", old).andExpect(status().isConflict());
        assertThat(pages.visit(job.id()))
                .isNotNull()
                .satisfies(kept -> assertThat(kept.fromDate()).hasToString("2026-12-15"));
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

    private String shownVersion() throws Exception {
        String page = mvc.perform(get("/jobs/{n}/sharing", job.number()).with(signedIn(ada)))
                .andReturn()
                .getResponse()
                .getContentAsString();
        return Jsoup.parse(page)
                .select("form[action$=visit] input[name=version]")
                .val();
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
