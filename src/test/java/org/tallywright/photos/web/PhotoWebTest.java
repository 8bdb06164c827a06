package org.tallywright.photos.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;
import org.tallywright.AppTest;
import org.tallywright.QueryCount;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.photos.PhotoDesk;
import org.tallywright.photos.PhotoDetails;
import org.tallywright.photos.picture.SamplePhotos;
import org.tallywright.web.SignedIn;

@AppTest
class PhotoWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    PhotoDesk desk;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    SignedIn jonas;
    JobRef job;
    String base;

    @BeforeEach
    void aRunningJob() {
        ada = people.owner();
        jonas = people.helper();
        job = jobs.windowSeat(ada);
        base = "/jobs/" + job.number() + "/photos";
    }

    private ResultActions send(SignedIn me, String caption, String forClient, MockMultipartFile... files)
            throws Exception {
        MockMultipartHttpServletRequestBuilder request = multipart(base);
        for (MockMultipartFile file : files) {
            request.file(file);
        }
        return mvc.perform(request.param("caption", caption)
                .param("piece", "")
                .param("forClient", forClient)
                .with(csrf())
                .with(signedIn(me)));
    }

    private static MockMultipartFile file(String name, byte[] bytes) {
        return new MockMultipartFile("photos", name, "image/jpeg", bytes);
    }

    private ResultActions act(SignedIn me, String path, String... params) throws Exception {
        var request = post(base + path).with(csrf()).with(signedIn(me));
        for (int i = 0; i < params.length; i += 2) {
            request.param(params[i], params[i + 1]);
        }
        return mvc.perform(request);
    }

    private UUID photo(SignedIn by, int number, String caption) {
        desk.add(job.id(), SamplePhotos.jpeg(number), new PhotoDetails(caption, null, false), by);
        return jdbc.sql("select id from photo where caption = ?")
                .param(caption)
                .query(UUID.class)
                .single();
    }

    private int kept() {
        return jdbc.sql("select count(*) from photo where removed_at is null")
                .query(Integer.class)
                .single();
    }

    private Document page(SignedIn me, String path) throws Exception {
        return Jsoup.parse(mvc.perform(get(path).with(signedIn(me)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    @Test
    void aPhotoTakenAtTheSawLandsOnTheJob() throws Exception {
        send(jonas, "At the saw", "", file("one.jpg", SamplePhotos.jpeg(1)))
                .andExpect(redirectedUrl(base))
                .andExpect(flash().attribute("flash", "The photo is kept."));
        Document sheet = page(jonas, base);
        assertThat(sheet.select(".empty")).isEmpty();
        assertThat(sheet.select(".prints img").attr("alt")).isEqualTo("At the saw");
        assertThat(sheet.select(".prints img").attr("loading")).isEqualTo("lazy");
        assertThat(sheet.select(".prints").text()).contains("taken Tue 24 Nov", "by Jonas Pell");
        assertThat(page(ada, "/jobs/" + job.number()).select(".prints img").attr("alt"))
                .isEqualTo("At the saw");
        String large = sheet.select(".prints figure > a").attr("href");
        for (String picture : new String[] {large, large + "/small"}) {
            byte[] bytes = mvc.perform(get(picture).with(signedIn(jonas)))
                    .andExpect(status().isOk())
                    .andExpect(content().contentType("image/jpeg"))
                    .andExpect(header().string("Cache-Control", "max-age=86400, private"))
                    .andExpect(header().string("X-Content-Type-Options", "nosniff"))
                    .andReturn()
                    .getResponse()
                    .getContentAsByteArray();
            assertThat(new String(bytes, StandardCharsets.ISO_8859_1))
                    .startsWith("\u00ff\u00d8\u00ff")
                    .doesNotContain("Exif", "OGRE", "Ogre");
        }
    }

    @Test
    void aDoubleTapKeepsItOnce() throws Exception {
        send(jonas, "At the saw", "", file("one.jpg", SamplePhotos.jpeg(1))).andExpect(status().is3xxRedirection());
        send(jonas, "At the saw", "", file("one.jpg", SamplePhotos.jpeg(1)))
                .andExpect(status().is3xxRedirection())
                .andExpect(flash().attribute("flash", "That photo was here already."));
        assertThat(kept()).isEqualTo(1);
        send(jonas, "", "", file("one.jpg", SamplePhotos.jpeg(1)), file("two.jpg", SamplePhotos.jpeg(2)))
                .andExpect(flash().attribute("flash", "The photo is kept. One was here already."));
        assertThat(kept()).isEqualTo(2);
    }

    /** What is good of several is kept; the page names the rest, says why and keeps what was typed. */
    @Test
    void saysOfEachFileWhyItIsNotKept() throws Exception {
        send(
                        jonas,
                        "Two of four",
                        "",
                        file("a.jpg", SamplePhotos.jpeg(1)),
                        file("b.heic", SamplePhotos.heic("heic")),
                        file("c.heic", SamplePhotos.heic("heic")),
                        file("d<b>.txt", "no photo at all".getBytes(StandardCharsets.UTF_8)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString("b.heic, c.heic: This photo is in a format"),
                                containsString("d&lt;b&gt;.txt: This is not a photo"),
                                containsString("The other one is kept."),
                                containsString("value=\"Two of four\""))));
        assertThat(kept()).isEqualTo(1);
    }

    @Test
    void refusesWithoutAPhotoTooManyTooLargeAndEmpty() throws Exception {
        send(jonas, "Typed", "")
                .andExpect(status().isUnprocessableContent())
                .andExpect(
                        content().string(allOf(containsString("Choose a photo"), containsString("value=\"Typed\""))));
        send(jonas, "", "", file("", new byte[0]))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Choose a photo")));
        send(jonas, "", "", file("empty.jpg", new byte[0]))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("empty.jpg: The file is empty")));
        send(jonas, "", "", file("large.jpg", new byte[PhotoDesk.MOST_BYTES + 1]))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("larger than 15 MB")));
        MockMultipartFile[] many = new MockMultipartFile[21];
        java.util.Arrays.setAll(many, n -> file(n + ".jpg", SamplePhotos.jpeg(n)));
        send(jonas, "", "", many)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("at most 20")));
        send(jonas, "x".repeat(201), "", file("one.jpg", SamplePhotos.jpeg(1)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("1 characters too long")));
        assertThat(kept()).isZero();
    }

    @Test
    void aClosedJobTakesNoPhotos() throws Exception {
        jdbc.sql(
                        "set session_replication_role = replica; update job set state = 'closed', closed_on = '2026-11-25' where id = '"
                                + job.id() + "'; set session_replication_role = origin")
                .update();
        send(ada, "", "", file("one.jpg", SamplePhotos.jpeg(1))).andExpect(status().isUnprocessableContent());
        assertThat(page(ada, base).select("input[type=file]")).isEmpty();
        assertThat(kept()).isZero();
    }

    @Test
    void onlyTheOwnerSaysWhatTheClientSees() throws Exception {
        send(jonas, "By the helper", "true", file("one.jpg", SamplePhotos.jpeg(1)));
        send(ada, "By the owner", "true", file("two.jpg", SamplePhotos.jpeg(2)));
        assertThat(jdbc.sql("select string_agg(caption, ', ') from photo where for_client")
                        .query(String.class)
                        .single())
                .isEqualTo("By the owner");
        assertThat(page(jonas, base).select("input[name=forClient]")).isEmpty();
        UUID mine = jdbc.sql("select id from photo where not for_client")
                .query(UUID.class)
                .single();
        act(jonas, "/" + mine + "/showing", "shown", "true").andExpect(status().isForbidden());
        act(ada, "/" + mine + "/showing", "shown", "true").andExpect(redirectedUrl(base));
        act(jonas, "/" + mine, "version", "1", "caption", "Changed", "forClient", "")
                .andExpect(redirectedUrl(base));
        assertThat(jdbc.sql("select caption || for_client from photo where id = ?")
                        .param(mine)
                        .query(String.class)
                        .single())
                .isEqualTo("Changedtrue");
    }

    @Test
    void aHelperChangesHisOwn() throws Exception {
        UUID theirs = photo(ada, 1, "Of Ada");
        UUID mine = photo(jonas, 2, "Of Jonas");
        Document sheet = page(jonas, base);
        assertThat(sheet.select("a[href$=/edit]").eachAttr("href")).containsExactly(base + "/" + mine + "/edit");
        mvc.perform(get(base + "/" + theirs + "/edit").with(signedIn(jonas))).andExpect(status().isNotFound());
        act(jonas, "/" + theirs, "version", "0", "caption", "Mine").andExpect(status().isNotFound());
        act(jonas, "/" + theirs + "/removal").andExpect(status().isNotFound());
        act(jonas, "/" + mine, "version", "0", "caption", "Better words").andExpect(redirectedUrl(base));
        act(ada, "/" + mine + "/removal").andExpect(redirectedUrl(base));
        assertThat(kept()).isEqualTo(1);
    }

    @Test
    void takesOutAndPutsBack() throws Exception {
        UUID photo = photo(jonas, 1, "At the saw");
        var answer = act(jonas, "/" + photo + "/removal")
                .andExpect(redirectedUrl(base))
                .andExpect(flash().attribute("takenOut", photo))
                .andReturn()
                .getResponse();
        mvc.perform(get(base + "/" + photo).with(signedIn(jonas))).andExpect(status().isNotFound());
        mvc.perform(get(base).with(signedIn(jonas)).cookie(answer.getCookies()))
                .andExpect(content().string(containsString(photo + "/return")));
        act(jonas, "/" + photo + "/return").andExpect(redirectedUrl(base));
        act(jonas, "/" + photo + "/return").andExpect(redirectedUrl(base));
        mvc.perform(get(base + "/" + photo).with(signedIn(jonas))).andExpect(status().isOk());
        act(jonas, "/" + photo + "/removal");
        send(jonas, "Sent again", "", file("one.jpg", SamplePhotos.jpeg(1)));
        act(jonas, "/" + photo + "/return").andExpect(redirectedUrl(base));
        assertThat(kept()).isEqualTo(1);
    }

    @Test
    void theSecondOfTwoEditsIsShownBoth() throws Exception {
        UUID photo = photo(ada, 1, "First");
        act(ada, "/" + photo, "version", "0", "caption", "Second").andExpect(redirectedUrl(base));
        act(ada, "/" + photo, "version", "0", "caption", "Second").andExpect(redirectedUrl(base));
        act(ada, "/" + photo, "version", "0", "caption", "Third")
                .andExpect(status().isConflict())
                .andExpect(content().string(allOf(containsString("Second"), containsString("Third"))));
        act(
                        ada,
                        "/" + photo,
                        "version",
                        "1",
                        "caption",
                        "Third",
                        "piece",
                        UUID.randomUUID().toString())
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Pick a piece of this job.")));
    }

    @Test
    void isNotTheBookkeepersAndNotAnotherJobs() throws Exception {
        UUID photo = photo(ada, 1, "Studs of the north wall");
        SignedIn mirel = people.bookkeeper();
        for (String path : new String[] {"", "/" + photo, "/" + photo + "/small"}) {
            mvc.perform(get(base + path).with(signedIn(mirel))).andExpect(status().isForbidden());
        }
        mvc.perform(get("/jobs/" + job.number() + "/hours").with(signedIn(mirel)))
                .andExpect(content().string(not(containsString("/photos"))));
        JobRef other = jobs.running(ada, "Pantry");
        for (String path : new String[] {"", "/small", "/edit"}) {
            mvc.perform(get("/jobs/" + other.number() + "/photos/" + photo + path)
                            .with(signedIn(ada)))
                    .andExpect(status().isNotFound());
        }
    }

    @Test
    void isOneTapFromToday() throws Exception {
        assertThat(page(jonas, "/").select("a[href=" + base + "]")).isEmpty();
        assertThat(page(jonas, base).select(".empty")).hasSize(1);
        jdbc.sql("update task set planned_on = '2026-11-25', assigned_to = ? where job_id = ?")
                .params(jonas.personId(), job.id())
                .update();
        assertThat(page(jonas, "/").select("a[href=" + base + "]").eachText())
                .containsExactly(job.number() + " Window seat, north bay");
    }

    @Test
    void asksNoMoreForManyPhotos() throws Exception {
        photo(ada, 1, "First");
        int few = QueryCount.of(() -> page(ada, base)).size();
        for (int n = 2; n < 12; n++) {
            photo(ada, n, "Photo " + n);
        }
        assertThat(QueryCount.of(() -> page(ada, base))).hasSize(few);
        assertThat(page(ada, base).select(".prints li")).hasSize(11);
        assertThat(page(ada, "/jobs/" + job.number()).select(".prints li")).hasSize(6);
        assertThat(page(ada, "/jobs/" + job.number()).text()).contains("All 11 photos");
    }
}
