package org.tallywright.past.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.net.URI;
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
import org.tallywright.costing.SampleCosts;
import org.tallywright.estimates.SampleEstimates;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.past.SamplePast;
import org.tallywright.people.SamplePeople;
import org.tallywright.shared.Ids;
import org.tallywright.web.Role;
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
    SampleEstimates estimates;

    @Autowired
    SampleCosts costs;

    @Autowired
    JobDesk desk;

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
        pick(page, "#into-" + built.piece(), mine);

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

    private static void pick(Document page, String box, UUID target) {
        Element select = page.selectFirst(box);
        select.select("option").removeAttr("selected");
        select.selectFirst("option[value=" + target + "]").attr("selected", "");
    }

    private boolean ticked(Document page, UUID source) {
        return page.selectFirst("#take-" + source).hasAttr("checked");
    }

    /** @return id of the line of the past job whose words say so */
    private static UUID line(Document page, String words) {
        Element label = page.select(".copy-lines label").stream()
                .filter(one -> one.text().contains(words))
                .findFirst()
                .orElseThrow();
        return UUID.fromString(label.attr("for").replace("take-", ""));
    }

    @Test
    void ticksNothingTwiceForAPieceThatHasIt() throws Exception {
        UUID mine = jobs.piece(into, "Seat, south", "122 3/4", "18", "15", owner);
        UUID another = jobs.piece(into, "Seat, north", "61 3/8", "18", "15", owner);
        Document first = page(owner, preview + "?into=" + mine);
        UUID oak = line(first, "Red oak");
        assertThat(ticked(first, oak)).isTrue();
        mvc.perform(form(first, owner)).andExpect(status().is3xxRedirection());

        Document again = page(owner, preview + "?into=" + mine);
        for (UUID line : List.of(built.seat().rip(), built.seat().glue(), oak)) {
            assertThat(ticked(again, line)).isFalse();
        }
        assertThat(again.text().split("is in the plan already", -1)).hasSize(4);
        assertThat(refused(form(again, owner)).text()).contains("Tick what is to be copied");

        // The other piece has nothing of it, and neither has a new one; the ticks follow who takes the lines.
        assertThat(ticked(page(owner, preview + "?into=" + another), oak)).isTrue();
        Document fresh = page(owner, preview);
        assertThat(ticked(fresh, built.seat().rip())).isTrue();
        pick(fresh, "#into-" + built.piece(), mine);
        assertThat(ticked(refused(form(fresh, owner)), built.seat().rip())).isFalse();
    }

    @Test
    void ticksNothingTwiceForTheWholeJob() throws Exception {
        JobRef whole = estimates.windowSeat(people.person("Lior Vance", Role.OWNER));
        String path = "/jobs/" + into.number() + "/past-jobs/" + whole.number();
        Document first = page(owner, path);
        UUID delivery = line(first, "Delivery");
        assertThat(ticked(first, delivery)).isTrue();
        mvc.perform(form(first, owner)).andExpect(status().is3xxRedirection());

        Document again = page(owner, path);
        assertThat(ticked(again, delivery)).isFalse();
        assertThat(ticked(again, line(again, "Travel"))).isFalse();
        assertThat(again.text()).contains("Delivery is in the estimate already");
        mvc.perform(form(again, owner)).andExpect(status().is3xxRedirection());
        assertThat(costLines()).containsExactly("Delivery 45.50");
    }

    private List<String> costLines() {
        return jdbc.sql("select description || ' ' || amount from estimate_other where job_id = ?")
                .param(into.id())
                .query(String.class)
                .list();
    }

    @Test
    void doesNotMindWhatStandsInThePieceThatStaysBehind() throws Exception {
        JobRef whole = estimates.windowSeat(people.person("Lior Vance", Role.OWNER));
        Document page = page(owner, "/jobs/" + into.number() + "/past-jobs/" + whole.number());
        String piece = page.selectFirst("input[name^=width-]").id().replace("width-", "");
        page.selectFirst("#take-" + piece).removeAttr("checked");
        page.selectFirst("#width-" + piece).val("wide");
        page.selectFirst("#count-" + piece).val("0");
        page.selectFirst("#name-" + piece).val("");

        mvc.perform(form(page, owner)).andExpect(status().is3xxRedirection());

        assertThat(jdbc.sql("select name from task where job_id = ?")
                        .param(into.id())
                        .query(String.class)
                        .list())
                .containsExactly("Travel");
        page.selectFirst("#take-" + piece).attr("checked", "");
        assertThat(refused(form(page, owner)).select(".error")).hasSizeGreaterThan(2);
    }

    @Test
    void takesTheSizesThatWereLookedForToThePreview() throws Exception {
        Document list = page(owner, "/past?job=" + into.number() + "&page=1&kind=" + built.kind() + "&width=122 3/4");
        URI copy = URI.create(list.selectFirst("a[href*=past-pieces]").attr("href"));
        Document page = shown(get(copy).with(signedIn(owner)));
        assertThat(page.selectFirst("#width-" + built.piece()).val()).isEqualTo("122 3/4");
        assertThat(page.selectFirst("#quantity-" + built.seat().rip()).val()).isEqualTo("240");
        mvc.perform(form(page, owner)).andExpect(status().is3xxRedirection());
        assertThat(quantityKept("Rip hardwood")).isEqualTo("240");
        assertThat(page(owner, preview + "?width=wide").text()).contains("not a length");
    }

    /** Hours that were logged meanwhile, another starting rate, another price: nothing is copied at figures nobody saw. */
    @Test
    void showsFiguresThatChangedMeanwhileBeforeItCopies() throws Exception {
        List<Runnable> changes = List.of(
                () -> jdbc.sql("update task_kind set unit_hours = 0.02 where code = 'rip_hardwood'")
                        .update(),
                () -> people.asShop(() -> jdbc.sql("update material_price set unit_price = 13.50 where material_id = ?")
                        .param(built.seat().oak())
                        .update()),
                () -> {
                    desk.reopen(built.seat().job().id(), "more to do", owner.personId());
                    costs.entry(built.seat().job(), built.seat().rip(), owner, SampleCosts.LATER, "direct", 60, "");
                });
        for (Runnable change : changes) {
            Document page = page(owner, preview);
            change.run();
            Document again = refused(form(page, owner));
            assertThat(again.text()).contains("Figures have changed since this page was made");
            assertThat(tasks()).isZero();
            page = again;
            mvc.perform(form(page, owner)).andExpect(status().is3xxRedirection());
            Element removal =
                    page(owner, "/jobs/" + into.number() + "/estimate").selectFirst("form[action*=/copies/]");
            mvc.perform(post(removal.attr("action")).with(csrf()).with(signedIn(owner)))
                    .andExpect(status().is3xxRedirection());
        }
    }

    @Test
    void showsAnAmountThatChangedMeanwhileBeforeItCopies() throws Exception {
        JobRef whole = estimates.windowSeat(people.person("Lior Vance", Role.OWNER));
        Document page = page(owner, "/jobs/" + into.number() + "/past-jobs/" + whole.number());
        people.asShop(() -> jdbc.sql("update estimate_other set amount = 99 where job_id = ?")
                .param(whole.id())
                .update());

        Document again = refused(form(page, owner));

        assertThat(again.text()).contains("Figures have changed", "$99.00");
        assertThat(tasks()).isZero();
        mvc.perform(form(again, owner)).andExpect(status().is3xxRedirection());
        assertThat(costLines()).containsExactly("Delivery 99.00");
    }

    /** A price is not on a lead's page, hidden or not, so another one is no news to him. */
    @Test
    void leadCopiesWhateverThePriceDoes() throws Exception {
        Document page = page(lead, preview);
        assertThat(page.html()).doesNotContain("12.5");
        people.asShop(() -> jdbc.sql("update material_price set unit_price = 13.50 where material_id = ?")
                .param(built.seat().oak())
                .update());
        mvc.perform(form(page, lead)).andExpect(status().is3xxRedirection());
    }

    @Test
    void aRepeatIsQuietAndAnotherAnswerIsToldThatItCameTooLate() throws Exception {
        UUID mine = jobs.piece(into, "Seat, south", "122 3/4", "18", "15", owner);
        Document page = page(owner, preview + "?into=" + mine);
        mvc.perform(form(page, owner)).andExpect(status().is3xxRedirection());
        mvc.perform(form(page, owner)).andExpect(status().is3xxRedirection());
        page.selectFirst("#quantity-" + built.seat().rip()).val("77");
        mvc.perform(form(page, owner)).andExpect(status().isConflict());
        assertThat(quantityKept("Rip hardwood")).isEqualTo("240");
    }

    @Test
    void namesGroupsAndBoxesAndLeavesAPieceThatIsThereAlone() throws Exception {
        UUID mine = jobs.piece(into, "Seat, south", "122 3/4", "18", "15", owner);
        Document page = page(owner, preview + "?into=" + mine);
        Element group = page.selectFirst("[role=group]:has(.copy-lines)");
        assertThat(page.getElementById(group.attr("aria-labelledby")).text()).isEqualTo("Window seat");
        assertThat(group.select(".copy-lines input.box, .copy-lines select"))
                .isNotEmpty()
                .allSatisfy(box -> assertThat(box.attr("aria-label")).endsWith(", Window seat"));
        for (String box : List.of("name", "width", "height", "depth", "count")) {
            assertThat(page.selectFirst("#" + box + "-" + built.piece()).hasAttr("readonly"))
                    .isTrue();
            assertThat(page(owner, preview)
                            .selectFirst("#" + box + "-" + built.piece())
                            .hasAttr("readonly"))
                    .isFalse();
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
