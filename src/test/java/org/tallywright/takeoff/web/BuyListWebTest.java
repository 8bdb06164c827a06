package org.tallywright.takeoff.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.ClientYes;
import org.tallywright.estimates.CostSaid;
import org.tallywright.estimates.EstimatePricer;
import org.tallywright.estimates.OptionDesk;
import org.tallywright.estimates.OptionDraft;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDesk;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.materials.MovementDraft;
import org.tallywright.materials.StoreRoom;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Length;
import org.tallywright.shared.Money;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Units;
import org.tallywright.web.SignedIn;

/** What the shop has already, and what the estimate's material lines make of the buy list. */
@AppTest
class BuyListWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    CatalogSeed catalog;

    @Autowired
    PieceDesk pieces;

    @Autowired
    StoreRoom store;

    @Autowired
    SampleEstimates estimates;

    @Autowired
    Bids bids;

    @Autowired
    EstimatePricer pricer;

    @Autowired
    OptionDesk options;

    private SignedIn owner;
    private JobRef job;
    private UUID piece;
    private String base;

    @BeforeEach
    void panels() {
        owner = people.owner();
        catalog.load();
        job = jobs.lead(owner, "Library");
        piece = Ids.next();
        pieces.save(
                job.id(),
                piece,
                null,
                new PieceDetails(
                        null,
                        "Wall panels",
                        Length.parse("60", Units.IMPERIAL),
                        Length.parse("90", Units.IMPERIAL),
                        Length.parse("12", Units.IMPERIAL),
                        1,
                        ""),
                owner.personId());
        base = "/jobs/" + job.number();
    }

    private MockHttpServletRequestBuilder sent(MockHttpServletRequestBuilder request) {
        return request.with(csrf()).with(SamplePeople.signedIn(owner));
    }

    private Document page(String path) throws Exception {
        return Jsoup.parse(mvc.perform(sent(get(path)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    /** Two of these, 46 x 46, lie on one sheet of 48 x 96. */
    private void panel(String quantity, String length, String width, String material) throws Exception {
        mvc.perform(sent(post(base + "/pieces/" + piece + "/parts"))
                        .param("id", Ids.next().toString())
                        .param("name", "Panel")
                        .param("quantity", quantity)
                        .param("length", length)
                        .param("width", width)
                        .param("grain", "along")
                        .param("material", material(material).toString()))
                .andExpect(status().is3xxRedirection());
    }

    private String put() throws Exception {
        return Objects.toString(mvc.perform(sent(post(base + "/buy-list/lines")))
                .andExpect(status().is3xxRedirection())
                .andReturn()
                .getFlashMap()
                .get("flash"));
    }

    /** The catalogue's price from now on. */
    private void priced(String material, String price) {
        people.asShop(() -> {
            jdbc.sql("delete from material_price where material_id = ?")
                    .param(material(material))
                    .update();
            jdbc.sql("insert into material_price (material_id, from_date, unit_price) values (?, date '2026-01-01', ?)")
                    .params(material(material), new BigDecimal(price))
                    .update();
        });
    }

    private void stocked(String material, String quantity) {
        bought(material, quantity, null, "90");
    }

    private void taken(String material, String quantity) {
        store.save(
                Ids.next(),
                null,
                new MovementDraft.Taken(
                        new MovementDraft.Common(job.id(), material(material), Quantity.of(quantity), ""),
                        null,
                        true,
                        LocalDate.of(2026, 1, 6)),
                owner);
    }

    private void bought(String material, String quantity, @Nullable UUID forJob, String price) {
        store.save(
                Ids.next(),
                null,
                new MovementDraft.Bought(
                        new MovementDraft.Common(forJob, material(material), Quantity.of(quantity), ""),
                        UnitPrice.of(price),
                        Money.ZERO,
                        "",
                        "",
                        LocalDate.of(2026, 1, 5)),
                owner);
    }

    private void offcut(String material, String size, String quantity) {
        store.save(
                Ids.next(),
                null,
                new MovementDraft.Kept(
                        new MovementDraft.Common(null, material(material), Quantity.of(quantity), ""),
                        size,
                        Money.ZERO,
                        LocalDate.of(2026, 1, 5),
                        null),
                owner);
    }

    private UUID material(String code) {
        return jdbc.sql("select id from material where code = ?")
                .param(code)
                .query(UUID.class)
                .single();
    }

    private void edit(String price, String freight) throws Exception {
        Document form = page(base + "/estimate/materials/" + lineId());
        MockHttpServletRequestBuilder request = sent(post(base + "/estimate/materials"));
        for (String name : new String[] {"id", "version", "net", "yield"}) {
            request.param(name, form.select("input[name=" + name + "]").attr("value"));
        }
        request.param(
                        "material",
                        form.select("select[name=material] option[selected]").attr("value"))
                .param("price", price)
                .param("freight", freight);
        mvc.perform(request).andExpect(status().is3xxRedirection());
    }

    private <T> T one(String sql, Class<T> sort) {
        return jdbc.sql(sql).param(job.id()).query(sort).single();
    }

    private String lineId() {
        return one("select id from estimate_material where job_id = ?", UUID.class)
                .toString();
    }

    private BigDecimal amount() {
        return one("select amount from estimate_material where job_id = ?", BigDecimal.class);
    }

    private @Nullable BigDecimal safe() {
        return jdbc.sql("select safe_quantity from estimate_material where job_id = ?")
                .param(job.id())
                .query((row, n) -> Optional.ofNullable(row.getBigDecimal(1)))
                .single()
                .orElse(null);
    }

    private List<String> lines() {
        return jdbc.sql("select m.code || ' ' || trim_scale(e.purchase_quantity) from estimate_material e"
                        + " join material m on m.id = e.material_id where job_id = ? order by m.code, e.position")
                .param(job.id())
                .query(String.class)
                .list();
    }

    @Test
    void whatStockAndOffcutsCoverKeepsNothingElseFromTheEstimate() throws Exception {
        panel("1", "30", "20", "ply_maple_34");
        panel("1", "46", "46", "ply_wo_34");
        offcut("ply_maple_34", "64 x 48", "0.6667");
        put();
        assertThat(lines()).containsExactly("ply_wo_34 1");
    }

    /** Three sheets of 96 x 48 hold five panels of 46 x 46; two are in stock. The catalogue's price is 100. */
    @Test
    void stockIsPaidForByTheJobAsTheCostsWillSay() throws Exception {
        priced("ply_maple_34", "100");
        panel("5", "46", "46", "ply_maple_34");
        stocked("ply_maple_34", "2");

        assertThat(page(base + "/buy-list").select("table.buy").text())
                .contains("1 sheet of 96\" x 48\" to buy", "2 sheets from stock");
        put();
        assertThat(lines()).containsExactly("ply_maple_34 3");
        assertThat(amount()).isEqualByComparingTo("300");
        assertThat(page(base + "/estimate").select("#materials").text()).contains("1 to buy, 2 from stock");

        bought("ply_maple_34", "1", job.id(), "100");
        taken("ply_maple_34", "2");
        assertThat(jdbc.sql("select material_amount from costing_job where job_id = ?")
                        .param(job.id())
                        .query(BigDecimal.class)
                        .single())
                .isEqualByComparingTo("300");
    }

    @Test
    void whatStockCoversWhollyStaysInThePrice() throws Exception {
        priced("ply_maple_34", "100");
        panel("5", "46", "46", "ply_maple_34");
        stocked("ply_maple_34", "7");
        put();
        assertThat(lines()).containsExactly("ply_maple_34 3");
        assertThat(page(base + "/estimate").select("#materials").text()).contains("0 to buy, 3 from stock");
    }

    /** Of 100 sf in the work at 0.80 it takes 125: 25 in offcuts, 40 in stock, so 60 to buy and 100 to pay. */
    @Test
    void withoutALayoutStockAndOffcutsAreUsedFirstToo() throws Exception {
        jdbc.sql("update material set unit = 'sf', starting_yield = 0.8, purchase_step = 1 where code = 'ply_maple_34'")
                .update();
        people.asShop(() -> jdbc.sql("delete from material_form").update());
        jdbc.sql("update material set code = 'own_sheet' where code = 'ply_maple_34'")
                .update();
        priced("own_sheet", "4");
        panel("1", "100", "144", "own_sheet");
        stocked("own_sheet", "40");
        offcut("own_sheet", "odd", "25");

        assertThat(page(base + "/buy-list").select("table.buy").text())
                .contains("40 sf from stock", "25 sf from offcuts")
                .contains("60 sf");
        put();
        assertThat(lines()).containsExactly("own_sheet 100");
    }

    @Test
    void theCataloguesPriceIsFollowedAndATypedOneStays() throws Exception {
        priced("ply_maple_34", "100");
        panel("1", "46", "46", "ply_maple_34");
        put();
        assertThat(amount()).isEqualByComparingTo("100");
        priced("ply_maple_34", "110");
        put();
        assertThat(amount()).isEqualByComparingTo("110");

        // The form sends the price back as it shows it: that is not typing one.
        edit("110.00", "7.00");
        priced("ply_maple_34", "120");
        put();
        assertThat(amount()).isEqualByComparingTo("127");

        edit("99", "7.00");
        priced("ply_maple_34", "130");
        put();
        assertThat(amount()).isEqualByComparingTo("106");
    }

    /** A layout stays through an edit of price and freight; another yield makes it net / yield again. */
    @Test
    void aLayoutStaysUntilSomebodyWritesAnotherYield() throws Exception {
        priced("ply_maple_34", "100");
        panel("5", "46", "46", "ply_maple_34");
        put();
        edit("99", "");
        assertThat(lines()).containsExactly("ply_maple_34 3");
        assertThat(safe()).isEqualByComparingTo("3");
        mvc.perform(sent(post(base + "/estimate/materials"))
                        .param("id", lineId())
                        .param(
                                "version",
                                String.valueOf(
                                        one("select version from estimate_material where job_id = ?", Integer.class)))
                        .param("material", material("ply_maple_34").toString())
                        .param("net", "3")
                        .param("yield", "0.5"))
                .andExpect(status().is3xxRedirection());
        assertThat(lines()).containsExactly("ply_maple_34 6");
        assertThat(safe()).isNull();
    }

    /** Boards enter at the need that half the lots stay under; the buy list says the one of four in five. */
    @Test
    void boardsEnterAtTheirLikelyNeed() throws Exception {
        priced("wo_qs_44", "10");
        panel("12", "40", "5", "wo_qs_44");
        String how = page(base + "/buy-list").select("table.buy").text();
        put();
        BigDecimal likely = new BigDecimal(lines().get(0).split(" ")[1]);
        BigDecimal safe = Objects.requireNonNull(safe());
        assertThat(safe).isGreaterThan(likely);
        assertThat(amount()).isEqualByComparingTo(likely.multiply(BigDecimal.TEN));
        assertThat(how).contains(safe.stripTrailingZeros().toPlainString() + " bf");
    }

    /** Offcuts of 4 bf and the agreed line cover most of the need; what is to buy beyond them strays as the whole of it does. */
    @Test
    void boardsBeyondTheAgreedAreDrawnOfTheWholeNeed() throws Exception {
        people.paid(owner, LocalDate.of(2026, 1, 1), "40", "20");
        priced("wo_qs_44", "10");
        offcut("wo_qs_44", "96 x 6", "4");
        panel("40", "40", "5", "wo_qs_44");
        put();
        double agreed = figures("purchase_quantity").get(0);
        assertThat(figures("covered_quantity")).containsExactly(4.0);
        estimates.other(job, "Delivery", "45.50", owner);
        bids.acceptByLink(estimates.issued(job, owner), job.id(), new ClientYes("Orrin Baskwell", Set.of(), ""));
        panel("1", "40", "5", "wo_qs_44");
        put();
        assertThat(figures("covered_quantity")).containsExactly(4.0, agreed + 4);

        jobs.task(job, null, jobs.kind("trip_out", "Trip", "Install", "trip", "1"), "2", owner);
        double likely = figures("purchase_quantity").get(1);
        double safe = figures("safe_quantity").get(1);
        double mean = beyond(likely + agreed + 4, safe + agreed + 4, agreed + 4);
        assertThat(Objects.requireNonNull(pricer.of(job.id()).cost())
                        .material()
                        .amount()
                        .doubleValue())
                .isCloseTo(10 * mean, within(0.3 + 0.03 * 10 * mean));
    }

    private List<Double> figures(String column) {
        return jdbc.sql("select " + column + " from estimate_material where job_id = ? order by position")
                .param(job.id())
                .query(Double.class)
                .list();
    }

    /** The mean of what a lognormal need is above the covered part, by summing over its normal score. */
    private static double beyond(double likely, double safe, double covered) {
        double w = Math.log(safe / likely) / 0.8416212;
        double mean = 0;
        for (double z = -6; z < 6; z += 0.001) {
            double density = Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
            mean += Math.max(0, likely * Math.exp(w * z) - covered) * density * 0.001;
        }
        return mean;
    }

    /** What covers a need belongs to a layout; the database says so too. */
    @Test
    void onlyALaidOutLineHasACoveredPart() throws Exception {
        priced("ply_maple_34", "100");
        panel("5", "46", "46", "ply_maple_34");
        put();
        for (String wrong : List.of("covered_quantity = -1", "covered_quantity = 1, safe_quantity = null")) {
            assertThatThrownBy(() -> people.asShop(() ->
                            jdbc.sql("update estimate_material set " + wrong).update()))
                    .isInstanceOf(DataIntegrityViolationException.class)
                    .hasMessageContaining("estimate_material_covered_of_a_layout");
        }
    }

    @Test
    void whatIsNeededBeyondTheAgreedGoesOnALineOfItsOwn() throws Exception {
        priced("ply_maple_34", "100");
        panel("5", "46", "46", "ply_maple_34");
        put();
        people.paid(owner, LocalDate.of(2026, 1, 1), "40", "20");
        estimates.other(job, "Delivery", "45.50", owner);
        bids.acceptByLink(estimates.issued(job, owner), job.id(), new ClientYes("Orrin Baskwell", Set.of(), ""));
        assertThat(put()).contains("Agreed, offered or in an option already, and no more is needed: Maple");
        assertThat(lines()).containsExactly("ply_maple_34 3");

        priced("ply_maple_34", "120");
        panel("4", "46", "46", "ply_maple_34");
        for (int n = 0; n < 2; n++) {
            assertThat(put()).startsWith("One material line");
            assertThat(lines()).containsExactly("ply_maple_34 3", "ply_maple_34 2");
        }
        assertThat(jdbc.sql("select amount from estimate_material where job_id = ? order by position")
                        .param(job.id())
                        .query(BigDecimal.class)
                        .list())
                .usingElementComparator(BigDecimal::compareTo)
                .containsExactly(new BigDecimal("300"), new BigDecimal("240"));
    }

    /** Three sheets in an option that the client leaves out: the five that are needed are two of the bid and three more. */
    @Test
    void nothingIsPutOnALineInAnOption() throws Exception {
        priced("ply_maple_34", "100");
        panel("5", "46", "46", "ply_maple_34");
        put();
        options.save(
                job.id(),
                new OptionDraft(Ids.next(), null, "Panels", "As drawn.", "", Set.of(UUID.fromString(lineId()))),
                owner.personId());
        assertThat(put()).contains("in an option already, and no more is needed: Maple");
        panel("4", "46", "46", "ply_maple_34");
        put();
        assertThat(lines()).containsExactly("ply_maple_34 3", "ply_maple_34 2");

        people.paid(owner, LocalDate.of(2026, 1, 1), "40", "20");
        bids.acceptByLink(estimates.issued(job, owner), job.id(), new ClientYes("Orrin Baskwell", Set.of(), ""));
        for (int n = 0; n < 2; n++) {
            put();
            assertThat(lines()).containsExactly("ply_maple_34 3", "ply_maple_34 2", "ply_maple_34 3");
            assertThat(pricer.sheet(job.id()).next().materials())
                    .extracting(row -> row.purchase().amount().intValueExact())
                    .containsExactly(3);
        }
        people.asShop(() -> jdbc.sql("delete from part").update());
        put();
        assertThat(lines()).containsExactly("ply_maple_34 3", "ply_maple_34 2");
    }

    /** 251 x 9,999 x 999 = 2,507,239,251, above 2^31: summed as int it came out below nothing and passed for few. */
    @Test
    void thousandsOfMillionsOfPartsAreNotLaidOut() throws Exception {
        panel("9999", "1", "1", "ply_maple_34");
        people.asShop(() -> {
            jdbc.sql("update piece set count = 999").update();
            jdbc.sql("insert into part select (jsonb_populate_record(p, jsonb_build_object('id', gen_random_uuid(),"
                            + " 'position', p.position + n))).* from part p, generate_series(1, 250) n")
                    .update();
        });
        assertThat(page(base + "/buy-list").text())
                .contains("2507239251 parts are too many to lay out, so it is reckoned by its yield.");
    }

    @Test
    void aMaterialWithoutAnyPriceIsNamedAndTheOthersCome() throws Exception {
        people.asShop(() -> jdbc.sql("delete from material_price").update());
        panel("1", "46", "46", "ply_maple_34");
        panel("1", "46", "46", "ply_wo_34");
        bought("ply_wo_34", "1", job.id(), "80");
        assertThat(put()).contains("Without any price yet, so left out: Maple");
        assertThat(lines()).containsExactly("ply_wo_34 1");
        assertThat(amount()).isEqualByComparingTo("80");
    }

    /** Three sheets at 100: with nothing but the price that moves, 300 is what many such jobs cost in the mean. */
    @Test
    void theExpectedCostOfALayoutIsItsLineAmount() throws Exception {
        people.paid(owner, LocalDate.of(2026, 1, 1), "40", "20");
        jobs.task(job, null, jobs.kind("trip_out", "Trip", "Install", "trip", "1"), "2", owner);
        priced("ply_maple_34", "100");
        panel("5", "46", "46", "ply_maple_34");
        put();
        CostSaid cost = Objects.requireNonNull(pricer.of(job.id()).cost());
        assertThat(cost.material().amount()).isCloseTo(new BigDecimal("300"), within(new BigDecimal("0.10")));
        assertThat(cost.behind().laidOut()).isEqualTo(1);
        assertThat(cost.behind().materials()).isZero();
        assertThat(page(base + "/estimate").text()).contains("Bought as laid out");
    }

    /** Material alone needs no wage for its price. */
    @Test
    void aShopWithoutAWageSeesThePriceOfItsMaterial() throws Exception {
        panel("1", "46", "46", "ply_maple_34");
        put();
        assertThat(page(base + "/estimate").text()).contains("no wage yet");
    }
}
