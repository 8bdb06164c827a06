package org.tallywright.photos.web;

import java.time.Duration;
import java.util.UUID;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.tallywright.jobs.JobDesk;
import org.tallywright.photos.PhotoRows;
import org.tallywright.shared.NotHere;
import org.tallywright.web.Access;
import org.tallywright.web.Role;

/** The pictures themselves. They never change, so the browser of the person who saw one may keep it for a day. */
@Controller
@RequestMapping("/jobs/{number}/photos/{id}")
@Access({Role.OWNER, Role.LEAD, Role.HELPER})
class PictureController {
    private final JobDesk jobs;
    private final PhotoRows rows;

    PictureController(JobDesk jobs, PhotoRows rows) {
        this.jobs = jobs;
        this.rows = rows;
    }

    @GetMapping
    ResponseEntity<byte[]> show(@PathVariable String number, @PathVariable UUID id) {
        return picture(number, id, false);
    }

    @GetMapping("/small")
    ResponseEntity<byte[]> small(@PathVariable String number, @PathVariable UUID id) {
        return picture(number, id, true);
    }

    private ResponseEntity<byte[]> picture(String number, UUID id, boolean small) {
        byte[] jpeg = rows.picture(jobs.find(number).id(), id, small).orElseThrow(() -> new NotHere("photo"));
        return ResponseEntity.ok()
                .contentType(MediaType.IMAGE_JPEG)
                .cacheControl(CacheControl.maxAge(Duration.ofDays(1)).cachePrivate())
                .body(jpeg);
    }
}
