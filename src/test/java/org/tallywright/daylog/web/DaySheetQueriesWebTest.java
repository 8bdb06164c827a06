package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.daylog.SampleDays;
import org.tallywright.daylog.SampleDays.SampleJob;
import org.tallywright.daylog.StatementCount;
import org.tallywright.people.SamplePeople;
import org.tallywright.web.SignedIn;

/** The day sheet asks the database as often for twelve rows as for two. */
@AppTest
class DaySheetQueriesWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleDays days;

    @Test
    void opensAndSavesWithAsManyQueriesForManyRowsAsForFew() throws Exception {
        SignedIn ada = people.owner();
        SampleJob few = days.job("Few", "One", "Two");
        List<String> openFew = opening(ada);
        List<String> saveFew = saving(ada, few, 2, "/days/2026-11-24");

        String[] names = IntStream.range(0, 10).mapToObj(n -> "Task " + n).toArray(String[]::new);
        SampleJob many = days.job("Many", names);
        List<String> openMany = opening(ada);
        List<String> saveMany = saving(ada, many, 10, "/days/2026-11-23");

        assertThat(openMany).as("open").hasSameSizeAs(openFew);
        assertThat(openMany).hasSizeLessThanOrEqualTo(14);
        assertThat(saveMany).as("save").hasSameSizeAs(saveFew);
        assertThat(saveMany).hasSizeLessThanOrEqualTo(10);
    }

    private List<String> opening(SignedIn me) throws Exception {
        return StatementCount.during(
                () -> mvc.perform(get("/").with(signedIn(me))).andExpect(status().isOk()));
    }

    private List<String> saving(SignedIn me, SampleJob job, int rows, String day) throws Exception {
        SheetForm form = new SheetForm();
        job.tasks().values().stream().limit(rows).forEach(task -> form.row("task:" + task, "direct", "30m"));
        return StatementCount.during(
                () -> mvc.perform(form.sentTo(day).with(signedIn(me))).andExpect(status().is(302)));
    }
}
