package org.tallywright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** Tasks on their pages: plan, start, finish, waits. */
class TaskWebTest extends JobsOnPages {
    JobRef job;
    UUID kind;
    UUID task;
    String tasks;

    @BeforeEach
    void runningJob() {
        job = sample.running(ada, "Window seat");
        kind = sample.kind("glue_panel", "Glue up panel", "Build", "panel", "1.5");
        sample.wait(kind, 1, "Clamps on", 60);
        sample.wait(kind, 2, "Full strength", 1440);
        task = sample.task(job, null, kind, "3", ada);
        tasks = "/jobs/" + job.number() + "/tasks";
    }

    private MockHttpServletRequestBuilder edit(String version, String quantity) {
        return post(tasks + "/" + task)
                .param("version", version)
                .param("taskKind", kind.toString())
                .param("name", "Glue up panel")
                .param("quantity", quantity);
    }

    @Test
    void addsATaskByHandOnce() throws Exception {
        SignedIn jonas = people.helper();
        MockHttpServletRequestBuilder adding = post(tasks)
                .param("id", Ids.next().toString())
                .param("taskKind", kind.toString())
                .param("name", "Glue up seat")
                .param("quantity", "2 1/2")
                .param("unitHours", "90 min")
                .param("plannedOn", "2026-11-26")
                .param("assignedTo", jonas.personId().toString());
        answer(adding, ada, 302);
        answer(adding, ada, 302);
        assertThat(count("task")).isEqualTo(2);
        assertThat(text("select estimated_minutes::text from task where name = 'Glue up seat'"))
                .isEqualTo("225");
        assertThat(page("/jobs/" + job.number(), ada).text()).contains("Glue up seat", "Thu 26 Nov, Jonas Pell");
    }

    @Test
    void refusesWhatIsNoTaskAndKeepsWhatWasTyped() throws Exception {
        Document again = answer(
                post(tasks)
                        .param("id", Ids.next().toString())
                        .param("taskKind", kind.toString())
                        .param("quantity", "-3")
                        .param("unitHours", "0")
                        .param("plannedOn", "2026-02-30")
                        .param("assignedTo", people.bookkeeper().personId().toString()),
                ada,
                422);
        assertThat(again.select("#quantity-error").text()).isEqualTo("A quantity cannot be negative.");
        assertThat(again.select("#unitHours-error").text()).contains("more than nothing");
        assertThat(again.select("#plannedOn-error").text()).isEqualTo("Give a day as 2026-11-25.");
        assertThat(again.select("#quantity").val()).isEqualTo("-3");
        assertThat(again.select("#taskKind option[selected]").text()).contains("Glue up panel");
        answer(post(tasks).param("id", "not-an-id"), ada, 400);
        answer(post(tasks).param("quantity", "1"), ada, 422);
        assertThat(count("task")).isEqualTo(1);
    }

    @Test
    void showsTheSecondOfTwoBrowsersBothVersions() throws Exception {
        String version = page(tasks + "/" + task + "/edit", ada)
                .select("input[name=version]")
                .val();
        answer(edit(version, "4"), ada, 302);
        Document conflict = answer(edit(version, "5"), ada, 409);
        assertThat(conflict.select("tbody tr").eachText()).contains("Quantity 4 5");
        answer(edit(version, "4"), ada, 302);
    }

    @Test
    void asksWhatItCameToAndSaysUntilWhenItCures() throws Exception {
        Document form = page(tasks + "/" + task + "/completion", ada);
        assertThat(form.select("#quantity").val()).isEqualTo("3");
        assertThat(form.select("#doneAt").val()).isEqualTo("13:40");
        MockHttpServletRequestBuilder done = post(tasks + "/" + task + "/completion")
                .param("version", form.select("input[name=version]").val())
                .param("quantity", "4")
                .param("doneOn", "2026-11-25")
                .param("doneAt", "13:10")
                .param("answer", "counted");
        answer(done, ada, 302);
        answer(done, ada, 302);
        assertThat(count("wait")).isEqualTo(2);
        Document page = page("/jobs/" + job.number(), people.helper());
        assertThat(page.text()).contains("Clamps on until 14:10", "Full strength until tomorrow 13:10");
        UUID wait = UUID.fromString(text("select id::text from wait where position = 1"));
        answer(
                post("/jobs/" + job.number() + "/waits/" + wait)
                        .param("version", "0")
                        .param("endsOn", "2026-11-25")
                        .param("endsAt", "13:00"),
                ada,
                422);
        answer(
                post("/jobs/" + job.number() + "/waits/" + wait)
                        .param("version", "0")
                        .param("endsOn", "2026-11-25")
                        .param("endsAt", "17:00"),
                ada,
                302);
        assertThat(page("/jobs/" + job.number(), ada).text()).contains("Clamps on until 17:00");
        answer(post("/jobs/" + job.number() + "/waits/" + wait + "/end"), ada, 302);
        assertThat(page("/jobs/" + job.number(), ada).select(".titleblock").text())
                .doesNotContain("Clamps on");
    }

    private MockHttpServletRequestBuilder done(String version, String quantity) {
        return post(tasks + "/" + task + "/completion")
                .param("version", version)
                .param("quantity", quantity)
                .param("doneOn", "2026-11-25")
                .param("doneAt", "13:10")
                .param("answer", "counted");
    }

