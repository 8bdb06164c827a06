package org.tallywright.catalog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.tallywright.catalog.StageCard;
import org.tallywright.shared.Ids;

class StageWebTest extends CatalogPages {
    @Test
    void addsAStageAtTheEndOnce() throws Exception {
        String id = Ids.next().toString();
        send("/catalog/stages", "id", id, "name", " Photo  day ").andExpect(redirectedUrl("/catalog/stages"));
        send("/catalog/stages", "id", id, "name", "Photo day").andExpect(redirectedUrl("/catalog/stages"));
        assertThat(stages.all()).hasSize(10).last().extracting(StageCard::name).isEqualTo("Photo day");
    }

    @Test
    void movesAStageAndKeepsTheEndsInPlace() throws Exception {
        UUID finish = stage("Finish");
        send("/catalog/stages/" + finish + "/place", "way", "up").andExpect(status().is3xxRedirection());
        assertThat(stages.active()).extracting(StageCard::name).containsSubsequence("Finish", "Fit", "Install");
        UUID measure = stage("Measure");
        send("/catalog/stages/" + measure + "/place", "way", "up").andExpect(status().is3xxRedirection());
        assertThat(stages.active()).first().extracting(StageCard::id).isEqualTo(measure);
        send("/catalog/stages/" + measure + "/place", "way", "sideways").andExpect(status().is(422));
    }

    @Test
    void renamesAStageAndSeesWhoWasFaster() throws Exception {
        StageCard mill = stages.named("Mill").orElseThrow();
        String version = String.valueOf(mill.version());
        send("/catalog/stages/" + mill.id(), "version", version, "name", "Machine")
                .andExpect(status().is3xxRedirection());
        send("/catalog/stages/" + mill.id(), "version", version, "name", "Saw")
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("Machine")))
                .andExpect(content().string(containsString("Saw")));
        assertThat(stages.find(mill.id()).orElseThrow().name()).isEqualTo("Machine");
    }

    @Test
    void refusesNoNameATakenNameAndALongName() throws Exception {
        send("/catalog/stages", "name", " ").andExpect(status().is(422));
        send("/catalog/stages", "name", "mill")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("There is a stage of this name already.")))
                .andExpect(content().string(containsString("value=\"mill\"")));
        send("/catalog/stages", "name", "x".repeat(41)).andExpect(status().is(422));
        assertThat(stages.all()).hasSize(9);
    }

    @Test
    void keepsAStageInUseWhileItHasTaskKinds() throws Exception {
        send("/catalog/stages/" + stage("Mill") + "/retirement")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("still has 10 task kinds in use")));
        String id = Ids.next().toString();
        send("/catalog/stages", "id", id, "name", "Photo day");
        send("/catalog/stages/" + id + "/retirement").andExpect(redirectedUrl("/catalog/stages"));
        assertThat(stages.active()).hasSize(9);
        send("/catalog/stages/" + id + "/return").andExpect(redirectedUrl("/catalog/stages"));
        assertThat(stages.active()).hasSize(10);
    }

    @Test
    void letsTheLeadReadOnly() throws Exception {
        see("/catalog/stages", people.lead())
                .andExpect(status().isOk())
                .andExpect(content().string(not(containsString("Move up"))));
        see("/catalog/stages/" + stage("Mill"), people.lead()).andExpect(status().isForbidden());
        see("/catalog/stages")
                .andExpect(content().string(containsString("Move Mill up")))
                .andExpect(content().string(not(containsString("No stages yet"))));
        see("/catalog/stages/" + stage("Mill")).andExpect(status().isOk());
    }
}
