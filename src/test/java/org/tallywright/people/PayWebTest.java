package org.tallywright.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.AppTest;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** Two figures for one day: nobody's is overwritten unseen. */
@AppTest
class PayWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    Wages wages;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    SignedIn jonas;

    @BeforeEach
    void adaPaysJonas() throws Exception {
        ada = people.owner();
        jonas = people.helper();
        pay(Ids.next(), "2026-11-01", "24", "20", "").andExpect(status().is3xxRedirection());
    }

    @Test
    void takesTheSameFiguresAgainAsARepeat() throws Exception {
        pay(Ids.next(), "2026-11-01", "24.00", "20", "").andExpect(status().is3xxRedirection());
        assertThat(kept()).isEqualTo("24.00 + 20 %");
        assertThat(jdbc.sql("select count(*) from audit_entry where subject = 'wage'")
                        .query(Integer.class)
                        .single())
                .isOne();
    }

    @Test
    void asksBeforeOtherFiguresTakeThePlaceOfTheKeptOnes() throws Exception {
        pay(Ids.next(), "2026-11-01", "26", "20", "")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("24.00 + 20 % already")))
                .andExpect(content().string(containsString("name=\"corrects\" value=\"24.00 + 20 %\"")))
                .andExpect(content().string(containsString("value=\"26\"")));
        assertThat(kept()).isEqualTo("24.00 + 20 %");
        pay(Ids.next(), "2026-11-01", "26", "20", "24.00 + 20 %").andExpect(status().is3xxRedirection());
        assertThat(kept()).isEqualTo("26.00 + 20 %");
        pay(Ids.next(), "2026-11-01", "23", "20", "24.00 + 20 %").andExpect(status().isUnprocessableContent());
        assertThat(kept()).isEqualTo("26.00 + 20 %");
    }

    @Test
    void showsBothDaysWhenASaveComesAgainWithAnother() throws Exception {
        UUID id = Ids.next();
        pay(id, "2026-12-01", "25", "20", "").andExpect(status().is3xxRedirection());
        pay(id, "2026-12-15", "25", "20", "")
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("2026-12-01")))
                .andExpect(content().string(containsString("2026-12-15")));
        assertThat(wages.of(jonas.personId())).hasSize(2);
    }

    private String kept() {
        return wages.of(jonas.personId()).get(0).figures();
    }

    private ResultActions pay(UUID id, String from, String wage, String burden, String corrects) throws Exception {
        return mvc.perform(post("/crew/{id}/wages", jonas.personId())
                .with(csrf())
                .with(signedIn(ada))
                .param("id", id.toString())
                .param("from", from)
                .param("wage", wage)
                .param("burden", burden)
                .param("corrects", corrects));
    }
}
