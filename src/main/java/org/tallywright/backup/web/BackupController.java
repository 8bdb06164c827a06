package org.tallywright.backup.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
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

    /** Written as it is read, so that a large shop needs no memory for it. */
    @GetMapping("/file")
    void download(HttpServletResponse response) throws IOException {
        response.setContentType("application/zip");
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                ContentDisposition.attachment()
                        .filename("tallywright-" + clock.today() + ".zip")
                        .build()
                        .toString());
        var unused = backup.write(response.getOutputStream());
    }
}
