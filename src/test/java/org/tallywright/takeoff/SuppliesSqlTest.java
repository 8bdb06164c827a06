package org.tallywright.takeoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.tallywright.AppTest;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDesk;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Units;
import org.tallywright.web.SignedIn;

/** Hardware that the catalogue does not have. */
@AppTest
class SuppliesSqlTest {
    @Autowired
    BuyLister lister;

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
    PieceDesk pieces;

    /** Of two lengths only the one that is wanted is missed. */
    @Test
    void isMissedOnlyWhereItIsWanted() {
        SignedIn owner = people.owner();
        catalog.load();
        JobRef job = jobs.lead(owner, "Library");
        UUID kind = kinds.named("Bookcase").orElseThrow().id();
        recipes.write(kind, null, """
                material | case | Case | ply_wo_34
                material | long | Long slides | no_such_long
                material | short | Short slides | no_such_short
                part | Panel | case | 1 | width | depth
                supply | long | width >= 40 in
                supply | short | width < 40 in""", owner.personId());
        UUID piece = Ids.next();
        Length size = Length.parse("30", Units.IMPERIAL);
        pieces.save(job.id(), piece, null, new PieceDetails(kind, "Left", size, size, size, 1, ""), owner.personId());
        desk.takeOff(job.id(), piece, null, Map.of(), owner.personId());
        assertThat(lister.of(job.id()).without()).isEqualTo(List.of("short, Left"));
    }
}