    @Test
    void keepsTheCountOfASlowerFinishOnThePage() throws Exception {
        String version = page(tasks + "/" + task + "/completion", ada)
                .select("input[name=version]")
                .val();
        answer(done(version, "4"), ada, 302);
        Document conflict = answer(done(version, "5"), people.helper(), 409);
        assertThat(conflict.select("tbody tr").eachText())
                .contains("State Done Done", "Quantity 4 5", "Done on 2026-11-25 2026-11-25 13:10");
        assertThat(text("select quantity_done::text from task")).isEqualTo("4.0000");
    }

    @Test
    void showsBothEndsOfAWait() throws Exception {
        answer(done("0", "3"), ada, 302);
        String wait = "/jobs/" + job.number() + "/waits/" + text("select id::text from wait where position = 1");
        answer(end(wait, "17:00"), ada, 302);
        Document conflict = answer(end(wait, "18:30"), people.helper(), 409);
        assertThat(conflict.select("tbody tr").eachText())
                .containsExactly("Ends on 2026-11-25 2026-11-25", "Ends at 17:00 18:30");
    }

    private MockHttpServletRequestBuilder end(String wait, String at) {
        return post(wait).param("version", "0").param("endsOn", "2026-11-25").param("endsAt", at);
    }

    @Test
    void takesBackAMistakenFinishAndKeepsNeverNeeded() throws Exception {
        String path = tasks + "/" + task;
        answer(
                post(path + "/completion")
                        .param("version", "0")
                        .param("quantity", "3")
                        .param("doneOn", "2026-11-25")
                        .param("doneAt", "13:40")
                        .param("answer", "uncounted"),
                people.helper(),
                302);
        assertThat(page(path, ada).text()).contains("3 panel, not counted");
        answer(post(path + "/reopening"), ada, 302);
        assertThat(count("wait")).isZero();
        answer(post(path + "/completion").param("answer", "never"), ada, 302);
        assertThat(page(path, ada).text()).contains("Never needed");
    }

    @Test
    void warnsOfWhatUsuallyComesFirst() throws Exception {
        UUID rip = sample.kind("rip_hardwood", "Rip hardwood", "Mill", "lf", "0.015");
        sample.before(kind, rip);
        UUID first = sample.task(job, null, rip, "60", ada);
        assertThat(page("/jobs/" + job.number(), ada).text()).contains("Usually first, and not done: Rip hardwood.");
        answer(post(tasks + "/" + task + "/start"), ada, 302);
        assertThat(text("select state from task where id = ?", task)).isEqualTo("started");
        answer(post(tasks + "/" + first + "/dropping"), ada, 302);
        assertThat(page(tasks + "/" + task, ada).text()).doesNotContain("Usually first");
    }

    @Test
    void whatAMergedKindIsCountedAsComesFirstInItsPlace() throws Exception {
        UUID old = sample.kind("rip_by_hand", "Rip by hand", "Mill", "lf", "0.1");
        UUID rip = sample.kind("rip_hardwood", "Rip hardwood", "Mill", "lf", "0.015");
        sample.before(kind, old);
        sample.task(job, null, rip, "60", ada);
        assertThat(page("/jobs/" + job.number(), ada).text()).doesNotContain("Usually first");
        people.asShop(() -> jdbc.sql(
                        "update task_kind set active = false, merged_into = ?, merged_at = timestamptz '2026-03-02', merged_by = ? where id = ?")
                .params(rip, ada.personId(), old)
                .update());
        assertThat(page("/jobs/" + job.number(), ada).text()).contains("Usually first, and not done: Rip hardwood.");
    }

    @Test
    void showsACautionWithItsSourceWhereTheWorkIsNext() throws Exception {
        jdbc.sql("update task_kind set caution = 'Glue below 50 F has no strength', caution_source = 'glue guide'")
                .update();
        Document page = page("/jobs/" + job.number(), people.helper());
        assertThat(page.select(".caution").text()).contains("Glue below 50 F has no strength", "glue guide");
    }

    @Test
    void findsNoTaskOfAnotherJobUnderThisOne() throws Exception {
        JobRef other = sample.running(ada, "Stair");
        String foreign = "/jobs/" + other.number() + "/tasks/" + task;
        answer(to(foreign), ada, 404);
        answer(to(foreign + "/edit"), ada, 404);
        answer(to(foreign + "/completion"), ada, 404);
        answer(post(foreign + "/start"), ada, 404);
        answer(post(foreign + "/dropping"), ada, 404);
        answer(post(foreign + "/reopening"), ada, 404);
        answer(post(foreign + "/completion").param("answer", "never"), ada, 404);
        answer(
                edit("0", "9").with(r -> {
                    r.setRequestURI(foreign);
                    r.setPathInfo(foreign);
                    return r;
                }),
                ada,
                404);
        answer(to("/jobs/" + job.number() + "/tasks/x"), ada, 404);
        assertThat(text("select state || ' ' || quantity from task")).isEqualTo("planned 3.0000");
    }

    @Test
    void keepsEstimatesAndOthersHoursFromAHelper() throws Exception {
        Document page = page(tasks + "/" + task, people.helper());
        assertThat(page.text()).contains("Glue up panel", "3 panel").doesNotContain("4 h 30", "Estimated", "Change");
        answer(to(tasks + "/" + task + "/edit"), people.helper(), 403);
        answer(post(tasks + "/" + task + "/dropping"), people.helper(), 403);
    }
}
