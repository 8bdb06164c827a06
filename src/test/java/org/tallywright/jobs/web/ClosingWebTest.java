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

/** Punch list, walk-through, stages, closing and reopening. */
class ClosingWebTest extends JobsOnPages {
    JobRef job;
    String base;

    @BeforeEach
    void runningJob() {
        job = sample.running(ada, "Window seat");
        base = "/jobs/" + job.number();
    }

    private UUID item(String text) throws Exception {
        UUID id = Ids.next();
        answer(post(base + "/punch-items").param("id", id.toString()).param("text", text), people.helper(), 302);
        return id;
    }

    @Test
    void raisesDoesAndSignsOffAPunchListItem() throws Exception {
        UUID id = item("Gap at the left scribe");
        String path = base + "/punch-items/" + id;
        answer(post(path + "/sign-off"), ada, 422);
        answer(post(path + "/completion"), people.helper(), 302);
        answer(post(path + "/completion"), people.helper(), 302);
        assertThat(page(base, people.helper()).select("input[name=name]")).isEmpty();
        assertThat(page(base, ada)
                        .select("form[action$=" + id + "/sign-off] input[name=name]")
                        .val())
                .isEmpty();
        answer(post(path + "/sign-off").param("name", "Orrin Baskwell"), people.helper(), 403);
        answer(post(path + "/sign-off").param("name", "Orrin Baskwell"), ada, 302);
        assertThat(page(base, ada).select("#punch-list").text()).contains("signed off Wed 25 Nov by Orrin Baskwell");
        answer(post(path + "/reopening"), ada, 422);
        Document again =
                answer(post(base + "/punch-items").param("id", Ids.next().toString()), ada, 422);
        assertThat(again.select("#text-error").text()).isEqualTo("Please fill this in.");
        JobRef other = sample.running(ada, "Stair");
        answer(post("/jobs/" + other.number() + "/punch-items/" + id + "/completion"), ada, 404);
    }

    @Test
    void refusesToCloseWhileThingsAreOpenAndUnanswered() throws Exception {
        UUID kind = sample.kind("rip_hardwood", "Rip hardwood", "Mill", "lf", "0.015");
        UUID done = sample.task(job, null, kind, "60", ada);
        UUID never = sample.task(job, null, kind, "20", ada);
        item("Gap at the left scribe");
        Document again = answer(post(base + "/closing").param("task-" + done, "done"), ada, 422);
        assertThat(again.text()).contains("Say for each open task what became of it; 1 without an answer.");
        assertThat(again.select("#task-" + done + "-done").hasAttr("checked")).isTrue();
        again = answer(post(base + "/closing").param("task-" + done, "done").param("task-" + never, "never"), ada, 422);
        assertThat(again.select("#punchItemsStay-error").text()).contains("One punch list item is still open");
        again = answer(
                post(base + "/closing")
                        .param("task-" + done, "done")
                        .param("task-" + never, "never")
                        .param("punchItemsStay", "true"),
                ada,
                422);
        assertThat(again.select("#withoutWalkThrough-error").text()).contains("No walk-through is recorded");
        assertThat(text("select state from job")).isEqualTo("running");
        answer(
                post(base + "/walk-throughs")
                        .param("id", Ids.next().toString())
                        .param("walkedOn", "2026-11-25")
                        .param("note", "with Orrin"),
                people.lead(),
                302);
        answer(
                post(base + "/closing")
                        .param("task-" + done, "done")
                        .param("task-" + never, "never")
                        .param("punchItemsStay", "true"),
                ada,
                302);
        assertThat(text("select state || ' ' || closed_on from job")).isEqualTo("closed 2026-11-25");
        assertThat(text("select state || ' ' || quantity_confirmed from task where id = ?", done))
                .isEqualTo("done false");
        assertThat(text("select state || ' ' || never_needed from task where id = ?", never))
                .isEqualTo("dropped true");
        answer(post(base + "/closing"), ada, 302);
    }

    @Test
    void keepsAWalkThroughThatIsRefused() throws Exception {
        String id = Ids.next().toString();
        MockHttpServletRequestBuilder ahead = post(base + "/walk-throughs")
                .param("id", id)
                .param("walkedOn", "2026-12-24")
                .param("note", "with Orrin");
        Document again = answer(ahead, ada, 422);
        assertThat(again.select("#walk-walkedOn-error").text()).isEqualTo("A walk-through cannot be recorded ahead.");
        assertThat(again.select("#walk-walkedOn").val()).isEqualTo("2026-12-24");
        assertThat(again.select("#walk-note").val()).isEqualTo("with Orrin");
        assertThat(again.select("input[name=id]").val()).isEqualTo(id);
        assertThat(answer(ahead, people.lead(), 422).select("form[action$=/closing]"))
                .isEmpty();
        again = answer(
                post(base + "/walk-throughs")
                        .param("id", id)
                        .param("walkedOn", "soon")
                        .param("note", "x".repeat(301)),
                ada,
                422);
        assertThat(again.select("#walk-walkedOn-error").text()).isEqualTo("Give a day as 2026-11-25.");
        assertThat(again.select("#walk-note-error").text()).contains("1 characters too long");
        assertThat(again.select("#walk-walkedOn").val()).isEqualTo("soon");
    }

