package org.tallywright.takeoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.tallywright.AppTest;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.catalog.TaskKinds;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDesk;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.jobs.TakenOff;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Units;
import org.tallywright.web.SignedIn;

/** Whole sheets and van loads are counted over all pieces of a job, not for each of them. */
@AppTest
class JobSumsSqlTest {
    @Autowired
    TakenOff takenOff;

    @Autowired
    TakeoffDesk desk;

    @Autowired
    RecipeBook recipes;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    CatalogSeed catalog;

    @Autowired
    PieceKinds kinds;

    @Autowired
    TaskKinds taskKinds;

    @Autowired
    PieceDesk pieces;

    private SignedIn owner;
    private JobRef job;
    private UUID kind;

    @BeforeEach
    void shop() {
        owner = people.owner();
        catalog.load();
        job = jobs.lead(owner, "Library");
        kind = kinds.named("Bookcase").orElseThrow().id();
    }

    private UUID piece(String name, String width, String height, int count) {
        UUID piece = Ids.next();
        PieceDetails details = new PieceDetails(
                kind,
                name,
                Length.parse(width, Units.IMPERIAL),
                Length.parse(height, Units.IMPERIAL),
                Length.parse("12", Units.IMPERIAL),
                count,
                "");
        pieces.save(job.id(), piece, null, details, owner.personId());
        desk.takeOff(job.id(), piece, null, Map.of(), owner.personId());
        return piece;
    }

    private Quantity counted(UUID piece, String code) {
        UUID task = taskKinds.all().stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElseThrow()
                .id();
        Quantity quantity = takenOff.quantities(job.id(), piece).get(task);
        assertThat(quantity).as(code).isNotNull();
        return quantity;
    }

    /** Half a sheet a piece, 3 + 1 + 3 of them: 3.5 sheets are 4 whole ones, and 1.75 loads of two are 2 trips and one more. */
    @Test
    void halfSheetsOfSevenPiecesAreFourSheetsAndThreeTrips() {
        recipes.write(kind, null, """
                material | case | Case | ply_wo_34
                part | Panel | case | 1 | 4 ft | 4 ft
                task | sheet_cut | case_area / (4 ft * 8 ft) | up(before + sum) - up(before)
                task | supply_run | case_area / (2 * 4 ft * 8 ft) | up(job) + 1""", owner.personId());
        UUID left = piece("Left", "40", "30", 3);
        UUID middle = piece("Middle", "40", "30", 1);
        UUID right = piece("Right", "40", "30", 3);
        assertThat(counted(left, "sheet_cut")).isEqualTo(Quantity.of(2));
        assertThat(counted(middle, "sheet_cut")).isEqualTo(Quantity.ZERO);
        assertThat(counted(right, "sheet_cut")).isEqualTo(Quantity.of(2));
        for (UUID piece : new UUID[] {left, middle, right}) {
            assertThat(counted(piece, "supply_run")).isEqualTo(Quantity.of(3));
        }
    }

    /** What the shop wrote without a last column stays: rounded for one piece, times the pieces alike. */
    @Test
    void withoutALastColumnALineIsForOnePiece() {
        recipes.write(kind, null, """
                material | case | Case | ply_wo_34
                part | Panel | case | 1 | 4 ft | 4 ft
                task | sheet_cut | up(case_area / (4 ft * 8 ft))""", owner.personId());
        assertThat(counted(piece("Left", "40", "30", 3), "sheet_cut")).isEqualTo(Quantity.of(3));
    }

    /**
     * Ten sheets a load. One bookcase, in square inches: sides 2 x 90 x 11 1/4, top and bottom 2 x 31 1/2 x 11, back 86 x 31 1/2,
     * five shelves 30 7/8 x 10 1/4, toe kick 32 1/2 x 4; 7139 of 4608 are 1.55 sheets. Five are 7.75: one load and a trip beside.
     * Seven are 10.8: two loads.
     */
    @Test
    void fiveBookcasesAreNotTenTrips() {
        UUID first = piece("Pair", "34", "90", 2);
        UUID last = first;
        for (int n = 0; n < 3; n++) {
            last = piece("Single " + n, "34", "90", 1);
        }
        assertThat(counted(first, "supply_run")).isEqualTo(Quantity.of(2));
        assertThat(counted(last, "supply_run")).isEqualTo(Quantity.of(2));
        UUID two = piece("Two more", "34", "90", 2);
        for (UUID piece : new UUID[] {first, last, two}) {
            assertThat(counted(piece, "supply_run")).isEqualTo(Quantity.of(3));
        }
    }
}
