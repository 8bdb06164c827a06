package org.tallywright.demo;

import java.util.UUID;
import org.springframework.stereotype.Component;
import org.tallywright.photos.PhotoDesk;
import org.tallywright.photos.PhotoDetails;
import org.tallywright.web.Role;
import org.tallywright.web.SignedIn;

/** Photos of the running jobs: drawings of ours, sent as any photo is. */
@Component
class DemoPhotos {
    private final PhotoDesk desk;

    DemoPhotos(PhotoDesk desk) {
        this.desk = desk;
    }

    void load(DemoLedger ledger) {
        for (DemoRow row : DemoFile.rows("photos")) {
            UUID piece = ledger.id("piece/" + row.get("job") + "/" + row.get("piece"));
            boolean forClient = row.get("for_client").equals("yes");
            // What the client sees is the owner's to say, whoever took it.
            Role role = forClient ? Role.OWNER : Role.HELPER;
            SignedIn by = new SignedIn(ledger.id("person/" + row.get("person")), row.get("person"), role);
            var unused = desk.add(
                    ledger.id("job/" + row.get("job")),
                    DemoPictures.jpeg(row.get("picture")),
                    new PhotoDetails(row.get("caption"), piece, forClient),
                    by);
        }
    }
}
