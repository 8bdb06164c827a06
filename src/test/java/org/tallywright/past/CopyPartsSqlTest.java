package org.tallywright.past;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.cutting.Grain;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDesk;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.PartDetails;
import org.tallywright.takeoff.PartRows;
import org.tallywright.takeoff.TakeoffDesk;
import org.tallywright.web.SignedIn;

/** A bookcase that was taken off, with six shelves by its answers and one cleat listed by hand. */
@AppTest
class CopyPartsSqlTest {
    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SamplePast sample;

    @Autowired
    CatalogSeed catalog;

    @Autowired
    PieceKinds kinds;

    @Autowired
    PieceDesk pieces;

    @Autowired
    TakeoffDesk takeoff;

    @Autowired
    PartRows rows;

    @Autowired
    PastJobs past;

    @Autowired
    CopyOffers offers;

    @Autowired
    Copyist copyist;

    @Autowired
    CopyRemoval removal;

    @Autowired
    JdbcClient jdbc;

    SignedIn owner;
    JobRef library;
    UUID bookcase;
    JobRef into;

    @BeforeEach
    void takeOff() {
        owner = people.owner();
        catalog.load();
        library = jobs.lead(owner, "Library");
        bookcase = Ids.next();
        UUID by = owner.personId();
        pieces.save(library.id(), bookcase, null, details("34 1/8"), by);
        takeoff.takeOff(library.id(), bookcase, null, Map.of("shelves", "6"), by);
        takeoff.addAll(library.id(), bookcase, Ids.next(), List.of(listed("Cleat")), by);
        into = jobs.lead(owner, "Study");
    }

    private PieceDetails details(String width) {
        return new PieceDetails(
                kinds.named("Bookcase").orElseThrow().id(),
                "Left bookcase",
                inches(width),
                inches("92 3/4"),
                inches("13 1/2"),
                1,
                "");
    }

    private static Length inches(String typed) {
        return Length.parse(typed, Units.IMPERIAL);
    }

    private UUID copied(Map<UUID, PieceDetails> sizes) {
        CopyPlan plan =
                sample.plan(offers.offer(into, past.piece(bookcase), false, sizes, Map.of()), HoursChoice.Basis.BOOK);
        copyist.copy(into.id(), plan, owner.personId());
        return plan.id();
    }

    private List<String> parts() {
        return jdbc.sql("select name || ' ' || quantity || ' ' || length from part where job_id = ? order by 1")
                .param(into.id())
                .query(String.class)
                .list();
    }

    @Test
    void takesAnswersAndPartsAlongAtTheSameSizes() {
        UUID copy = copied(Map.of());

        assertThat(parts())
                .contains(
                        "Cleat 1 " + inches("30").units(),
                        "Loose shelf 6 " + inches("31").units());
        removal.takeOut(into.id(), copy, owner.personId(), true);
        assertThat(parts()).isEmpty();
        assertThat(jdbc.sql("select count(*) from part").query(Integer.class).single())
                .isPositive();
    }

    @Test
    void worksPartsOutAnewForOtherSizesAndLeavesThoseByHandBehind() {
        copied(Map.of(bookcase, details("35 1/8")));

        assertThat(parts())
                .contains("Loose shelf 6 " + inches("32").units())
                .noneMatch(part -> part.startsWith("Cleat"));
    }

    /** Its shelves changed, one cleat left out; taking off again leaves both alone, there and here. */
    @Test
    void takesChangedPartsOnceAndLeavesOutWhatWasLeftOut() {
        change("Loose shelf", "Shelf, scribed", 5);
        leaveOut(onlyOther("Loose shelf"));
        copied(Map.of());

        assertThat(partsOf(into.id()))
                .isEqualTo(partsOf(library.id()))
                .contains("Shelf, scribed 5 Loose shelf by hand");
        assertThat(takeoff.leftOut(pieceOf(into)))
                .isEqualTo(takeoff.leftOut(bookcase))
                .hasSize(1);
        takeoff.takeOff(into.id(), pieceOf(into), 0, takeoff.answered(bookcase).answers(), owner.personId());
        assertThat(partsOf(into.id())).isEqualTo(partsOf(library.id()));
    }

    /** A changed part does not fit other sizes: the formulas' own comes in its place. */
    @Test
    void worksChangedPartsOutAnewForOtherSizesAndStillLeavesOut() {
        String out = onlyOther("Loose shelf");
        change("Loose shelf", "Shelf, scribed", 5);
        leaveOut(out);
        copied(Map.of(bookcase, details("35 1/8")));

        assertThat(parts())
                .contains("Loose shelf 6 " + inches("32").units())
                .noneMatch(part -> part.startsWith("Shelf, scribed"));
        assertThat(rows.ofJob(into.id())).extracting(PartRows.Row::rule).doesNotContain(out);
        assertThat(takeoff.leftOut(pieceOf(into))).containsExactly(out);
    }

