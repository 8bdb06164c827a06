package org.tallywright.past;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.tallywright.AppTest;
import org.tallywright.costing.SampleCosts;
import org.tallywright.estimates.LineOrigins;
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
import org.tallywright.web.Role;

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

    private String everythingOf(JobRef job) {
        return jdbc.sql("""
                        select string_agg(x, ' ' order by x) from (
                            select t::text as x from task t where job_id = :job union all
                            select p::text from piece p where job_id = :job union all
                            select e::text from time_entry e where job_id = :job union all
                            select v::text from job_event v where job_id = :job union all
                            select j::text from job j where id = :job) all_of_it""").param("job", job.id()).query(String.class).single();
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

    /** A lead with an option that nobody took: its hooks stay behind, delivery comes. */
    @Test
    void takesAWholeJobWithItsOtherCostsForWhoSeesMoney() {
        JobRef whole = estimates.windowSeat(people.person("Lior Vance", Role.OWNER));
        UUID hooks = estimates.other(whole, "Hooks", "80.00", built.seat().owner());
        people.asShop(() -> {
            jdbc.sql("insert into estimate_option (id, job_id, name, position, version) values (?, ?, 'Hooks', 1, 0)")
                    .params(hooks, whole.id())
                    .update();
            jdbc.sql("insert into estimate_option_line (option_id, job_id, estimate_other_id) values (:id, :job, :id)")
                    .param("id", hooks)
                    .param("job", whole.id())
                    .update();
        });

        CopyOffer offer = offers.offer(into, past.job(whole.number(), true), true, Map.of(), Map.of());

        assertThat(offer.groups()).hasSize(2);
        assertThat(offer.groups().get(0).tasks())
                .extracting(t -> t.past().name())
                .containsExactly("Travel");
        assertThat(offer.groups().get(1).materials()).hasSize(1);
        assertThat(offer.costs()).extracting(cost -> cost.past().description()).containsExactly("Delivery");
        assertThat(past.job(whole.number(), false).costs()).isEmpty();
    }
}
