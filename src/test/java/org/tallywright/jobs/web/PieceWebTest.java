package org.tallywright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.UUID;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.tallywright.catalog.CatalogSeed;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

/** Pieces, what they propose, and site measures. */
class PieceWebTest extends JobsOnPages {
    @Autowired
    CatalogSeed catalog;

    private MockHttpServletRequestBuilder piece(JobRef job, UUID id) {
        return post("/jobs/" + job.number() + "/pieces")
                .param("id", id.toString())
                .param("name", "Window seat, north bay")
                .param("width", "61 3/8")
                .param("height", "1' 6\"")
                .param("depth", "381 mm")
                .param("count", "1");
    }

    @Test
    void keepsExactSizes() throws Exception {
        JobRef job = sample.running(ada, "Window seat");
        UUID id = Ids.next();
        answer(piece(job, id), ada, 302);
        answer(piece(job, id), ada, 302);
        assertThat(count("piece")).isEqualTo(1);
        // 61 3/8 in = 3928/64 in of 127 units, 18 in = 1152/64, 381 mm of 320 units.
        assertThat(text("select width || ' ' || height || ' ' || depth from piece"))
                .isEqualTo(3928 * 127 + " " + 1152 * 127 + " " + 381 * 320);
        assertThat(page("/jobs/" + job.number(), ada).text()).contains("5' 1 3/8\" wide, 1' 6\" high, 1' 3\" deep");
    }

    @Test
    void refusesSizesThatAreNoneBesideTheirBoxes() throws Exception {
        JobRef job = sample.running(ada, "Window seat");
        Document again = answer(
                post("/jobs/" + job.number() + "/pieces")
                        .param("id", Ids.next().toString())
                        .param("width", "wide")
                        .param("height", "0")
                        .param("depth", "200 m")
                        .param("count", "1000"),
                ada,
                422);
        assertThat(again.select("#width-error").text()).contains("wide");
        assertThat(again.select("#height-error").text()).isEqualTo("A size is more than nothing.");
        assertThat(again.select("#depth-error").text()).contains("longer than 100 m");
        assertThat(again.select("#count-error").text()).isEqualTo("Give a whole number from 1 to 999.");
        assertThat(again.select("#name-error").text()).isEqualTo("Please fill this in.");
        assertThat(again.select("#width").val()).isEqualTo("wide");
        assertThat(count("piece")).isZero();
    }

    @Test
    void proposesTasksThatBecomeTheJobsOwn() throws Exception {
        catalog.load();
        JobRef job = sample.running(ada, "Bookcases");
        UUID id = Ids.next();
        String kind = text("""
                select k.id::text from piece_kind k join piece_kind_task t on t.piece_kind_id = k.id
                where t.measure <> 'job' group by k.id order by count(*) desc, k.name limit 1""");
        answer(piece(job, id).param("kind", kind), ada, 302);
        String path = "/jobs/" + job.number() + "/pieces/" + id + "/proposals";
        Document proposals = page(path, ada);
        assertThat(proposals.select(".proposals li").size()).isGreaterThan(3);
        MockHttpServletRequestBuilder taken = post(path);
        for (Element row : proposals.select(".proposals li")) {
            taken.param("row", row.select("[name=row]").val());
            for (Element box : row.select("input[type=hidden][name*=-]")) {
                taken.param(box.attr("name"), box.val());
            }
            String quantity = row.select(".box").attr("name");
            taken.param(quantity, row.select(".box").val());
        }
        Element first = proposals.selectFirst(".proposals li");
        String firstId = first.select("[name=row]").val();
        taken.param("take-" + firstId, "true");
        answer(taken, ada, 302);
        answer(taken, ada, 302);
        assertThat(count("task")).isEqualTo(1);
        assertThat(text("select id::text from task")).isEqualTo(firstId);
        assertThat(text("select (starting_unit_hours = unit_hours)::text from task"))
                .isEqualTo("true");
        // What is in the plan already is not ticked again.
        assertThat(page(path, ada).select(".proposals li").stream()
                        .filter(li -> li.text().contains("is in the plan already"))
                        .flatMap(li -> li.select("input[checked]").stream()))
                .isEmpty();
    }

