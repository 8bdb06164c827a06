package org.tallywright.jobs;

import java.util.List;
import java.util.UUID;

/** The newest photos of a job for its page; given by the module that keeps them. */
public interface JobPhotos {
    Shown of(UUID jobId, int most);

    /** @param count of all photos of the job */
    record Shown(int count, List<Thumb> newest) {
        public static final Shown NOTHING = new Shown(0, List.of());
    }

    /**
     * @param alt what to say where the picture is not seen
     * @param width of the small picture in pixels, as {@code height}
     */
    record Thumb(UUID id, String alt, int width, int height) {}
}
