package org.tallywright.daylog.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.tallywright.daylog.Place;
import org.tallywright.daylog.Target;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Ids;
import org.tallywright.shared.ShopAccount;

class LineReaderTest {
    private final Place glue = task("Edge-glue panels, seat top", "26-014", "Window seat", HourClass.DIRECT);
    private final Place sand = task("Finish sand", "26-014", "Window seat", HourClass.DIRECT);
    private final Place rail = task("Door rail, fit", "26-011", "Pantry", HourClass.DIRECT);
    private final Place travel = task("Travel, round trip", "26-014", "Window seat", HourClass.TRAVEL);
    private final Place job = new Place(
            Target.job(Ids.next()),
            Ids.next(),
            "26-014",
            "Window seat",
            "running",
            "Window seat",
            "",
            HourClass.DIRECT,
            false,
            null,
            null,
            false);
    private final LineReader reader = new LineReader(
            List.of(glue, sand, rail, travel),
            List.of(Place.ofShop(ShopAccount.MAINTENANCE), job),
            () -> Map.of(
                    "Stain or dye", "Stain or dye", "Finish sand", "Finish sand", "Rub with a block", "Finish sand"));

    @Test
    void understandsTheLineOfTheSpecification() {
        var heard = reader.read("glue-up 2h30, sanding 45m, rework 20m door rail");
        assertThat(heard).extracting(LineReader.Heard::place).containsExactly(glue, sand, rail);
        assertThat(heard).extracting(LineReader.Heard::time).containsExactly("2 h 30", "45 min", "20 min");
        assertThat(heard.get(2).hourClass()).isEqualTo(HourClass.REWORK);
        assertThat(heard.get(2).reason()).isEqualTo("door rail");
    }

    @Test
    void takesTheOneTaskOfAClassThatStandsAlone() {
        assertThat(reader.read("travel 1h10").get(0).place()).isEqualTo(travel);
    }

    @Test
    void leadsTheNameOfAMergedKindToTheOneItIsCountedAs() {
        assertThat(reader.read("block rubbing 1h").get(0).place()).isEqualTo(sand);
        LineReader without = new LineReader(List.of(), List.of(job), () -> Map.of("Rub with a block", "Finish sand"));
        assertThat(without.read("block rubbing 1h").get(0).ask()).contains("sounds like Finish sand");
    }

    @Test
    void looksBeyondTheLikelyOnes() {
        assertThat(reader.read("maintenance 1h").get(0).place()).isEqualTo(Place.ofShop(ShopAccount.MAINTENANCE));
    }

    @Test
    void asksWhenTwoFitAlikeAndLetsTheJobDecide() {
        Place other = task("Finish sand", "26-011", "Pantry", HourClass.DIRECT);
        LineReader two = new LineReader(List.of(sand, other), List.of(), Map::of);
        var unclear = two.read("sanding 1h").get(0);
        assertThat(unclear.place()).isNull();
        assertThat(unclear.perhaps()).containsExactly(sand, other);
        assertThat(two.read("sanding pantry 1h").get(0).place()).isEqualTo(other);
        assertThat(two.read("sanding 1h in the pantry").get(0).place()).isEqualTo(other);
    }

    @Test
    void neverGuessesAtUnknownWords() {
        var heard = reader.read("polishing 1h").get(0);
        assertThat(heard.place()).isNull();
        assertThat(heard.perhaps()).isEmpty();
        assertThat(heard.time()).isEqualTo("1 h");
    }

    @Test
    void forgivesASlipAndTheOrderOfWords() {
        assertThat(reader.read("sandign 45m").get(0).place()).isEqualTo(sand);
        assertThat(reader.read("seat top panels gleu 1h").get(0).place()).isEqualTo(glue);
        assertThat(reader.read("2h30 fit rail door").get(0).place()).isEqualTo(rail);
        var rework = reader.read("20m rework door rail").get(0);
        assertThat(rework.place()).isEqualTo(rail);
        assertThat(rework.hourClass()).isEqualTo(HourClass.REWORK);
        assertThat(reader.read("door rail rework 20m").get(0).hourClass()).isEqualTo(HourClass.REWORK);
    }

    @Test
    void theBetterFitWinsOverTheLikelierOne() {
        Place pantry = task("Finish sand", "26-011", "Pantry", HourClass.DIRECT);
        LineReader two = new LineReader(List.of(sand), List.of(pantry), Map::of);
        assertThat(two.read("pantry sanding 1h").get(0).place()).isEqualTo(pantry);
        assertThat(two.read("sanding 1h").get(0).place()).isEqualTo(sand);
    }

    @Test
    void asksOnWhatTheReworkWasOfferingWhatTheLineNames() {
        var heard = reader.read("glue-up 2,5, sanding 45m, rework 20m hinge side");
        assertThat(heard.get(0).time()).isEqualTo("2 h 30");
        assertThat(heard.get(2).place()).isNull();
        assertThat(heard.get(2).ask()).isNotNull();
        assertThat(heard.get(2).perhaps()).containsExactly(glue, sand);
        assertThat(heard.get(2).reason()).isEqualTo("hinge side");
    }

    @Test
    void knowsTheCatalogueAndAsksForTheJob() {
        var heard = reader.read("staining 1h").get(0);
        assertThat(heard.place()).isNull();
        assertThat(heard.ask()).contains("Stain or dye").contains("On which job?");
        assertThat(heard.perhaps()).containsExactly(job);
        assertThat(heard.note()).isEqualTo("staining");
    }

    @Test
    void reportsAPartWithoutATimeByItself() {
        var heard = reader.read("sanding, glue-up 2h");
        assertThat(heard.get(0).problem()).contains("How long");
        assertThat(heard.get(1).place()).isEqualTo(glue);
    }

    private static Place task(String name, String number, String job, HourClass usual) {
        UUID id = Ids.next();
        return new Place(
                Target.task(id), Ids.next(), number, job, "running", name, "Build", usual, false, null, null, false);
    }
}
