package org.tallywright.sharing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;
import static org.tallywright.people.SamplePeople.signedIn;

import java.time.Duration;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.photos.PhotoDesk;
import org.tallywright.photos.PhotoDetails;
import org.tallywright.photos.picture.SamplePhotos;
import org.tallywright.shared.Ids;
import org.tallywright.web.SignedIn;

@AppTest
class ClientLinkWebTest {
    @Autowired
    MockMvc mvc;

    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    ClientLinks links;

    @Autowired
    SharingDesk desk;

    @Autowired
    PhotoDesk photos;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient jdbc;

    SignedIn ada;
    JobRef job;
    String token;

    @BeforeEach
    void adaSharesAWindowSeat() {
        ada = people.owner();
        job = jobs.windowSeat(ada);
        token = links.make(job.id(), "Orrin", 30, ada.personId());
    }

    @Test
    void opensTheJobWithoutSigningIn() throws Exception {
        mvc.perform(get("/c/" + token))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Window seat, north bay")))
                .andExpect(header().string("X-Robots-Tag", containsString("noindex")))
                .andExpect(header().string("Referrer-Policy", "no-referrer"))
                .andExpect(header().string("Cache-Control", "no-store"));
    }

    @Test
    void opensNothingForAWrongRevokedOrExpiredToken() throws Exception {
        mvc.perform(get("/c/" + token.substring(1) + "A")).andExpect(status().isNotFound());
        clock.advance(Duration.ofDays(31));
        mvc.perform(get("/c/" + token)).andExpect(status().isNotFound());
        clock.reset();
        var id = links.of(job.id()).get(0).id();
        mvc.perform(post("/jobs/{n}/sharing/links/{l}/revocation", job.number(), id)
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(status().is3xxRedirection());
        mvc.perform(get("/c/" + token)).andExpect(status().isNotFound());
    }

    @Test
    void keepsOnlyTheHashOfTheToken() {
        String row = jdbc.sql("select l::text from client_link l")
                .query(String.class)
                .single();
        assertThat(row).doesNotContain(token);
        assertThat(token).hasSizeGreaterThanOrEqualTo(43);
    }

    @Test
    void showsChosenNotesOnly() throws Exception {
        desk.write(Ids.next(), job.id(), "Cases are glued up.", true, ada.personId());
        desk.write(Ids.next(), job.id(), "Ask for the key money again.", false, ada.personId());
        mvc.perform(get("/c/" + token))
                .andExpect(content().string(containsString("Cases are glued up.")))
                .andExpect(content().string(not(containsString("key money"))));
    }

    @Test
    void showsThePhotosMeantForTheClientAndNoOther() throws Exception {
        photos.add(job.id(), SamplePhotos.jpeg(1), new PhotoDetails("The seat is in", null, true), ada);
        photos.add(job.id(), SamplePhotos.jpeg(2), new PhotoDetails("Ogre's mistake", null, false), ada);
        mvc.perform(get("/c/" + token))
                .andExpect(content().string(containsString("The seat is in")))
                .andExpect(content().string(not(containsString("mistake"))))
                .andExpect(content().string(not(containsString("Ada Fenn"))));
        UUID shown = photo("The seat is in");
        UUID hidden = photo("Ogre's mistake");
        for (String size : new String[] {"", "/small"}) {
            byte[] jpeg = mvc.perform(get("/c/" + token + "/photos/" + shown + size))
                    .andExpect(status().isOk())
                    .andExpect(content().contentType("image/jpeg"))
                    .andExpect(header().string("Cache-Control", "no-store"))
                    .andExpect(header().string("X-Content-Type-Options", "nosniff"))
                    .andReturn()
                    .getResponse()
                    .getContentAsByteArray();
            assertThat(new String(jpeg, java.nio.charset.StandardCharsets.ISO_8859_1))
                    .doesNotContain("OGRE", "Exif");
            mvc.perform(get("/c/" + token + "/photos/" + hidden + size)).andExpect(status().isNotFound());
            mvc.perform(get("/c/" + token.substring(1) + "A/photos/" + shown + size))
                    .andExpect(status().isNotFound());
        }
        photos.show(job.id(), shown, false, ada);
        mvc.perform(get("/c/" + token + "/photos/" + shown)).andExpect(status().isNotFound());
        photos.show(job.id(), shown, true, ada);
        String other = links.make(jobs.running(ada, "Pantry").id(), "", 30, ada.personId());
        mvc.perform(get("/c/" + other + "/photos/" + shown)).andExpect(status().isNotFound());
        clock.advance(Duration.ofDays(31));
        mvc.perform(get("/c/" + token + "/photos/" + shown)).andExpect(status().isNotFound());
        clock.reset();
        photos.remove(job.id(), shown, ada);
        mvc.perform(get("/c/" + token + "/photos/" + shown)).andExpect(status().isNotFound());
    }

    private UUID photo(String caption) {
        return jdbc.sql("select id from photo where caption = ?")
                .param(caption)
                .query(UUID.class)
                .single();
    }

    @Test
    void refusesALinkOfAnotherJob() throws Exception {
        JobRef other = jobs.running(ada, "Pantry");
        var id = links.of(job.id()).get(0).id();
        mvc.perform(post("/jobs/{n}/sharing/links/{l}/revocation", other.number(), id)
                        .with(csrf())
                        .with(signedIn(ada)))
                .andExpect(status().isNotFound());
        mvc.perform(get("/c/" + token)).andExpect(status().isOk());
    }

    @Test
    void keepsWhatWasTypedWhenRefused() throws Exception {
        mvc.perform(post("/jobs/{n}/sharing/links", job.number())
                        .with(csrf())
                        .with(signedIn(ada))
                        .param("label", "Orrin and Wilda")
                        .param("days", "9999"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Orrin and Wilda")))
                .andExpect(content().string(containsString("from 1 to 730 days")));
        mvc.perform(post("/jobs/{n}/sharing/visit", job.number())
                        .with(csrf())
                        .with(signedIn(ada))
                        .param("from", "2026-12-04")
                        .param("to", "2026-12-01"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("before the first")));
    }

    @Test
    void isTheOwnersToMake() throws Exception {
        mvc.perform(get("/jobs/{n}/sharing", job.number()).with(signedIn(people.lead())))
                .andExpect(status().isForbidden());
        mvc.perform(post("/jobs/{n}/sharing/links", job.number()).with(csrf()).with(signedIn(people.helper())))
                .andExpect(status().isForbidden());
    }
}
