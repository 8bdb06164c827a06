package org.tallywright.photos;

import java.sql.Timestamp;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.photos.picture.PhotoReader;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.trail.Trail;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Writes photos, one transaction each. */
@Component
@Transactional
class PhotoKeeping {
    /** How long a photo that was taken out can be put back. */
    private static final Duration SECOND_THOUGHTS = Duration.ofDays(7);

    private final Photos photos;
    private final JobDesk jobs;
    private final JdbcClient jdbc;
    private final Trail trail;

    PhotoKeeping(Photos photos, JobDesk jobs, JdbcClient jdbc, Trail trail) {
        this.photos = photos;
        this.jobs = jobs;
        this.jdbc = jdbc;
        this.trail = trail;
    }

    @Transactional(readOnly = true)
    public boolean has(UUID job, byte[] hash) {
        return jdbc.sql(
                        "select exists (select from photo where job_id = ? and original_hash = ? and removed_at is null)")
                .params(job, hash)
                .query(Boolean.class)
                .single();
    }

    /** The job is held, so a double tap finds here what its first half kept. */
    public boolean keep(
            UUID job,
            PhotoDetails details,
            byte[] hash,
            PhotoReader.Developed developed,
            @Nullable Instant taken,
            Instant now,
            UUID by) {
        var unused = jobs.holdOpen(job, by);
        guardPiece(job, details.pieceId());
        if (has(job, hash)) {
            return false;
        }
        Photo photo = new Photo(Ids.next(), job, details, hash, developed.width(), developed.height());
        photos.saveAndFlush(photo.added(now, by, taken));
        picture(photo.id(), "large", developed.large());
        picture(photo.id(), "small", developed.small());
        forgetRemoved(now);
        return true;
    }

    private void picture(UUID photo, String size, byte[] jpeg) {
        jdbc.sql("insert into photo_picture (photo_id, size, jpeg) values (?, ?, ?)")
                .params(photo, size, jpeg)
                .update();
    }

    /** Last in its transaction: nobody's act but the shop's. */
    private void forgetRemoved(Instant now) {
        trail.byShop();
        jdbc.sql("delete from photo where removed_at < ?")
                .param(Timestamp.from(now.minus(SECOND_THOUGHTS)))
                .update();
    }

    private void guardPiece(UUID job, @Nullable UUID piece) {
        if (piece != null
                && jdbc.sql("select 1 from piece where id = ? and job_id = ?")
                        .params(piece, job)
                        .query()
                        .listOfRows()
                        .isEmpty()) {
            throw new Refused("piece", "Pick a piece of this job.");
        }
    }

    @Transactional(readOnly = true)
    public PhotoDesk.Kept find(UUID job, UUID id, SignedIn me) {
        Photo photo = own(job, id, me);
        if (photo.removed()) {
            throw new NotHere("photo");
        }
        return new PhotoDesk.Kept(photo.id(), photo.details(), photo.version());
    }

    /** A helper's own, anybody's for owner and lead. */
    private Photo own(UUID job, UUID id, SignedIn me) {
        return photos.findByIdAndJobId(id, job)
                .filter(photo -> !me.is(Role.HELPER) || photo.addedBy(me.personId()))
                .orElseThrow(() -> new NotHere("photo"));
    }

    public void change(UUID job, UUID id, int version, PhotoDetails details, SignedIn me) {
        var unused = jobs.holdOpen(job, me.personId());
        Photo photo = own(job, id, me);
        if (photo.removed()) {
            throw new NotHere("photo");
        }
        guardPiece(job, details.pieceId());
        if (!photo.details().equals(details)) {
            if (photo.version() != version) {
                throw new Stale("photo");
            }
            photo.change(details);
            photos.flush();
        }
    }

    public void show(UUID job, UUID id, boolean toClient, UUID by) {
        trail.by(by);
        photos.findByIdAndJobId(id, job)
                .filter(photo -> !photo.removed())
                .orElseThrow(() -> new NotHere("photo"))
                .show(toClient);
    }

    public void remove(UUID job, UUID id, Instant now, SignedIn me) {
        var unused = jobs.holdOpen(job, me.personId());
        own(job, id, me).remove(now);
        photos.flush();
        forgetRemoved(now);
    }

    /** The same photo may have been sent again meanwhile; that one then stays alone. */
    public void putBack(UUID job, UUID id, SignedIn me) {
        var unused = jobs.holdOpen(job, me.personId());
        Photo photo = own(job, id, me);
        if (photo.removed() && !has(job, photo.originalHash())) {
            photo.putBack();
            photos.flush();
        }
    }
}
