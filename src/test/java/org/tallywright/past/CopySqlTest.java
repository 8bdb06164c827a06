package org.tallywright.past;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.costing.SampleCosts;
import org.tallywright.cutting.Grain;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.ClientYes;
import org.tallywright.estimates.LineOrigins;
import org.tallywright.estimates.OptionDesk;
import org.tallywright.estimates.OptionDraft;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.Units;
import org.tallywright.takeoff.PartDetails;
import org.tallywright.takeoff.TakeoffDesk;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** A closed window seat copied into a lead: what comes, at which hours and prices, and what stays behind. */
@AppTest
class CopySqlTest {
    @Autowired
    SamplePast sample;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SampleEstimates estimates;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleCosts costs;

    @Autowired
    OptionDesk options;

    @Autowired
    Bids bids;

    @Autowired
    TakeoffDesk takeoff;

    @Autowired
    PastJobs past;

    @Autowired
    CopyOffers offers;

    @Autowired
    Copyist copyist;

    @Autowired
    CopyRemoval removal;

    @Autowired
    LineOrigins origins;

    @Autowired
    JobDesk desk;

    @Autowired
    JdbcClient jdbc;

    SamplePast.Built built;
    JobRef into;
    UUID by;

    @BeforeEach
    void buildOne() {
        built = sample.closed();
        sample.price(built.seat().oak(), "12.50");
        by = built.seat().owner().personId();
        into = jobs.lead(built.seat().owner(), "Seat for the library");
    }

    private CopyOffer offer(Map<UUID, PieceDetails> sizes) {
        return offers.offer(into, past.piece(built.piece()), false, sizes, Map.of());
    }

    private PieceDetails twiceAsWide() {
        PieceDetails then = past.piece(built.piece()).pieces().get(0).details();
        return new PieceDetails(
                then.pieceKindId(),
                "Seat, south",
                Length.parse("122 3/4", Units.IMPERIAL),
                then.height(),
                then.depth(),
                1,
                "");
    }

    private List<String> taskLines() {
        return jdbc.sql("""
                        select name || ': ' || quantity::float8 || ' ' || unit || ', ' || estimated_minutes || ' min, ' || state
                        from task where job_id = ? order by name""").param(into.id()).query(String.class).list();
    }

    private int count(String table, JobRef job) {
        return jdbc.sql("select count(*) from " + table + " where job_id = ?")
                .param(job.id())
                .query(Integer.class)
                .single();
    }

    @Test
    void bringsWhatWasReallyDoneAtTheHoursThatItTook() {
        copyist.copy(into.id(), sample.plan(offer(Map.of()), HoursChoice.Basis.TOOK), by);

        // 120 lf in 2 h; 3 panels in 2 h 30, the rework not among them; the coat was never needed.
        assertThat(taskLines())
                .containsExactly("Glue up panel: 3 panel, 150 min, planned", "Rip hardwood: 120 lf, 120 min, planned");
        assertThat(count("time_entry", into)).isZero();
        assertThat(count("site_measure", into)).isZero();
    }

    @Test
    void offersTheRateBookOfTodayAndTheEstimateOfThen() {
        jdbc.sql("update task_kind set unit_hours = 0.02 where code = 'rip_hardwood'")
                .update();
        CopyOffer.TaskLine rip = offer(Map.of()).groups().get(0).tasks().stream()
                .filter(t -> t.past().name().equals("Rip hardwood"))
                .findFirst()
                .orElseThrow();

        assertThat(rip.choices())
                .containsExactly(
                        new HoursChoice(HoursChoice.Basis.BOOK, UnitHours.of("0.02")),
                        new HoursChoice(HoursChoice.Basis.TOOK, UnitHours.of(new BigDecimal("0.01667"))),
                        new HoursChoice(HoursChoice.Basis.THEN, UnitHours.of("0.015")));
        assertThat(rip.choices().get(0).words(rip.quantity(), rip.unit())).isEqualTo("Rate book: 2 h 24 (0.02 h/lf)");
        assertThat(rip.notes()).containsExactly("2 h there for 120 lf; estimated 1 h 30 for 100 lf");
    }

