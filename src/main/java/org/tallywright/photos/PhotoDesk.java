package org.tallywright.photos;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.tallywright.jobs.JobDesk;
import org.tallywright.photos.picture.PhotoReader;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/**
 * Takes photos in and changes what is said of them. The file itself tells a repeat: sent twice, to one job, it is kept
 * once. Reading a photo takes a while and is done outside any transaction.
 */
@Service
public class PhotoDesk {
    /** Bytes of one file as it is sent. */
    public static final int MOST_BYTES = 15 << 20;

    private static final Instant FIRST =
            java.time.LocalDate.of(2000, 1, 1).atStartOfDay(ZoneOffset.UTC).toInstant();

    private final PhotoReader reader = new PhotoReader();
    private final PhotoKeeping keeping;
    private final JobDesk jobs;
    private final ShopClock clock;

    PhotoDesk(PhotoKeeping keeping, JobDesk jobs, ShopClock clock) {
        this.keeping = keeping;
        this.jobs = jobs;
        this.clock = clock;
    }

    /**
     * Keeps a photo of an open job. The same file again changes nothing.
     *
     * @return whether it is new to the job
     * @throws Refused for what is no photo, too large, or not whole, and for a closed job
     */
    public boolean add(UUID job, byte[] file, PhotoDetails details, SignedIn me) {
        jobs.get(job).guardOpen();
        if (file.length > MOST_BYTES) {
            throw new Refused("The file is larger than 15 MB. Make the photo smaller and send it again.");
        }
        byte[] hash = hash(file);
        if (keeping.has(job, hash)) {
            return false;
        }
        PhotoReader.Developed developed = reader.read(file, clock.zone());
        Instant now = clock.now();
        return keeping.keep(
                job,
                allowed(details, false, me),
                hash,
                developed,
                believed(developed.taken(), now),
                now,
                me.personId());
    }

    /** A camera whose clock was never set says 1970, or a day to come. */
    private static @Nullable Instant believed(@Nullable Instant taken, Instant now) {
        return taken == null || taken.isBefore(FIRST) || taken.isAfter(now) ? null : taken;
    }

    /** Only the owner says what the client sees; from anybody else it stays as it was. */
    private static PhotoDetails allowed(PhotoDetails said, boolean was, SignedIn me) {
        return new PhotoDetails(said.caption(), said.pieceId(), me.is(Role.OWNER) ? said.forClient() : was);
    }

    /** @throws NotHere where it is not this person's to change: a helper changes his own */
    public Kept find(UUID job, UUID id, SignedIn me) {
        return keeping.find(job, id, me);
    }

    /** @throws org.tallywright.shared.Stale where it was changed after the version given */
    public void change(UUID job, UUID id, int version, PhotoDetails details, SignedIn me) {
        Kept kept = keeping.find(job, id, me);
        keeping.change(job, id, version, allowed(details, kept.details().forClient(), me), me);
    }

    /** Also on a closed job: what the client sees is no work on it. */
    public void show(UUID job, UUID id, boolean toClient, SignedIn me) {
        keeping.show(job, id, toClient, me.personId());
    }

    /** Takes it out; for some days it can be put back. */
    public void remove(UUID job, UUID id, SignedIn me) {
        keeping.remove(job, id, clock.now(), me);
    }

    public void putBack(UUID job, UUID id, SignedIn me) {
        keeping.putBack(job, id, me);
    }

    /** What is said of a photo, with the version it was read at. */
    public record Kept(UUID id, PhotoDetails details, int version) {}

    private static byte[] hash(byte[] file) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(file);
        } catch (NoSuchAlgorithmException everyJavaHasIt) {
            throw new IllegalStateException(everyJavaHasIt);
        }
    }
}
