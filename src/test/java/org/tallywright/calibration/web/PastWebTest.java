package org.tallywright.calibration.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.calibration.HeldWork;
import org.tallywright.calibration.RateBook;
import org.tallywright.calibration.SamplePast;
import org.tallywright.jobs.JobRef;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

@AppTest
class PastWebTest {
    private static final String GOOD = """
            Project;Task;Qty;Est;Hours;Date;Who
            Old stair;Sand to 150;40;;6;2025-03-01;Ada Fenn
            Old stair;fit_panel;;3;4.5;14.3.2025;Somebody Gone
            Old desk;Sand to 150;20;2;3h;1 Apr 2025;
            """;

    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePast past;

    @Autowired
    SamplePeople people;

    @Autowired
    RateBook book;

    @Autowired
    HeldWork held;

    @Autowired
    JdbcClient jdbc;

    private SignedIn ada = new SignedIn(Ids.next(), "", org.tallywright.web.Role.OWNER);

    @BeforeEach
    void shop() {
        ada = people.owner();
        past.sanding();
        past.fitting();
    }

    private ResultActions send(String path, UUID id, String text) throws Exception {
        return mvc.perform(post(path)
                .param("id", id.toString())
                .param("fileName", "old.csv")
                .param("text", text)
                .with(csrf())
                .with(signedIn(ada)));
    }

    private int kept() {
        return jdbc.sql("select count(*) from past_task").query(Integer.class).single();
    }

    @Test
    void showsWhatAFileSaysAndKeepsNothing() throws Exception {
        mvc.perform(multipart("/rates/import/preview")
                        .file("file", GOOD.getBytes(StandardCharsets.UTF_8))
                        .param("id", Ids.next().toString())
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("3 tasks can be read, nothing to correct")))
                .andExpect(content().string(containsString("Nobody in the shop is called Somebody Gone")))
                .andExpect(content().string(containsString("Bring in these 3 tasks")));
        assertThat(kept()).isZero();
    }

    /** More than the form of the preview could send back would be lost at the last step. */
    @Test
    void refusesAtOnceWhatCouldNotBeConfirmed() throws Exception {
        mvc.perform(multipart("/rates/import/preview")
                        .file("file", (GOOD + "x".repeat(600_000)).getBytes(StandardCharsets.UTF_8))
                        .param("id", Ids.next().toString())
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("split the file")));
        assertThat(kept()).isZero();
    }

    @Test
    void bringsInOnceLearnsAndTakesOutAgain() throws Exception {
        UUID id = Ids.next();
        send("/rates/import", id, GOOD).andExpect(redirectedUrl("/rates/import"));
        send("/rates/import", id, GOOD).andExpect(redirectedUrl("/rates/import"));
        held.run();
        assertThat(kept()).isEqualTo(3);
        RateBook.Entry sanding = book.history(past.sanding()).entry();
        assertThat(sanding.tasks()).isEqualTo(2);
        assertThat(sanding.jobs()).isEqualTo(2);
        mvc.perform(get("/rates/" + past.sanding()).with(signedIn(ada)))
                .andExpect(content().string(containsString("from an imported file")));
        mvc.perform(get("/calibration").with(signedIn(ada)))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Old desk")));
        mvc.perform(post("/rates/import/" + id + "/undo").with(csrf()).with(signedIn(ada)))
                .andExpect(redirectedUrl("/rates/import"));
        held.run();
        assertThat(kept()).isZero();
        assertThat(book.history(past.sanding()).entry().tasks()).isZero();
    }

    @Test
    void namesEveryErrorByRowAndColumnAndKeepsNothing() throws Exception {
        JobRef here = past.job(ada, SamplePast.FIRST, "1");
        String bad = "Project,Task,Qty,Hours,Date\n"
                + here.number() + ",Sand to 150,40,6,2025-03-01\n"
                + "Old stair,Polish the moon,40,6,2025-03-01\n"
                + "Old stair,Sand to 150,,0,2025-02-30\n";
        send("/rates/import", Ids.next(), bad)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("would count twice")))
                .andExpect(content().string(containsString("is no task kind of the catalogue")))
                .andExpect(content().string(containsString("is no date")))
                .andExpect(content().string(containsString("A quantity or estimated hours are needed")))
                .andExpect(content().string(containsString("Row 4")))
                .andExpect(content().string(not(containsString("Bring in" + " these"))));
        assertThat(kept()).isZero();
    }

    @Test
    void readsOtherHeadingsByAChosenColumn() throws Exception {
        String odd = "Auftrag,Sorte,Menge,Zeit,Tag\nOld stair,Sand to 150,40,6,2025-03-01\n";
        mvc.perform(post("/rates/import/preview")
                        .param("id", Ids.next().toString())
                        .param("text", odd)
                        .param("column-job", "0")
                        .param("column-kind", "1")
                        .param("column-quantity", "2")
                        .param("column-actual", "3")
                        .param("column-done", "4")
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("1 task can be read, nothing to correct")));
        send("/rates/import/preview", Ids.next(), " ").andExpect(status().isUnprocessableContent());
        send("/rates/import/preview", Ids.next(), "a,b\n\"open").andExpect(status().isUnprocessableContent());
    }

    @Test
    void isForTheOwnerOnly() throws Exception {
        mvc.perform(get("/rates/import").with(signedIn(ada)))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Bring in past work")));
        mvc.perform(get("/rates/import").with(signedIn(people.lead()))).andExpect(status().isForbidden());
    }
}
