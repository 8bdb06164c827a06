package org.tallywright.takeoff.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.catalog.CatalogSeed;
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

    private void stocked(String material, String quantity) {
        store.save(
                Ids.next(),
                null,
                new MovementDraft.Bought(
                        new MovementDraft.Common(null, material(material), Quantity.of(quantity), ""),
                        UnitPrice.of("150"),
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
}