    @Test
    void keepsADecisionThatIsRefused() throws Exception {
        String lead = "/jobs/" + sample.lead(ada, "Pantry").number();
        Document again =
                answer(post(lead + "/award").param("acceptedOn", "2026-12-24").param("note", "by telephone"), ada, 422);
        assertThat(again.select("#award-acceptedOn-error").text()).isEqualTo("A job cannot be accepted in the future.");
        assertThat(again.select("#award-acceptedOn").val()).isEqualTo("2026-12-24");
        assertThat(again.select("#award-note").val()).isEqualTo("by telephone");
        assertThat(again.select("details[open] form[action$=/award]")).hasSize(1);
        again = answer(post(lead + "/award").param("acceptedOn", "soon").param("note", "x"), ada, 422);
        assertThat(again.select("#award-acceptedOn-error").text()).isEqualTo("Give a day as 2026-11-25.");
        String tooLong = "x".repeat(301);
        again = answer(post(lead + "/loss").param("reason", tooLong), ada, 422);
        assertThat(again.select("#lose-reason-error").text()).contains("too long");
        assertThat(again.select("#lose-reason").val()).isEqualTo(tooLong);
        answer(post(lead + "/loss").param("reason", "too dear"), ada, 302);
        again = answer(post(lead + "/reopening").param("reason", tooLong), ada, 422);
        assertThat(again.select("#reopen-reason-error").text()).contains("too long");
        assertThat(again.select("#reopen-reason").val()).isEqualTo(tooLong);
    }

    @Test
    void showsWhatWasTypedWhereTheJobHasMovedOn() throws Exception {
        Document again = answer(post(base + "/loss").param("reason", "went quiet for good"), ada, 422);
        assertThat(again.select(".summary").text()).isNotEmpty();
        assertThat(again.text()).contains("What you typed: went quiet for good");
    }

    @Test
    void showsBothVersionsOfAPunchListItem() throws Exception {
        UUID id = item("Gap at the left scribe");
        Document conflict = answer(
                post(base + "/punch-items").param("id", id.toString()).param("text", "Gap at the right"), ada, 409);
        assertThat(conflict.select("tbody tr").eachText())
                .contains("What is to be put right Gap at the left scribe Gap at the right");
    }

    private void close() throws Exception {
        answer(post(base + "/closing").param("withoutWalkThrough", "true"), ada, 302);
    }

    @Test
    void takesPunchListItemsButNothingElseWhenClosed() throws Exception {
        UUID piece = sample.piece(job, "Seat", "60", "18", "15", ada);
        close();
        UUID id = item("Squeaks");
        answer(post(base + "/punch-items/" + id + "/completion"), ada, 302);
        String sentence = "The job is closed; reopen it to change this.";
        assertThat(answer(to(base + "/edit"), ada, 422).text()).contains(sentence);
        assertThat(answer(to(base + "/tasks/new"), ada, 422).text()).contains(sentence);
        assertThat(answer(
                                post(base + "/pieces/" + piece)
                                        .param("version", "0")
                                        .param("name", "Seat, oak")
                                        .param("count", "1"),
                                ada,
                                422)
                        .text())
                .contains(sentence);
        assertThat(answer(
                                post(base + "/measures")
                                        .param("id", Ids.next().toString())
                                        .param("name", "Width")
                                        .param("length", "60")
                                        .param("measuredOn", "2026-11-25"),
                                ada,
                                422)
                        .text())
                .contains(sentence);
        answer(post(base + "/stages/" + sample.stage("Mill") + "/entry"), ada, 422);
        Document page = page(base, ada);
        assertThat(page.select("main form").eachAttr("action"))
                .allMatch(a -> a.contains("/punch-items/") || a.contains("/reopening"));
    }

    @Test
    void reopensWithAReasonThatStaysInTheRecord() throws Exception {
        close();
        assertThat(answer(post(base + "/reopening"), ada, 422)
                        .select("#reopen-reason-error")
                        .text())
                .contains("Say why the job is reopened");
        answer(post(base + "/reopening").param("reason", "Second shelf"), people.lead(), 403);
        answer(post(base + "/reopening").param("reason", "Second shelf"), ada, 302);
        assertThat(page(base, ada).text()).contains("Job went from closed to running", "Second shelf");
        answer(to(base + "/tasks/new"), ada, 200);
    }

    @Test
    void marksStagesByHand() throws Exception {
        UUID mill = sample.stage("Mill");
        String path = base + "/stages/" + mill;
        answer(post(path + "/entry"), ada, 302);
        answer(post(path + "/skip"), ada, 422);
        answer(post(path + "/completion"), ada, 302);
        assertThat(page(base, ada).select(".titleblock").text()).contains("Mill, done");
        answer(post(path + "/reopening"), ada, 302);
        answer(post(path + "/skip"), ada, 302);
        assertThat(page(base, ada).text()).contains("Stage Mill: skipped", "Stage Mill: taken back");
        answer(post(base + "/stages/" + Ids.next() + "/entry"), ada, 404);
        answer(post(path + "/entry"), people.helper(), 403);
    }
}