    /** Twice as wide: twice the face, so 240 lf; 3 panels become 6; 33 bf become 66. */
    @Test
    void scalesToTheNewSizesAndBuysAtTheYieldAndPriceOfToday() {
        copyist.copy(into.id(), sample.plan(offer(Map.of(built.piece(), twiceAsWide())), HoursChoice.Basis.BOOK), by);

        assertThat(taskLines())
                .containsExactly("Glue up panel: 6 panel, 360 min, planned", "Rip hardwood: 240 lf, 216 min, planned");
        // 66 bf at a yield of 0.6 buys 110 bf at 12.50.
        assertThat(jdbc.sql("""
                        select p.name || ' ' || l.net_quantity::float8 || ' ' || l.purchase_quantity::float8 || ' ' || l.amount
                        from estimate_material l join piece p on p.id = l.piece_id where l.job_id = ?""").param(into.id()).query(String.class).list())
                .containsExactly("Seat, south 66 110 1375.00");
    }

    @Test
    void saysOfEachLineWhereItComesFrom() {
        CopyPlan plan = sample.plan(offer(Map.of()), HoursChoice.Basis.BOOK);
        copyist.copy(into.id(), plan, by);

        LineOrigins.Origins said = origins.of(into.id());
        assertThat(said.lines().values())
                .contains("As in " + built.seat().job().number()
                        + ", Window seat: 2 h 30 there for 3 panel, and 30 min rework");
        assertThat(said.copies()).hasSize(1);
        assertThat(said.copies().get(0).words()).contains("Window seat").endsWith("4 lines");
    }

    @Test
    void leavesThePastJobAsItWas() {
        String before = everythingOf(built.seat().job());
        copyist.copy(into.id(), sample.plan(offer(Map.of()), HoursChoice.Basis.TOOK), by);
        assertThat(everythingOf(built.seat().job())).isEqualTo(before);
    }

    /** A lead with lines of its estimate, a part, and a bid that is out. */
    @Test
    void leavesTheEstimatePartsAndBidThereAsTheyWere() {
        SignedIn lior = people.person("Lior Vance", Role.OWNER);
        JobRef whole = estimates.windowSeat(lior);
        UUID seat = jdbc.sql("select id from piece where job_id = ?")
                .param(whole.id())
                .query(UUID.class)
                .single();
        Length foot = Length.parse("12", Units.IMPERIAL);
        PartDetails cleat = new PartDetails("Cleat", 1, foot, foot, null, "", Grain.ALONG, "", 0, 0, 0, 0);
        takeoff.addAll(whole.id(), seat, Ids.next(), List.of(cleat), by);
        estimates.issued(whole, lior);
        String before = everythingOf(whole);
        assertThat(before).contains("Cleat", "Delivery", "White oak", whole.number() + " A");

        CopyPlan some =
                sample.plan(offers.offer(into, past.piece(seat), false, Map.of(), Map.of()), HoursChoice.Basis.BOOK);
        CopyPlan plan = new CopyPlan(
                some.id(),
                some.from(),
                some.fromPiece(),
                some.what(),
                some.pieces(),
                some.tasks(),
                some.materials(),
                past.job(whole.number(), true).costs());
        copyist.copy(into.id(), plan, by);

        for (String table : List.of("piece", "task", "estimate_material", "estimate_other", "part")) {
            assertThat(count(table, into)).as(table).isPositive();
        }
        assertThat(everythingOf(whole)).isEqualTo(before);
    }

    /** Every row of every table that belongs to a job. */
    private String everythingOf(JobRef job) {
        StringBuilder all = new StringBuilder(rows("job where id = ?", job))
                .append(rows("bid_material where bid_id in (select id from bid where job_id = ?)", job))
                .append(rows("bid_other where bid_id in (select id from bid where job_id = ?)", job));
        jdbc.sql("""
                        select c.table_name from information_schema.columns c join information_schema.tables t
                            on t.table_schema = c.table_schema and t.table_name = c.table_name
                        where c.column_name = 'job_id' and t.table_type = 'BASE TABLE' and t.table_schema = current_schema()
                        order by 1""").query(String.class).list().forEach(table -> all.append(rows(table + " where job_id = ?", job)));
        return all.toString();
    }

    private String rows(String from, JobRef job) {
        return from + ": "
                + jdbc.sql(
                                "select coalesce(string_agg(x.line, ' ' order by x.line), '') from (select r::text as line from "
                                        + from.replaceFirst(" where", " r where") + ") x")
                        .param(job.id())
                        .query(String.class)
                        .single()
                + "\n";
    }

