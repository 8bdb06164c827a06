package org.tallywright.clients;

import java.util.List;
import java.util.Objects;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Stale;
import org.tallywright.shared.jpa.SaveTurn;

/**
 * Adds and rewrites clients and their sites. Same id and content is a repeat and changes nothing; same id and other
 * content needs the version in force, else {@link Stale} names both.
 */
@Service
@Transactional
public class ClientDesk {
    private final ClientRows clients;
    private final SiteRows sites;
    private final SaveTurn turn;

    ClientDesk(ClientRows clients, SiteRows sites, SaveTurn turn) {
        this.clients = clients;
        this.sites = sites;
        this.turn = turn;
    }

    public void save(SaveClient save) {
        turn.of(save.id());
        Client kept = clients.findById(save.id()).orElse(null);
        if (kept == null) {
            clients.save(new Client(save));
        } else if (!kept.content().equals(save.unversioned())) {
            if (!Objects.equals(save.version(), kept.version())) {
                throw new Stale("client", differences(kept.content(), save));
            }
            kept.rewrite(save);
        }
    }

    /** @throws NotHere where there is no such client, or the site is another client's */
    public void save(SaveSite save) {
        turn.of(save.id());
        if (!clients.existsById(save.clientId())) {
            throw new NotHere("client");
        }
        Site kept = sites.findById(save.id()).orElse(null);
        if (kept == null) {
            sites.save(new Site(save));
        } else if (!kept.clientId().equals(save.clientId())) {
            throw new NotHere("site");
        } else if (!kept.content().equals(save.unversioned())) {
            if (!Objects.equals(save.version(), kept.version())) {
                throw new Stale("site", differences(kept.content(), save));
            }
            kept.rewrite(save);
        }
    }

    private static List<Stale.Row> differences(SaveClient theirs, SaveClient yours) {
        return List.of(
                new Stale.Row("Name", theirs.name(), yours.name()),
                new Stale.Row("Phone", theirs.phone(), yours.phone()),
                new Stale.Row("Mail", theirs.email(), yours.email()),
                new Stale.Row("Note", theirs.note(), yours.note()));
    }

    private static List<Stale.Row> differences(SaveSite theirs, SaveSite yours) {
        return List.of(
                new Stale.Row("Address", theirs.address(), yours.address()),
                new Stale.Row("Access note", theirs.accessNote(), yours.accessNote()),
                new Stale.Row("Drive, minutes one way", minutes(theirs), minutes(yours)),
                new Stale.Row("Conditions", conditions(theirs), conditions(yours)));
    }

    private static String minutes(SaveSite save) {
        return save.oneWayMinutes() == null ? "" : save.oneWayMinutes().toString();
    }

    private static String conditions(SaveSite save) {
        return String.join(
                ", ",
                new SiteCard(
                                save.id(),
                                save.clientId(),
                                "",
                                "",
                                null,
                                save.occupied(),
                                save.outOfSquare(),
                                save.stairs(),
                                0)
                        .conditions());
    }
}
