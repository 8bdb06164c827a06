package org.tallywright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** Opening a job, its list and what is written about it. */
class JobWebTest extends JobsOnPages {
    private MockHttpServletRequestBuilder opening(UUID id, UUID client, UUID site) {
        return post("/jobs")
                .param("id", id.toString())
                .param("newClientId", client.toString())
                .param("newSiteId", site.toString())
                .param("clientName", "Orrin Baskwell")
                .param("address", "9 Harrow Lane")
                .param("title", "Window seat, north bay")
                .param("promisedOn", "2026-12-11")
                .param("note", "Deposit by hand");
    }

    @Test
    void opensAJobWithItsClientAndSiteOnce() throws Exception {
        assertThat(page("/jobs/new", ada).select("h1").text()).isEqualTo("Open a job");
        UUID id = Ids.next();
        UUID client = Ids.next();
        UUID site = Ids.next();
        send(opening(id, client, site), ada).andExpect(redirectedUrl("/jobs/26-001"));
        send(opening(id, client, site), ada).andExpect(redirectedUrl("/jobs/26-001"));
        assertThat(count("job")).isEqualTo(1);
        assertThat(count("client")).isEqualTo(1);
        Document job = page("/jobs/26-001", ada);
        assertThat(job.select("h1").text()).isEqualTo("Window seat, north bay");
        assertThat(job.select(".titleblock").text())
                .contains("26-001", "Orrin Baskwell, 9 Harrow Lane", "Lead", "Fri 11 Dec");
        assertThat(job.text()).contains("Deposit by hand");
    }

    @Test
    void takesAKnownSite() throws Exception {
        UUID site = sample.site(sample.client("Wilda Kettrow"), "1 High Street");
        assertThat(page("/jobs/new?find=kett", ada)
                        .select("select[name=site] option")
                        .eachText())
                .contains("Wilda Kettrow, 1 High Street");
        assertThat(page("/jobs/new?find=zzz", ada)
                        .select("select[name=site] option")
                        .eachText())
                .doesNotContain("Wilda Kettrow, 1 High Street");
        MockHttpServletRequestBuilder opening = post("/jobs")
                .param("id", Ids.next().toString())
                .param("site", site.toString())
                .param("title", "Library wall");
        send(opening, ada).andExpect(redirectedUrl("/jobs/26-001"));
        assertThat(page("/jobs", ada).text()).contains("Running 0", "Leads 1");
    }

    @Test
    void showsBothVersionsWhereAnOpenedJobIsSentAgainWithOtherWords() throws Exception {
        UUID id = Ids.next();
        UUID site = sample.site(sample.client("Orrin Baskwell"), "9 Harrow Lane");
        UUID other = sample.site(sample.client("Tessaly Quorn"), "12 Mill Lane");
        send(opened(id, site, "Library wall", "2026-12-11", ""), ada).andExpect(redirectedUrl("/jobs/26-001"));
        Document both = answer(opened(id, other, "Library walls", "", "Key under the pot"), ada, 409);
        assertThat(both.select("tbody tr").eachText())
                .containsExactly(
                        "Site 9 Harrow Lane 12 Mill Lane",
                        "Title Library wall Library walls",
                        "Promised 2026-12-11",
                        "Internal note Key under the pot");
        assertThat(count("job")).isEqualTo(1);
        assertThat(page("/jobs/26-001", ada).select("h1").text()).isEqualTo("Library wall");
    }

    private static MockHttpServletRequestBuilder opened(
            UUID id, UUID site, String title, String promised, String note) {
        return post("/jobs")
                .param("id", id.toString())
                .param("site", site.toString())
                .param("title", title)
                .param("promisedOn", promised)
                .param("note", note);
    }

    @Test
    void namesTheTabsOfAJobForEachReader() throws Exception {
        String job = "/jobs/" + sample.windowSeat(ada).number();
        assertThat(page(job, ada).select("nav.tabs a").eachText())
                .startsWith("Job", "Hours", "Material", "Photos", "Estimate", "Forecast", "Review")
                .contains("Sharing");
        assertThat(page(job, ada).select("nav.nav a").eachText()).contains("Today", "Jobs", "Materials", "My account");
    }

    @Test
    void keepsEverythingTypedWhenRefused() throws Exception {
        MockHttpServletRequestBuilder opening = post("/jobs")
                .param("id", Ids.next().toString())
                .param("newClientId", Ids.next().toString())
                .param("newSiteId", Ids.next().toString())
                .param("clientName", "Orrin")
                .param("promisedOn", "soon");
        Document again = answer(opening, ada, 422);
        assertThat(again.select("#title-error").text()).isEqualTo("Please fill this in.");
        assertThat(again.select("#address-error").text()).isEqualTo("Please fill this in.");
        assertThat(again.select("#promisedOn-error").text()).isEqualTo("Give a day as 2026-11-25.");
        assertThat(again.select("#promisedOn").val()).isEqualTo("soon");
        assertThat(again.select("#clientName").val()).isEqualTo("Orrin");
        assertThat(count("client")).isZero();
    }

