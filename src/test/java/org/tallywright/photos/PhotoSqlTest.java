package org.tallywright.photos;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.AppTest;
import org.tallywright.TestClock;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.SampleJobs;
import org.tallywright.people.SamplePeople;
import org.tallywright.photos.picture.SamplePhotos;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

@AppTest
class PhotoSqlTest {
    @Autowired
    SamplePeople people;

    @Autowired
    SampleJobs jobs;

    @Autowired
    PhotoDesk desk;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Trail trail;

    @Autowired
    TestClock clock;

    SignedIn ada;
    JobRef job;

    @BeforeEach
    void adaTakesAPhoto() {
        ada = people.owner();
        job = jobs.windowSeat(ada);
        desk.add(job.id(), SamplePhotos.jpeg(1), new PhotoDetails("Studs", null, false), ada);
    }

    private String one(String sql) {
        return jdbc.sql(sql).query((row, n) -> row.getString(1)).single();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            dated_by = 'guess'                                | photo_dated_by_known
            width = 0                                         | photo_width_in_range
            height = 1601                                     | photo_height_in_range
            caption = repeat('x', 201)                        | photo_caption_fits
            original_hash = '\\x00'                            | photo_original_hash_whole
            taken_at = added_at + interval '2 days'           | photo_camera_before_arrival
            removed_at = added_at - interval '1 second'       | photo_removed_after_added
            piece_id = gen_random_uuid()                      | photo_piece_of_job_fk
            """)
    void refusesWhatCannotBe(String change, String constraint) {
        refuses("update photo set " + change, constraint);
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', textBlock = """
            size = 'huge' ; photo_picture_size_known
            jpeg = '\\x89504e47' ; photo_picture_is_jpeg
            jpeg = '\\xffd8ff' || decode(repeat('00', 2000000), 'hex') ; photo_picture_bytes_in_range
            """)
    void refusesPicturesThatCannotBe(String change, String constraint) {
        refuses("update photo_picture set " + change + " where size = 'large'", constraint);
    }

    private void refuses(String sql, String constraint) {
        assertThatThrownBy(() -> transaction.executeWithoutResult(status -> {
                    trail.by(ada.personId());
                    jdbc.sql(sql).update();
                }))
                .hasMessageContaining(constraint);
    }

    @Test
    void refusesAChangeThatNamesNobodyAndKeepsNoBytesInTheTrail() {
        assertThatThrownBy(() -> jdbc.sql("update photo set caption = 'x'").update())
                .hasMessageContaining("names nobody");
        assertThat(one("select before::text || after::text from (select coalesce(before, '{}') as before, after"
                        + " from audit_entry where subject = 'photo') t"))
                .contains("Studs")
                .doesNotContain("original_hash", "jpeg");
    }

    @Test
    void keepsTwoPicturesAndTheDayOfTheCamera() {
        assertThat(one("select string_agg(size, ' ' order by size) from photo_picture"))
                .isEqualTo("large small");
        assertThat(one("select taken_at || ' ' || dated_by from photo")).isEqualTo("2026-11-24 20:30:00+00 camera");
        assertThat(one("select bool_or(jpeg::text like '%' || encode('Exif', 'hex') || '%') from photo_picture"))
                .isEqualTo("f");
    }

    @Test
    void forgetsAfterSevenDaysWhatWasTakenOut() {
        UUID photo = UUID.fromString(one("select id from photo"));
        desk.remove(job.id(), photo, ada);
        clock.advance(Duration.ofDays(6));
        desk.add(job.id(), SamplePhotos.jpeg(2), new PhotoDetails("", null, false), ada);
        assertThat(one("select count(*) from photo")).isEqualTo("2");
        clock.advance(Duration.ofDays(2));
        desk.add(job.id(), SamplePhotos.jpeg(3), new PhotoDetails("", null, false), ada);
        assertThat(one("select count(*) || ' ' || (select count(*) from photo_picture) from photo"))
                .isEqualTo("2 4");
        assertThat(
                        one(
                                "select coalesce(person_id::text, 'shop') from audit_entry where subject = 'photo' and act = 'delete'"))
                .isEqualTo("shop");
    }

    @Test
    void keepsTheSamePhotoOnceForAJob() {
        assertThat(desk.add(job.id(), SamplePhotos.jpeg(1), new PhotoDetails("again", null, true), ada))
                .isFalse();
        assertThat(one("select count(*) || caption from photo group by caption"))
                .isEqualTo("1Studs");
        JobRef other = jobs.running(ada, "Pantry");
        assertThat(desk.add(other.id(), SamplePhotos.jpeg(1), new PhotoDetails("", null, false), ada))
                .isTrue();
    }
}
