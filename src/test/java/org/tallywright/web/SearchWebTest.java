package org.tallywright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.tallywright.people.SamplePeople.signedIn;

import java.net.URI;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;

/** Words that nobody can type are a search that is not understood, not a form that is not saved. */
@AppTest
class SearchWebTest {
    private static final String NO_SUCH_WORD = "zzyzx";

    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    CatalogSeed catalog;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/clients?q=",
                "/materials/purchases?q=",
                "/materials/offcuts?q=",
                "/jobs?state=all&q=",
                "/jobs/new?find=",
                "/catalog/task-kinds?q=",
                "/catalog/materials?q="
            })
    void saysThatASearchCouldNotBeUnderstoodAndKeepsThePage(String path) throws Exception {
        SignedIn owner = people.owner();
        catalog.load(owner.personId());
        jobs.running(owner, "Library wall");
        MockHttpServletResponse understood = ask(owner, path + NO_SUCH_WORD);
        assertThat(understood.getStatus()).isEqualTo(200);
        for (String odd : new String[] {"oak%00plank", "%00", "x".repeat(3000)}) {
            MockHttpServletResponse answer = ask(owner, path + odd);
            Document page = Jsoup.parse(answer.getContentAsString());
            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(page.select(".error").text()).contains("could not be understood");
            assertThat(page.select("form[role=search] input[type=search]").val())
                    .doesNotContain("\0");
            assertThat(page.text()).doesNotContain("Not saved");
        }
    }

    private MockHttpServletResponse ask(SignedIn owner, String path) throws Exception {
        return mvc.perform(get(URI.create(path)).with(signedIn(owner)))
                .andReturn()
                .getResponse();
    }
}
