package org.tallywright.past.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.util.List;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.QueryCount;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.past.SamplePast;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** From the list of what was built over the preview into the estimate, and out of it again. */
@AppTest
class CopyWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePast sample;

    @Autowired
    SampleJobs jobs;

    @Autowired
    SamplePeople people;

    @Autowired
    JdbcClient jdbc;

    SamplePast.Built built;
    SignedIn owner;
    SignedIn lead;
    JobRef into;
    String preview;

    @BeforeEach
    void buildOne() {
        built = sample.closed();
        sample.price(built.seat().oak(), "12.50");
        owner = built.seat().owner();
        lead = built.seat().lead();
        into = jobs.lead(owner, "Seat for the library");
        preview = "/jobs/" + into.number() + "/past-pieces/" + built.piece();
    }

    private Document page(SignedIn who, String path) throws Exception {
        return Jsoup.parse(mvc.perform(get(path).with(signedIn(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    /** The form as it stands, ticks and all. */
    private static MockHttpServletRequestBuilder form(Document page, SignedIn who) {
        Element form = page.selectFirst("main form[method=post]");
        MockHttpServletRequestBuilder request =
                post(form.attr("action")).with(csrf()).with(signedIn(who));
        for (Element box : form.select("input[name], select[name]")) {
            boolean tick = box.attr("type").equals("checkbox");
            if (box.attr("name").equals("_csrf") || tick && !box.hasAttr("checked")) {
                continue;
            }
            request.param(
                    box.attr("name"),
                    box.tagName().equals("select")
                            ? box.select("option[selected]").attr("value")
                            : box.val());
        }
        return request;
    }

    private Document refused(MockHttpServletRequestBuilder request) throws Exception {
        return Jsoup.parse(mvc.perform(request)
                .andExpect(status().isUnprocessableContent())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private int tasks() {
        return jdbc.sql("select count(*) from task where job_id = ?")
                .param(into.id())
                .query(Integer.class)
                .single();
    }

    @Test
    void listsWhatWasBuiltWithItsHoursAndItsRange() throws Exception {
        String list = page(owner, "/past?kind=" + built.kind()).text();

        // 4 h 30 without the half hour of rework; face 61 3/8 x 18 in = 7.672 sf, so 0.587 h/sf; oak 601.00 and screws
        // 5.00.
        assertThat(list)
                .contains("4 h 30", "0.587 h/sf", "1 built, too few for a range", "30 min", "$606.00", "$78.99/sf")
                .contains("On no piece, for one job 2 h 1 job, too few for a range");
        assertThat(page(owner, "/past?kind=" + built.kind()).select("a[href$=/review]"))
                .hasSize(1);
    }

    @Test
    void leadSeesHoursAndQuantitiesButNoMoney() throws Exception {
        assertThat(page(lead, "/past?kind=" + built.kind()).text())
                .contains("4 h 30", "0.587 h/sf")
                .doesNotContain("$", "Review");
        assertThat(page(lead, preview).text())
                .contains("33 bf in the work there")
                .doesNotContain("$");
        assertThat(page(
                                lead,
                                "/jobs/" + into.number() + "/past-jobs/"
                                        + built.seat().job().number())
                        .text())
                .doesNotContain("$", "Other costs");
    }

    @Test
    void helperAndBookkeeperSeeNothingOfIt() throws Exception {
        for (SignedIn who : List.of(built.seat().helper(), people.bookkeeper())) {
            for (String path : List.of("/past", "/past/jobs", preview)) {
                mvc.perform(get(path).with(signedIn(who))).andExpect(status().isForbidden());
            }
        }
    }

    @Test
    void previewsWithoutWritingAndCopiesWhatIsTicked() throws Exception {
        Document page = page(owner, preview);
        assertThat(tasks()).isZero();
        assertThat(page.text())
                .contains("2 h there for 120 lf", "$12.50 today", "On no piece", "As it took: 2 h (0.0167 h/lf)");

        mvc.perform(form(page, owner)).andExpect(redirectedUrl("/jobs/" + into.number() + "/estimate#tasks"));

        assertThat(tasks()).isEqualTo(2);
        Document estimate = page(owner, "/jobs/" + into.number() + "/estimate");
        assertThat(estimate.text())
                .contains("2 h there for 120 lf", "Take the copy out")
                .contains("From " + built.seat().job().number() + ", Window seat");
        Element removal = estimate.selectFirst("form[action*=/copies/]");
        mvc.perform(post(removal.attr("action")).with(csrf()).with(signedIn(owner)))
                .andExpect(status().is3xxRedirection());
        assertThat(tasks()).isZero();
    }

    @Test
    void worksQuantitiesOutAnewForOtherSizesAndKeepsTicks() throws Exception {
        Document page = page(owner, preview);
        page.selectFirst("#width-" + built.piece()).val("122 3/4");
        page.selectFirst("#take-" + built.seat().glue()).removeAttr("checked");
        MockHttpServletRequestBuilder request = form(page, owner).param("anew", "true");

        Document again = Jsoup.parse(mvc.perform(request)
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());

        assertThat(again.selectFirst("#quantity-" + built.seat().rip()).val()).isEqualTo("240");
        assertThat(again.text()).contains("quantity x 2 by face");
        assertThat(again.selectFirst("#take-" + built.seat().glue()).hasAttr("checked"))
                .isFalse();
        assertThat(tasks()).isZero();
    }

    private Document shown(MockHttpServletRequestBuilder request) throws Exception {
        return Jsoup.parse(mvc.perform(request)
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private String quantityKept(String task) {
        return jdbc.sql("select quantity::float8::text from task where job_id = ? and name = ?")
                .params(into.id(), task)
                .query(String.class)
                .single();
    }

    /** As somebody does who presses Enter in the box of a size. */
    @Test
    void showsTheQuantitiesForChangedSizesBeforeItCopiesThem() throws Exception {
        Document page = page(owner, preview);
        page.selectFirst("#width-" + built.piece()).val("122 3/4");

        Document again = refused(form(page, owner));

        assertThat(again.text()).contains("have changed: look over the quantities");
        assertThat(again.selectFirst("#quantity-" + built.seat().rip()).val()).isEqualTo("240");
        assertThat(again.selectFirst("#width-" + built.piece()).val()).isEqualTo("122 3/4");
        assertThat(tasks()).isZero();

        mvc.perform(form(again, owner)).andExpect(status().is3xxRedirection());
        assertThat(quantityKept("Rip hardwood")).isEqualTo("240");
        assertThat(quantityKept("Glue up panel")).isEqualTo("6");
    }

    @Test
    void keepsWhatWasTypedWhereSizesChange() throws Exception {
        String rip = "#quantity-" + built.seat().rip();
        String glue = "#quantity-" + built.seat().glue();
        Document page = page(owner, preview);
        page.selectFirst("#width-" + built.piece()).val("122 3/4");
        page.selectFirst(rip).val("200");

        for (Document again : List.of(shown(form(page, owner).param("anew", "true")), refused(form(page, owner)))) {
            assertThat(again.selectFirst(rip).val()).isEqualTo("200");
            assertThat(again.selectFirst(glue).val()).isEqualTo("6");
            again.selectFirst("#width-" + built.piece()).val("61 3/8");
            Document back = shown(form(again, owner).param("anew", "true"));
            assertThat(back.selectFirst(rip).val()).isEqualTo("200");
            assertThat(back.selectFirst(glue).val()).isEqualTo("3");
        }
    }

    @Test
    void showsTheQuantitiesForAnotherPieceThatTakesTheLines() throws Exception {
        UUID mine = jobs.piece(into, "Seat, south", "122 3/4", "18", "15", owner);
        Document page = page(owner, preview);
        Element target = page.selectFirst("#into-" + built.piece());
        target.select("option").removeAttr("selected");
        target.selectFirst("option[value=" + mine + "]").attr("selected", "");

        Document again = refused(form(page, owner));

        assertThat(again.selectFirst("#quantity-" + built.seat().rip()).val()).isEqualTo("240");
        assertThat(tasks()).isZero();
        mvc.perform(form(again, owner)).andExpect(status().is3xxRedirection());
        assertThat(quantityKept("Rip hardwood")).isEqualTo("240");
    }

    @Test
    void showsThePageAgainWhereNobodyKnowsWhatWasSeen() throws Exception {
        for (String sent : List.of("", "120", "a|b|c|d", "|||||||")) {
            Document page = page(owner, preview);
            page.select("input[name^=seen-]").val(sent);
            page.selectFirst("#quantity-" + built.seat().rip()).val("77");
            Document again = refused(form(page, owner));
            assertThat(again.selectFirst("#quantity-" + built.seat().rip()).val())
                    .isEqualTo("77");
            assertThat(tasks()).isZero();
        }
    }

    @Test
    void keepsTicksAndTypingWhenRefused() throws Exception {
        Document page = page(owner, preview);
        page.selectFirst("#quantity-" + built.seat().rip()).val("a few");
        page.selectFirst("#take-" + built.seat().glue()).removeAttr("checked");
        page.selectFirst("#name-" + built.piece()).val("Seat, south");

        Document again = refused(form(page, owner));

        assertThat(again.selectFirst("#quantity-" + built.seat().rip()).val()).isEqualTo("a few");
        assertThat(again.selectFirst("#quantity-" + built.seat().rip() + "-error")
                        .text())
                .contains("not a quantity");
        assertThat(again.selectFirst("#take-" + built.seat().glue()).hasAttr("checked"))
                .isFalse();
        assertThat(again.selectFirst("#name-" + built.piece()).val()).isEqualTo("Seat, south");
        assertThat(again.selectFirst("input[name=copy]").val())
                .isEqualTo(page.selectFirst("input[name=copy]").val());
        assertThat(tasks()).isZero();
    }

    @Test
    void copiesOnceWhenSentTwice() throws Exception {
        Document page = page(owner, preview);
        mvc.perform(form(page, owner)).andExpect(status().is3xxRedirection());
        mvc.perform(form(page, owner)).andExpect(status().is3xxRedirection());
        assertThat(tasks()).isEqualTo(2);
    }

    @Test
    void givesTheLinesToAPieceThatIsThereWithItsSizes() throws Exception {
        UUID mine = jobs.piece(into, "Seat, south", "122 3/4", "18", "15", owner);
        Document list = page(owner, "/past?job=" + into.number() + "&piece=" + mine);
        String copy = list.selectFirst("a[href*=past-pieces]").attr("href");
        assertThat(copy).endsWith("?into=" + mine);
        assertThat(page(owner, "/past?page=1&kind=&width=&job=" + into.number() + "&piece=" + mine)
                        .selectFirst("#width")
                        .val())
                .as("emptied by hand")
                .isEmpty();

        Document page = page(owner, copy);
        assertThat(page.selectFirst("#quantity-" + built.seat().rip()).val()).isEqualTo("240");
        mvc.perform(form(page, owner)).andExpect(status().is3xxRedirection());

        assertThat(jdbc.sql("select count(*) from piece where job_id = ?")
                        .param(into.id())
                        .query(Integer.class)
                        .single())
                .isEqualTo(1);
        assertThat(jdbc.sql("select count(*) from task where piece_id = ?")
                        .param(mine)
                        .query(Integer.class)
                        .single())
                .isEqualTo(2);
        assertThat(page(owner, copy.replace(mine.toString(), Ids.next().toString()))
                        .text())
                .contains("Pick a piece of this job");
    }

    @Test
    void refusesAClosedJobAndDoesNotKnowAForeignPiece() throws Exception {
        String closed = "/jobs/" + built.seat().job().number();
        mvc.perform(get(closed + "/past-pieces/" + built.piece()).with(signedIn(owner)))
                .andExpect(status().isUnprocessableContent());
        mvc.perform(get("/jobs/" + into.number() + "/past-pieces/" + Ids.next()).with(signedIn(owner)))
                .andExpect(status().isNotFound());
        mvc.perform(get("/jobs/" + into.number() + "/past-jobs/99-999").with(signedIn(owner)))
                .andExpect(status().isNotFound());
    }

    @Test
    void opensANewJobLikeAnOldOne() throws Exception {
        String old = built.seat().job().number();
        assertThat(page(owner, "/jobs/" + old).select("a[href='/jobs/new?like=" + old + "']"))
                .hasSize(1);
        Document blank = page(owner, "/jobs/new?like=" + old);
        assertThat(blank.selectFirst("#title").val()).isEqualTo("Window seat, north bay");
        Element form = blank.selectFirst("form[action='/jobs']");
        String site = jdbc.sql("select site_id::text from job where id = ?")
                .param(into.id())
                .query(String.class)
                .single();

        String preview = mvc.perform(post("/jobs")
                        .with(csrf())
                        .with(signedIn(owner))
                        .param("id", form.selectFirst("[name=id]").val())
                        .param("like", form.selectFirst("[name=like]").val())
                        .param("site", site)
                        .param("title", "Another seat"))
                .andExpect(status().is3xxRedirection())
                .andReturn()
                .getResponse()
                .getRedirectedUrl();

        assertThat(preview).endsWith("/past-jobs/" + old);
        Document page = page(owner, preview);
        assertThat(page.text()).contains("The whole job", "Travel", "Window seat", "Red oak, 5/4");
        mvc.perform(form(page, owner)).andExpect(status().is3xxRedirection());
        assertThat(jdbc.sql("select count(*) from task t join job j on j.id = t.job_id where j.title = 'Another seat'")
                        .query(Integer.class)
                        .single())
                .isEqualTo(3);
    }

    @Test
    void findsByNameClientAndNearestSizeAndTeachesWhenEmpty() throws Exception {
        assertThat(page(owner, "/past?q=baskwell").select("tbody tr")).hasSize(1);
        assertThat(page(owner, "/past?q=nobody").text()).contains("No piece here");
        jobs.piece(into, "Small seat", "30", "18", "15", owner);
        UUID other = jobs.piece(into, "Wide seat", "90", "18", "15", owner);
        jdbc.sql("update piece set piece_kind_id = ? where id = ?")
                .params(built.kind(), other)
                .update();
        assertThat(page(owner, "/past?all=true&width=85").select("tbody tr th").eachText())
                .element(0)
                .asString()
                .startsWith("Wide seat");
        mvc.perform(get("/past?width=wide").with(signedIn(owner))).andExpect(status().isUnprocessableContent());
        jdbc.sql(
                        "update task set state = 'started', done_on = null, done_by = null, quantity_done = null where state = 'done'")
                .update();
        assertThat(page(owner, "/past").text()).contains("Nothing built yet", "To the jobs");
    }

    @Test
    void asksAsOftenForManyPiecesAsForFew() throws Exception {
        String list = "/past?job=" + into.number() + "&kind=" + built.kind();
        int few = QueryCount.of(() -> page(owner, list)).size();
        int fewLines = QueryCount.of(() -> page(owner, preview)).size();
        jdbc.sql("""
                        insert into piece select (jsonb_populate_record(null::piece, to_jsonb(p)
                            || jsonb_build_object('id', gen_random_uuid()))).* from piece p, generate_series(1, 200) where p.id = ?""").param(built.piece()).update();
        jdbc.sql("""
                        insert into task select (jsonb_populate_record(null::task, to_jsonb(t)
                            || jsonb_build_object('id', gen_random_uuid(), 'piece_id', p.id))).*
                        from task t, piece p where t.id = ? and p.job_id = t.job_id""").param(built.seat().rip()).update();

        assertThat(page(owner, list).text()).contains("201 pieces", "Page 1 of 9");
        assertThat(QueryCount.of(() -> page(owner, list)).size()).isEqualTo(few).isLessThan(20);
        assertThat(QueryCount.of(() -> page(owner, preview)).size())
                .isEqualTo(fewLines)
                .isLessThan(25);
    }
}
