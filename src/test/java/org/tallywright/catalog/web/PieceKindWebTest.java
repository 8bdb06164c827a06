package org.tallywright.catalog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.math.BigDecimal;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.tallywright.catalog.Measure;
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.catalog.PieceKindLine;
import org.tallywright.shared.Ids;

class PieceKindWebTest extends CatalogPages {
    @Test
    void showsWhatItProposesAndTriesSizes() throws Exception {
        String page = "/catalog/piece-kinds/" + bookcase().id();
        see("/catalog/piece-kinds")
                .andExpect(content().string(containsString("Bookcase")))
                .andExpect(content().string(not(containsString("No kinds of piece yet"))));
        see(page)
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("2.25 lf for each sf of face")))
                .andExpect(content().string(containsString("6 trip for the whole job")))
                .andExpect(content().string(not(containsString("70.4 lf"))));
        see(page + "?width=47 5/16&height=95 1/4&depth=14 3/8")
                .andExpect(content().string(containsString("70.4 lf")))
                .andExpect(content().string(containsString("value=\"47 5/16\"")));
        see(page + "?height=95").andExpect(content().string(containsString("a size is missing")));
        see(page + "?width=wide&count=-2")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("value=\"wide\"")));
    }

    @Test
    void addsAKindLikeAnotherOnce() throws Exception {
        UUID id = Ids.next();
        for (int tap = 0; tap < 2; tap++) {
            send(
                            "/catalog/piece-kinds",
                            "id",
                            id.toString(),
                            "name",
                            "Media wall",
                            "like",
                            bookcase().id().toString())
                    .andExpect(redirectedUrl("/catalog/piece-kinds/" + id));
        }
        assertThat(pieceKinds.card(id).lines()).isEqualTo(bookcase().lines());
        assertThat(pieceKinds.active()).hasSize(22);
        send("/catalog/piece-kinds", "name", "bookcase")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("There is a kind of piece of this name already.")));
    }

    @Test
    void changesTheFactorOfATask() throws Exception {
        UUID scribe = taskKind("scribe");
        String path = "/catalog/piece-kinds/" + bookcase().id() + "/tasks/" + scribe;
        see(path).andExpect(status().isOk()).andExpect(content().string(containsString("Factor, in lf")));
        send(path, "version", version(), "measure", "height", "factor", "2,5").andExpect(status().is3xxRedirection());
        assertThat(bookcase().lines())
                .contains(new PieceKindLine(scribe, Measure.HEIGHT, new BigDecimal("2.5"), false))
                .hasSize(25);
    }

    @Test
    void addsATaskInTheOrderOfTheWorkAndTakesItAway() throws Exception {
        UUID crown = taskKind("crown");
        String tasks = "/catalog/piece-kinds/" + bookcase().id() + "/tasks";
        see(tasks + "/new").andExpect(status().isOk()).andExpect(content().string(containsString("Install: Cope")));
        send(
                        tasks,
                        "version",
                        version(),
                        "taskKind",
                        crown.toString(),
                        "measure",
                        "width",
                        "factor",
                        "1.1",
                        "roundUp",
                        "true")
                .andExpect(status().is3xxRedirection());
        assertThat(bookcase().lines())
                .extracting(PieceKindLine::taskKindId)
                .containsSubsequence(taskKind("spray_coat"), crown, taskKind("hand_over"));
        send(tasks + "/" + crown + "/removal", "version", version()).andExpect(status().is3xxRedirection());
        assertThat(bookcase().lines()).extracting(PieceKindLine::taskKindId).doesNotContain(crown);
    }

    @Test
    void refusesWhatIsNoFactorAndKeepsIt() throws Exception {
        String path = "/catalog/piece-kinds/" + bookcase().id() + "/tasks/" + taskKind("scribe");
        for (String factor : new String[] {"some", "0", "-1", "3 min", "9999999", ""}) {
            send(path, "version", version(), "measure", "height", "factor", factor)
                    .andExpect(status().is(422))
                    .andExpect(content().string(containsString("value=\"" + factor + "\"")));
        }
        send(path, "version", version(), "measure", "smell", "factor", "1").andExpect(status().is(422));
        assertThat(bookcase().version()).isZero();
    }

    @Test
    void showsBothVersionsWhenSomebodyElseWasFaster() throws Exception {
        String path = "/catalog/piece-kinds/" + bookcase().id() + "/tasks/" + taskKind("scribe");
        String version = version();
        send(path, "version", version, "measure", "perimeter", "factor", "1.25").andExpect(status().is3xxRedirection());
        send(path, "version", version, "measure", "perimeter", "factor", "1.5")
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("1.25 x perimeter")))
                .andExpect(content().string(containsString("1.5 x perimeter")));
    }

    @Test
    void renamesAndTakesOutOfUse() throws Exception {
        UUID id = bookcase().id();
        send("/catalog/piece-kinds/" + id, "version", version(), "name", "Open bookcase")
                .andExpect(status().is3xxRedirection());
        assertThat(pieceKinds.card(id).name()).isEqualTo("Open bookcase");
        send("/catalog/piece-kinds/" + id + "/retirement").andExpect(status().is3xxRedirection());
        assertThat(pieceKinds.active()).hasSize(20);
        send("/catalog/piece-kinds/" + id + "/return").andExpect(status().is3xxRedirection());
        see("/catalog/piece-kinds/" + id + "/edit").andExpect(status().isOk());
        see("/catalog/piece-kinds/new").andExpect(status().isOk());
    }

    @Test
    void letsTheLeadReadOnly() throws Exception {
        String page = "/catalog/piece-kinds/" + bookcase().id();
        see(page, people.lead()).andExpect(status().isOk());
        see(page + "/tasks/new", people.lead()).andExpect(status().isForbidden());
        see(page, people.helper()).andExpect(status().isForbidden());
        see("/catalog/piece-kinds/" + Ids.next()).andExpect(status().isNotFound());
    }

    private PieceKindCard bookcase() {
        return pieceKinds.named("Bookcase").orElseThrow();
    }

    private String version() {
        return String.valueOf(bookcase().version());
    }
}