    @Test
    void refusesAProposedQuantityBesideItsBoxAndKeepsTheTicks() throws Exception {
        JobRef job = sample.running(ada, "Bookcases");
        UUID piece = sample.piece(job, "Left", "36", "84", "12", ada);
        UUID kind = sample.kind("edge_band", "Band edges", "Mill", "lf", "0.05");
        UUID task = Ids.next();
        Document again = answer(
                post("/jobs/" + job.number() + "/pieces/" + piece + "/proposals")
                        .param("row", task.toString())
                        .param("kind-" + task, kind.toString())
                        .param("quantity-" + task, "some")
                        .param("take-" + task, "true"),
                ada,
                422);
        assertThat(again.select("#quantity-" + task + "-error").text()).contains("some");
        assertThat(again.select("#quantity-" + task).val()).isEqualTo("some");
        assertThat(again.select("#take-" + task).hasAttr("checked")).isTrue();
        answer(post("/jobs/" + job.number() + "/pieces/" + piece + "/proposals").param("row", "x"), ada, 422);
    }

    @Test
    void findsNoPieceOfAnotherJob() throws Exception {
        JobRef job = sample.running(ada, "Bookcases");
        UUID foreign = sample.piece(sample.running(ada, "Stair"), "Tread", "36", "1", "11", ada);
        String base = "/jobs/" + job.number() + "/pieces/" + foreign;
        answer(to(base), ada, 404);
        answer(to(base + "/proposals"), ada, 404);
        answer(post(base).param("name", "Mine").param("count", "1").param("version", "0"), ada, 404);
        answer(post(base + "/removal"), ada, 404);
        assertThat(text("select name from piece")).isEqualTo("Tread");
    }

    @Test
    void takesAPieceOutOnlyWhileNothingRefersToIt() throws Exception {
        JobRef job = sample.running(ada, "Bookcases");
        UUID piece = sample.piece(job, "Left", "36", "84", "12", ada);
        UUID task = sample.task(job, piece, sample.kind("edge_band", "Band edges", "Mill", "lf", "0.05"), "9", ada);
        answer(post("/jobs/" + job.number() + "/pieces/" + piece + "/removal"), ada, 422);
        assertThat(count("piece")).isEqualTo(1);
        jdbc.sql("delete from job_event where task_id = ?").param(task).update();
        jdbc.sql("delete from task").update();
        answer(post("/jobs/" + job.number() + "/pieces/" + piece + "/removal"), ada, 302);
        assertThat(count("piece")).isZero();
    }

    @Test
    void writesDownMeasuresByWhomAndWhen() throws Exception {
        SignedIn jonas = people.helper();
        JobRef job = sample.running(ada, "Alcoves");
        UUID piece = sample.piece(job, "Left alcove", "47 5/16", "90", "12", ada);
        String path = "/jobs/" + job.number() + "/measures";
        UUID id = Ids.next();
        MockHttpServletRequestBuilder reading = post(path)
                .param("id", id.toString())
                .param("piece", piece.toString())
                .param("name", "Front width")
                .param("length", "48 1/8")
                .param("measuredOn", "2026-11-24")
                .param("note", "at the floor");
        answer(reading, jonas, 302);
        answer(reading, jonas, 302);
        assertThat(page("/jobs/" + job.number(), ada).select(".measures").text())
                .isEqualTo("Measures of Left alcove Front width Jonas Pell, Tue 24 Nov: at the floor 4' 1/8\"");
        Document again = answer(
                post(path)
                        .param("id", Ids.next().toString())
                        .param("name", "Depth")
                        .param("length", "12 1/8")
                        .param("measuredOn", "2026-11-26"),
                jonas,
                422);
        assertThat(again.select("#measuredOn-error").text()).isEqualTo("A measure cannot be taken in the future.");
    }
}