    @Test
    void copiesOnceHoweverOftenItIsSent() {
        CopyPlan plan = sample.plan(offer(Map.of()), HoursChoice.Basis.TOOK);
        copyist.copy(into.id(), plan, by);
        copyist.copy(into.id(), plan, by);

        assertThat(taskLines()).hasSize(2);
        assertThat(count("piece", into)).isEqualTo(1);
        assertThat(copyist.knows(plan.id())).isTrue();
        JobRef other = jobs.lead(built.seat().owner(), "Another");
        assertThatThrownBy(() -> copyist.copy(other.id(), plan, by)).isInstanceOf(NotHere.class);
    }

    /** Nobody is told "Copied" of what was not copied. */
    @Test
    void anotherCopyUnderTheSameIdIsToldSo() {
        CopyPlan plan = sample.plan(offer(Map.of()), HoursChoice.Basis.TOOK);
        copyist.copy(into.id(), plan, by);
        List<CopyPlan> others = List.of(
                with(plan, plan.pieces(), plan.tasks().subList(0, 1), plan.materials()),
                with(plan, plan.pieces(), plan.tasks(), List.of()),
                with(plan, List.of(), plan.tasks(), plan.materials()),
                with(
                        plan,
                        plan.pieces(),
                        sample.plan(offer(Map.of()), HoursChoice.Basis.THEN).tasks(),
                        plan.materials()),
                with(
                        plan,
                        plan.pieces(),
                        plan.tasks().stream()
                                .map(t -> new CopyPlan.TaskLine(
                                        t.source(),
                                        t.piece(),
                                        t.kindId(),
                                        t.name(),
                                        Quantity.of("7"),
                                        t.rate(),
                                        t.origin()))
                                .toList(),
                        plan.materials()));
        for (CopyPlan other : others) {
            assertThatThrownBy(() -> copyist.copy(into.id(), other, by)).isInstanceOf(Stale.class);
        }
        assertThat(taskLines()).hasSize(2);
    }

    private static CopyPlan with(
            CopyPlan plan,
            List<CopyPlan.PieceLine> pieces,
            List<CopyPlan.TaskLine> tasks,
            List<CopyPlan.MaterialLine> materials) {
        return new CopyPlan(
                plan.id(), plan.from(), plan.fromPiece(), plan.what(), pieces, tasks, materials, plan.costs());
    }

    @Test
    void aCopyThatWasTakenOutDoesNotComeBackWithItsOldPage() {
        CopyPlan plan = sample.plan(offer(Map.of()), HoursChoice.Basis.TOOK);
        copyist.copy(into.id(), plan, by);
        removal.takeOut(into.id(), plan.id(), by, true);
        removal.takeOut(into.id(), plan.id(), by, true);

        assertThat(copyist.knows(plan.id())).isTrue();
        assertThatThrownBy(() -> copyist.copy(into.id(), plan, by)).isInstanceOf(Stale.class);
        assertThat(taskLines()).isEmpty();
        copyist.copy(into.id(), sample.plan(offer(Map.of()), HoursChoice.Basis.TOOK), by);
        assertThat(taskLines()).hasSize(2);
    }

    @Test
    void isRefusedByWhatIsSoldClosedOrItself() {
        CopyPlan plan = sample.plan(offer(Map.of()), HoursChoice.Basis.TOOK);
        assertThatThrownBy(() -> copyist.copy(built.seat().job().id(), plan, by))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("closed");
        desk.reopen(built.seat().job().id(), "more to do", by);
        assertThatThrownBy(() -> copyist.copy(built.seat().job().id(), plan, by))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("itself");

        JobRef lead = jobs.lead(built.seat().owner(), "Back to the first");
        CopyOffer back = offers.offer(built.seat().job(), past.job(lead.number(), true), true, Map.of(), Map.of());
        CopyPlan empty =
                new CopyPlan(Ids.next(), back.from(), null, lead.number(), List.of(), List.of(), List.of(), List.of());
        assertThatThrownBy(() -> copyist.copy(built.seat().job().id(), empty, by))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("was accepted");
        assertThatThrownBy(() -> copyist.copy(into.id(), empty, by))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Tick");
    }

    @Test
    void findsNoPieceOfThatId() {
        assertThatThrownBy(() -> past.piece(Ids.next())).isInstanceOf(NotHere.class);
    }