    /** A line of the formulas beside that one. */
    private String onlyOther(String rule) {
        return jdbc.sql("select min(rule) from part where piece_id = ? and rule not in ('', ?)")
                .params(bookcase, rule)
                .query(String.class)
                .single();
    }

    private void change(String rule, String name, int quantity) {
        PartDetails was = part(rule).details();
        PartDetails now = new PartDetails(
                name,
                quantity,
                was.length(),
                was.width(),
                was.materialId(),
                was.slot(),
                was.grain(),
                was.matched(),
                was.longEdges(),
                was.shortEdges(),
                was.faces(),
                was.joints());
        takeoff.save(library.id(), bookcase, part(rule).id(), part(rule).version(), now, owner.personId());
    }

    private void leaveOut(String rule) {
        takeoff.remove(library.id(), bookcase, part(rule).id(), owner.personId());
    }

    private PartRows.Row part(String rule) {
        return rows.ofPiece(library.id(), bookcase).stream()
                .filter(row -> row.rule().equals(rule))
                .findFirst()
                .orElseThrow();
    }

    private UUID pieceOf(JobRef job) {
        return jdbc.sql("select id from piece where job_id = ?")
                .param(job.id())
                .query(UUID.class)
                .single();
    }

    private List<String> partsOf(UUID job) {
        return rows.ofJob(job).stream()
                .map(row -> row.details().name() + " " + row.all() + " " + row.rule()
                        + (row.byHand() ? " by hand" : " worked out"))
                .sorted()
                .toList();
    }

    @Test
    void staysWherePartsWereListedByHandSince() {
        UUID copy = copied(Map.of());
        UUID plinth = Ids.next();
        takeoff.save(into.id(), pieceOf(into), plinth, null, listed("Plinth"), owner.personId());
        List<String> before = partsOf(into.id());

        assertThatThrownBy(() -> removal.takeOut(into.id(), copy, owner.personId(), true))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("\"Left bookcase\" were listed or changed by hand since it was copied: Plinth.");
        assertThat(partsOf(into.id())).isEqualTo(before).contains("Plinth 1  by hand", "Cleat 1  by hand");

        takeoff.remove(into.id(), pieceOf(into), plinth, owner.personId());
        removal.takeOut(into.id(), copy, owner.personId(), true);
        assertThat(partsOf(into.id())).isEmpty();
    }

    /** Both one that came by hand and one that the formulas made here. */
    @Test
    void staysWherePartsWereChangedByHandSince() {
        UUID copy = copied(Map.of());
        for (String name : List.of("Cleat", "Loose shelf")) {
            PartRows.Row row = rows.ofJob(into.id()).stream()
                    .filter(part -> part.details().name().equals(name))
                    .findFirst()
                    .orElseThrow();
            takeoff.save(into.id(), pieceOf(into), row.id(), row.version(), listed(name + ", wide"), owner.personId());
        }

        assertThatThrownBy(() -> removal.takeOut(into.id(), copy, owner.personId(), true))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Cleat, wide")
                .hasMessageContaining("Loose shelf, wide");
        assertThat(partsOf(into.id())).contains("Cleat, wide 1  by hand");
    }

    /** Back at the answers that came, it comes out, worked out again or not. */
    @Test
    void staysWhileItsAnswersAreOthers() {
        UUID copy = copied(Map.of());
        takeoff.takeOff(into.id(), pieceOf(into), 0, Map.of("shelves", "7", "play", "1/8 in"), owner.personId());

        assertThatThrownBy(() -> removal.takeOut(into.id(), copy, owner.personId(), true))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("with: play (not answered then), shelves (6 then).");
        assertThat(takeoff.answered(pieceOf(into)).answers()).containsEntry("shelves", "7");

        takeoff.takeOff(into.id(), pieceOf(into), 1, Map.of("shelves", "6"), owner.personId());
        removal.takeOut(into.id(), copy, owner.personId(), true);
        assertThat(partsOf(into.id())).isEmpty();
    }

    /** A part that came by hand and was taken out here, and a line left out here, hold nothing back. */
    @Test
    void comesOutWithPartsThatWereTakenOutHere() {
        UUID copy = copied(Map.of());
        for (PartRows.Row row : rows.ofJob(into.id())) {
            if (List.of("Cleat", "Loose shelf").contains(row.details().name())) {
                takeoff.remove(into.id(), pieceOf(into), row.id(), owner.personId());
            }
        }

        removal.takeOut(into.id(), copy, owner.personId(), true);

        for (String table : List.of("part", "piece_takeoff", "part_left_out", "piece", "past_copy_part")) {
            assertThat(jdbc.sql("select count(*) from " + table + " where job_id = ?")
                            .param(into.id())
                            .query(Integer.class)
                            .single())
                    .as(table)
                    .isZero();
        }
    }

    private static PartDetails listed(String name) {
        return new PartDetails(name, 1, inches("30"), inches("3"), null, "", Grain.ALONG, "", 0, 0, 0, 0);
    }
}