    @Test
    void listsJobsByStateWithCountsSearchAndOrder() throws Exception {
        sample.windowSeat(ada);
        sample.lead(ada, "Stair with a landing, oak treads, and a very long name that goes on");
        Document list = page("/jobs", ada);
        assertThat(list.select("tbody tr")).hasSize(1);
        assertThat(list.select("tbody tr").text())
                .contains("26-001", "Window seat, north bay", "Orrin Baskwell", "6 h 30");
        assertThat(list.select("main .tabs a").eachText())
                .containsExactly("Running 1", "Bidding 0", "Leads 1", "Closed 0", "Lost 0", "All 2");
        assertThat(page("/jobs?state=all&q=LANDING", ada).select("tbody tr")).hasSize(1);
        assertThat(page("/jobs?state=all&q=%25", ada).select("tbody tr")).isEmpty();
        assertThat(page("/jobs?state=all&sort=title", ada).select("tbody th").eachText())
                .containsExactly("26-002", "26-001");
        assertThat(page("/jobs?state=all&sort=drop+table&page=x&client=nobody", ada)
                        .select("tbody tr"))
                .hasSize(2);
    }

    @Test
    void pagesThroughManyJobs() throws Exception {
        UUID client = sample.client("Lio Candrake");
        UUID site = sample.site(client, "2 Mill Row");
        jdbc.sql("""
                        insert into job (id, year, sequence, number, client_id, site_id, title, state, opened_on, version)
                        select gen_random_uuid(), 2025, n, '25-' || lpad(n::text, 3, '0'), ?, ?, 'Shelf ' || n,
                            'running', '2025-01-01', 0 from generate_series(1, 120) n""").params(client, site).update();
        Document second = page("/jobs?page=2", ada);
        assertThat(second.select("tbody tr")).hasSize(50);
        assertThat(second.select("tbody th").eachText().get(0)).isEqualTo("25-070");
        assertThat(second.select(".pager").text()).contains("Page 2 of 3");
        assertThat(second.select(".pager a").eachAttr("href")).allMatch(h -> h.contains("sort=-number"));
        assertThat(page("/jobs?page=9&q=Shelf%20%C3%A9", ada).select("tbody tr"))
                .isEmpty();
    }

    @Test
    void hidesHoursNotesAndPlanningFromAHelper() throws Exception {
        SignedIn jonas = people.helper();
        JobRef job = sample.windowSeat(ada);
        jdbc.sql("update job set note = 'Margin is thin'").update();
        assertThat(page("/jobs", jonas).text()).doesNotContain("6 h 30", "Open a job");
        Document page = page("/jobs/" + job.number(), jonas);
        assertThat(page.html()).doesNotContain("Margin is thin", "6 h 30", "1 h 30", "What changed", "/estimate");
        assertThat(page.text()).contains("Rip hardwood", "100 lf", "Window seat", "5' 1 3/8\" wide", "Your hours");
        answer(to("/jobs/" + job.number() + "/edit"), jonas, 403);
        answer(to("/jobs"), people.bookkeeper(), 403);
    }

    @Test
    void showsTheSecondOfTwoBrowsersBothVersions() throws Exception {
        JobRef job = sample.lead(ada, "Study");
        String version = page("/jobs/" + job.number() + "/edit", ada)
                .select("input[name=version]")
                .val();
        answer(change(job, version, "Study with desk"), ada, 302);
        Document conflict = answer(change(job, version, "Study, oak"), ada, 409);
        assertThat(conflict.select("tbody tr").eachText()).contains("Title Study with desk Study, oak");
        assertThat(page("/jobs/" + job.number(), ada).select("h1").text()).isEqualTo("Study with desk");
    }

    private MockHttpServletRequestBuilder change(JobRef job, String version, String title) {
        return post("/jobs/" + job.number())
                .param("version", version)
                .param("site", job.siteId().toString())
                .param("title", title);
    }

    @Test
    void answersAnUnknownNumberWithNotHere() throws Exception {
        answer(to("/jobs/99-999"), ada, 404);
        answer(to("/jobs/99-999/tasks/new"), ada, 404);
        answer(post("/jobs/99-999/closing"), ada, 404);
    }

    @Test
    void movesAJobByTheOwnerOnly() throws Exception {
        SignedIn lead = people.lead();
        String job = "/jobs/" + sample.lead(ada, "Study").number();
        answer(post(job + "/award"), lead, 403);
        answer(post(job + "/award").param("acceptedOn", "2026-11-26"), ada, 422);
        answer(post(job + "/award").param("acceptedOn", "2026-11-24"), ada, 302);
        assertThat(page(job, lead).select(".titleblock").text()).contains("Running");
        assertThat(page(job, ada).text()).contains("Job went from lead to running");
    }
}