    @Test
    void readsHoursAndQuantitiesAsTheReviewFrozeThem() {
        costs.entry(built.seat().job(), built.seat().rip(), built.seat().owner(), SampleCosts.LATER, "direct", 600, "");
        costs.entry(
                built.seat().job(), built.seat().rip(), built.seat().owner(), SampleCosts.LATER, "call-back", 45, "x");

        PastTask rip = past.piece(built.piece()).tasks().stream()
                .filter(t -> t.id().equals(built.seat().rip()))
                .findFirst()
                .orElseThrow();
        assertThat(rip.minutes()).isEqualTo(120);
        assertThat(rip.callBack()).isEqualTo(45);
    }

    /** Travel was answered "done" when the job was closed, so nobody counted it. Reopened, the task itself is read. */
    @Test
    void saysWhereNobodyConfirmedTheQuantity() {
        assertThat(story("Travel")).isEqualTo("1 h there for 1 trip, quantity not confirmed; estimated 1 h for 1 trip");
        assertThat(story("Rip hardwood")).doesNotContain("confirmed");
        jdbc.sql("update task set quantity_confirmed = not quantity_confirmed where state = 'done'")
                .update();
        assertThat(story("Travel")).as("as the review froze it").contains("not confirmed");

        desk.reopen(built.seat().job().id(), "more to do", by);
        assertThat(story("Travel")).doesNotContain("confirmed");
        assertThat(story("Rip hardwood"))
                .isEqualTo("2 h there for 120 lf, quantity not confirmed; estimated 1 h 30 for 100 lf");
    }

    private String story(String task) {
        return past.job(built.seat().job().number(), true).tasks().stream()
                .filter(t -> t.name().equals(task))
                .map(PastTask::story)
                .findFirst()
                .orElseThrow();
    }

    /** What is in an option that nobody took stays behind, work, material and hooks alike; delivery comes. */
    @Test
    void takesAWholeJobWithItsOtherCostsForWhoSeesMoney() {
        JobRef whole = wholeWithOption();

        CopyOffer offer = offers.offer(into, past.job(whole.number(), true), true, Map.of(), Map.of());

        assertThat(offer.groups()).hasSize(2);
        assertThat(offer.groups().get(0).tasks())
                .extracting(t -> t.past().name())
                .containsExactly("Travel");
        assertThat(offer.groups().get(0).materials()).isEmpty();
        assertThat(offer.groups().get(1).materials()).hasSize(1);
        assertThat(offer.costs()).extracting(cost -> cost.past().description()).containsExactly("Delivery");
        assertThat(past.job(whole.number(), false).costs()).isEmpty();
    }

    @Test
    void takesTheOptionAlongThatTheClientTook() {
        JobRef whole = wholeWithOption();
        UUID bid = estimates.issued(whole, built.seat().owner());
        UUID hooks = bids.paper(bid).options().get(0).id();
        bids.acceptByLink(bid, whole.id(), new ClientYes("Orrin", Set.of(hooks), "203.0.113.7"));

        CopyOffer offer = offers.offer(into, past.job(whole.number(), true), true, Map.of(), Map.of());

        assertThat(offer.groups().get(0).tasks())
                .extracting(t -> t.past().name())
                .containsExactlyInAnyOrder("Travel", "Hang a peg rail");
        assertThat(offer.groups().get(0).materials())
                .extracting(m -> m.past().name())
                .containsExactly("Hard maple");
        assertThat(offer.costs())
                .extracting(cost -> cost.past().description())
                .containsExactlyInAnyOrder("Delivery", "Hooks");
    }

    private JobRef wholeWithOption() {
        SignedIn owner = built.seat().owner();
        JobRef whole = estimates.windowSeat(people.person("Lior Vance", Role.OWNER));
        UUID rail = jobs.task(whole, null, jobs.kind("peg_rail", "Hang a peg rail", "Build", "each", "1"), "1", owner);
        UUID maple = estimates.material(
                whole, null, estimates.material("maple", "Hard maple", "bf", "0.60", "9.00"), "4", owner);
        UUID hooks = estimates.other(whole, "Hooks", "80.00", owner);
        options.save(
                whole.id(),
                new OptionDraft(Ids.next(), null, "Peg rail", "As drawn.", "", Set.of(rail, maple, hooks)),
                by);
        return whole;
    }
}
