package org.tallywright.backup.web;

import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;
import org.tallywright.backup.Backup;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.Role;

/** The whole shop in one file, for the owner alone: it holds pay, prices and password hashes. */
@Controller
@RequestMapping("/shop/backup")
@Access(Role.OWNER)
class BackupController {
    private final Backup backup;
    private final ShopClock clock;

    BackupController(Backup backup, ShopClock clock) {
        this.backup = backup;
        this.clock = clock;
    }

    @GetMapping
    String show() {
        return "backup/show";
    }

    @GetMapping("/file")
    ResponseEntity<StreamingResponseBody> download() {
        String name = "tallywright-" + clock.today() + ".zip";
        StreamingResponseBody body = backup::write;
        return ResponseEntity.ok()
                .contentType(MediaType.parseMediaType("application/zip"))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment().filename(name).build().toString())
                .body(body);
    }
}
