package org.tallywright.catalog.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.test.web.servlet.ResultActions;
import org.tallywright.catalog.KindWait;
import org.tallywright.catalog.TaskKindCard;
import org.tallywright.shared.Ids;
import org.tallywright.shared.UnitHours;

class TaskKindWebTest extends CatalogPages {
    @Test
    void listsTaskKindsByStageAndFindsThem() throws Exception {
        see("/catalog/task-kinds")
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Rip hardwood to width")))
                .andExpect(content().string(containsString("0.014 h per lf")))
                .andExpect(content().string(not(containsString("No task kinds yet"))));
        see("/catalog/task-kinds?q=SCRIBE")
                .andExpect(content().string(containsString("Scribe to wall")))
                .andExpect(content().string(not(containsString("Rip hardwood"))));
        see("/catalog/task-kinds?q=zzz").andExpect(content().string(containsString("Nothing here has these words.")));
    }

    @Test
    void showsRateRangeWaitsOrderAndCautionWithItsSource() throws Exception {
        see("/catalog/task-kinds/" + taskKind("oil_coat"))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("0.012 h per coat square foot")))
                .andExpect(content().string(containsString("0.005 to 0.015")))
                .andExpect(content().string(containsString("5 days")))
                .andExpect(content().string(containsString("heat by themselves")))
                .andExpect(content().string(containsString("University fabrication lab note")));
        see("/catalog/task-kinds/" + taskKind("scribe"))
                .andExpect(content().string(containsString("common caution")))
                .andExpect(content().string(containsString("licensed trades")));
        see("/catalog/task-kinds/" + taskKind("bid_write"))
                .andExpect(content().string(not(containsString("Caution."))));
    }

    @Test
    void addsATaskKindOnceHoweverOftenItIsSent() throws Exception {
        UUID id = Ids.next();
        for (int tap = 0; tap < 2; tap++) {
            send(id, "Shape a corbel", "0.75").andExpect(redirectedUrl("/catalog/task-kinds/" + id));
        }
        TaskKindCard added = taskKinds.card(id);
        assertThat(added.code()).isEqualTo("shape_a_corbel");
        assertThat(added.unitHours()).isEqualTo(UnitHours.of("0.75"));
        assertThat(added.basis()).isEqualTo("common practice, no source");
        assertThat(added.waits())
                .containsExactly(
                        new KindWait("glue sets", 90, "common practice, no source"),
                        new KindWait("full strength", 1440, "the can"));
        assertThat(added.before()).containsExactly(taskKind("rough_mill"));
        assertThat(taskKinds.active()).hasSize(54);
    }

    @Test
    void keepsWhatWasTypedWhenItRefuses() throws Exception {
        send(Ids.next(), "Shape a corbel", "a while")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("value=\"a while\"")))
                .andExpect(content().string(containsString("value=\"Shape a corbel\"")))
                .andExpect(content().string(containsString("value=\"full strength\"")))
                .andExpect(content().string(containsString("is not hours per unit")));
        assertThat(taskKinds.active()).hasSize(53);
    }

    @Test
    void refusesATakenNameAndABackwardRange() throws Exception {
        send(Ids.next(), "SCRIBE to wall, floor or ceiling", "1")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("There is a task kind of this name already.")));
        send(
                        "/catalog/task-kinds",
                        "id",
                        Ids.next().toString(),
                        "name",
                        "Corbel",
                        "stage",
                        stage("Build").toString(),
                        "unit",
                        "each",
                        "unitHours",
                        "1",
                        "low",
                        "2",
                        "place",
                        "shop",
                        "hourClass",
                        "direct")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("The low end is above the starting rate.")));
    }

    @Test
    void refusesAnOrderThatBitesItsTail() throws Exception {
        TaskKindCard mill = taskKinds.coded("rough_mill").orElseThrow();
        update(
                        mill,
                        "version",
                        String.valueOf(mill.version()),
                        "before",
                        taskKind("sand_parts").toString())
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("already comes after this one")));
    }

    @Test
    void refusesUnknownChoicesAndUnprintableText() throws Exception {
        send(
                        "/catalog/task-kinds",
                        "name",
                        "Corbel\u0000",
                        "stage",
                        "north",
                        "unit",
                        "cubit",
                        "unitHours",
                        "-1",
                        "place",
                        "moon",
                        "hourClass",
                        "nap",
                        "before",
                        "x")
                .andExpect(status().is(422));
        send(
                        "/catalog/task-kinds",
                        "name",
                        "x".repeat(5000),
                        "stage",
                        Ids.next().toString(),
                        "unit",
                        "each",
                        "unitHours",
                        "1",
                        "place",
                        "shop",
                        "hourClass",
                        "direct")
                .andExpect(status().is(422));
        assertThat(taskKinds.all()).hasSize(53);
    }

    @Test
    void showsBothVersionsWhenSomebodyElseWasFaster() throws Exception {
        TaskKindCard scribe = taskKinds.coded("scribe").orElseThrow();
        String version = String.valueOf(scribe.version());
        update(scribe, "version", version, "unitHours", "0.25").andExpect(status().is3xxRedirection());
        update(scribe, "version", version, "unitHours", "0.31")
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("0.25")))
                .andExpect(content().string(containsString("0.31")));
        assertThat(taskKinds.card(scribe.id()).unitHours()).isEqualTo(UnitHours.of("0.25"));
    }

    @Test
    void takesATaskKindOutOfUseAndBack() throws Exception {
        UUID crown = taskKind("crown");
        send("/catalog/task-kinds/" + crown + "/retirement").andExpect(status().is3xxRedirection());
        assertThat(taskKinds.active()).hasSize(52);
        see("/catalog/task-kinds").andExpect(content().string(containsString("Out of use")));
        assertThat(pieceKinds.propose(
                        pieceKinds.named("Wall case").orElseThrow().id(), 900_000L, 900_000L, 100_000L, 1))
                .noneMatch(proposal -> proposal.taskKindId().equals(crown));
        send("/catalog/task-kinds/" + crown + "/return").andExpect(status().is3xxRedirection());
        assertThat(taskKinds.active()).hasSize(53);
    }

    @Test
    void letsTheLeadReadAndNobodyElse() throws Exception {
        String page = "/catalog/task-kinds/" + taskKind("crown");
        see(page, people.lead()).andExpect(status().isOk()).andExpect(content().string(not(containsString("/edit"))));
        see(page + "/edit", people.lead()).andExpect(status().isForbidden());
        see(page, people.helper()).andExpect(status().isForbidden());
        see(page, people.bookkeeper()).andExpect(status().isForbidden());
    }

    @Test
    void knowsNoTaskKindThatIsNotThere() throws Exception {
        see("/catalog/task-kinds/" + Ids.next()).andExpect(status().isNotFound());
        see("/catalog/task-kinds/oak").andExpect(status().isNotFound());
        send("/catalog/task-kinds/" + Ids.next(), "name", "x").andExpect(status().isNotFound());
    }

    @Test
    void opensItsForms() throws Exception {
        see("/catalog/task-kinds/new").andExpect(status().isOk());
        see("/catalog/task-kinds/" + taskKind("panel_glue") + "/edit")
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("value=\"4 h\"")));
    }

    private ResultActions send(UUID id, String name, String hours) throws Exception {
        return send(
                "/catalog/task-kinds",
                "id",
                id.toString(),
                "name",
                name,
                "stage",
                stage("Build").toString(),
                "unit",
                "each",
                "unitHours",
                hours,
                "place",
                "shop",
                "hourClass",
                "direct",
                "wait1",
                "glue sets",
                "wait1Time",
                "1 h 30",
                "wait2",
                "full strength",
                "wait2Time",
                "24 h",
                "wait2Basis",
                "the can",
                "before",
                taskKind("rough_mill").toString());
    }

    @Test
    void countsAKindAsAnotherAndTakesItApart() throws Exception {
        UUID block = Ids.next();
        UUID pad = Ids.next();
        send(block, "Sand with a block", "0.2").andExpect(status().is3xxRedirection());
        send(pad, "Sand with a pad", "0.1").andExpect(status().is3xxRedirection());
        see("/catalog/task-kinds/" + block)
                .andExpect(content().string(containsString("Count it as another kind")))
                .andExpect(content().string(containsString("Build: Sand with a pad")));
        send("/catalog/task-kinds/" + block + "/merging", "version", "0", "into", "")
                .andExpect(status().is(422))
                .andExpect(content().string(containsString("Choose from the list.")));
        send("/catalog/task-kinds/" + block + "/merging", "version", "0", "into", pad.toString())
                .andExpect(redirectedUrl("/catalog/task-kinds/" + pad));
        see("/catalog/task-kinds?q=sand with")
                .andExpect(content().string(containsString("Sand with a pad")))
                .andExpect(content().string(not(containsString("Sand with a block"))));
        see("/catalog/task-kinds/" + pad)
                .andExpect(content().string(containsString("Sand with a block")))
                .andExpect(content().string(not(containsString("Count it as another kind"))));
        see("/catalog/task-kinds/" + block)
                .andExpect(content().string(containsString("Counted as</span>")))
                .andExpect(content().string(not(containsString("/" + block + "/edit"))));
        send("/catalog/task-kinds/" + block + "/parting").andExpect(redirectedUrl("/catalog/task-kinds/" + block));
        see("/catalog/task-kinds/" + block).andExpect(content().string(containsString("/" + block + "/edit")));
    }

    /** The kind as its form would send it, but for the given fields. */
    private ResultActions update(TaskKindCard kind, String... changed) throws Exception {
        List<String> fields = new java.util.ArrayList<>(List.of(
                "name",
                kind.name(),
                "stage",
                kind.stageId().toString(),
                "unit",
                kind.unit().code(),
                "low",
                "0.01",
                "high",
                "5",
                "place",
                kind.place().code(),
                "hourClass",
                kind.hourClass().code(),
                "caution",
                kind.caution(),
                "cautionSource",
                kind.cautionSource()));
        fields.addAll(List.of(changed));
        if (!fields.contains("unitHours")) {
            fields.addAll(List.of("unitHours", kind.unitHours().toString()));
        }
        return send("/catalog/task-kinds/" + kind.id(), fields.toArray(String[]::new));
    }
}
