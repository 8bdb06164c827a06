package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.daylog.SampleDays.TODAY;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.daylog.SampleDays;
import org.tallywright.daylog.SampleDays.SampleJob;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

@AppTest
class MorningWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleDays days;

    @Autowired
    JdbcClient jdbc;

    @Test
    void tellsAHelperWhereWhatHowBigAndWhatToBewareOf() throws Exception {
        SignedIn jonas = people.helper();
        SampleJob seat = days.job("Window seat", "site:Scribe to the wall", "Oil the top", "Somebody else's");
        days.plan(seat.task("Scribe to the wall"), TODAY, jonas);
        days.plan(seat.task("Somebody else's"), TODAY, people.lead());
        days.curing(seat, "Oil the top", "oil dries", Duration.ofHours(3));
        days.logged(people.owner(), TODAY, seat, "Oil the top", 137);
        var piece = Ids.next();
        jdbc.sql(
                        "insert into piece (id, job_id, name, width, count, version) values (?, ?, 'Seat, north bay', 72 * 8128, 1, 0)")
                .params(piece, seat.id())
                .update();
        jdbc.sql("update task set piece_id = ?, estimated_minutes = 397 where id = ?")
                .params(piece, seat.task("Scribe to the wall"))
                .update();
        jdbc.sql("update site set access_note = 'Key in the meter box', stairs = true")
                .update();
        jdbc.sql(
                        "update task_kind set caution = 'Wear eye protection.', caution_source = 'a public source' where place = 'site'")
                .update();

        String text = page(jonas).select("main").text();

        assertThat(text)
                .contains(
                        "Scribe to the wall", "14 Plumbline Lane", "Key in the meter box", "stairs", "Seat, north bay")
                .contains("6' wide")
                .contains("oil dries", "from 16:40", "Wear eye protection.", "a public source")
                .doesNotContain("Somebody else's")
                .doesNotContain("2 h 17")
                .doesNotContain("6 h 37")
                .doesNotContain("397")
                .doesNotContain("estimated");
    }

    @Test
    void saysSoWhenNothingIsPlanned() throws Exception {
        assertThat(page(people.helper()).select("main").text()).contains("Nothing is planned for you today");
    }

    private Document page(SignedIn me) throws Exception {
        return Jsoup.parse(mvc.perform(get("/morning").with(signedIn(me)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }
}
