package org.tallywright.jobs.web;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.clients.ClientBook;
import org.tallywright.clients.SaveClient;
import org.tallywright.clients.SaveSite;
import org.tallywright.clients.SiteCard;
import org.tallywright.jobs.Opening;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;
import org.tallywright.web.FormReader;

/**
 * A new job as typed.
 *
 * @param site the id of a known site, or empty for a new one
 * @param client the id of a known client for a new site, or empty for a new client
 */
record OpeningForm(
        @Nullable UUID id,
        @Nullable UUID newClientId,
        @Nullable UUID newSiteId,
        String site,
        String client,
        String clientName,
        String phone,
        String address,
        String accessNote,
        String title,
        String promisedOn,
        String note) {

    OpeningForm {
        site = Texts.of(site);
        client = Texts.of(client);
        clientName = Texts.of(clientName);
        phone = Texts.of(phone);
        address = Texts.of(address);
        accessNote = Texts.of(accessNote);
        title = Texts.of(title);
        promisedOn = Texts.of(promisedOn);
        note = Texts.of(note);
    }

    static OpeningForm blank() {
        return new OpeningForm(Ids.next(), Ids.next(), Ids.next(), "", "", "", "", "", "", "", "", "");
    }

    /** For a site or client that the reader comes from. */
    OpeningForm at(String knownSite, String knownClient) {
        return new OpeningForm(
                id, newClientId, newSiteId, knownSite, knownClient, "", "", "", "", title, promisedOn, note);
    }

    /** With the title to start from. */
    OpeningForm titled(String other) {
        return new OpeningForm(
                id,
                newClientId,
                newSiteId,
                site,
                client,
                clientName,
                phone,
                address,
                accessNote,
                other,
                promisedOn,
                note);
    }

    /** What is to be opened, or null with the refusals kept in {@code read}. */
    @Nullable
    Opening read(FormReader read, ClientBook book) {
        var words = read.field("title", () -> Typed.requiredLine(title, 160));
        var promised = read.optional("promisedOn", promisedOn, () -> Reader.day(promisedOn));
        var internal = read.field("note", () -> Typed.block(note, 4000));
        Place place = site.isBlank() ? newPlace(read) : read.field("site", () -> knownSite(book));
        if (read.refused() || place == null || words == null || internal == null) {
            return null;
        }
        return new Opening(
                Reader.own(id),
                place.clientId,
                place.siteId,
                place.newClient,
                place.newSite,
                words,
                promised,
                internal);
    }

    private record Place(
            UUID clientId,
            UUID siteId,
            @Nullable SaveClient newClient,
            @Nullable SaveSite newSite) {}

    private Place knownSite(ClientBook book) {
        UUID siteId = Reader.id(site, "Pick a site from the list.");
        SiteCard card = book.site(siteId).orElseThrow(() -> new NotUnderstood("Pick a site from the list."));
        if (!clientName.isBlank() || !address.isBlank()) {
            throw new Refused("Pick a known site or type a new one, not both.");
        }
        return new Place(card.clientId(), siteId, null, null);
    }

    private @Nullable Place newPlace(FormReader read) {
        UUID siteId = Reader.own(newSiteId);
        var where = read.field("address", () -> Typed.requiredLine(address, 300));
        var access = read.field("accessNote", () -> Typed.block(accessNote, 1000));
        SaveClient newClient = client.isBlank() ? newClient(read) : null;
        UUID clientId = newClient != null
                ? newClient.id()
                : client.isBlank() ? null : read.field("client", () -> Reader.id(client, "Pick a client."));
        if (where == null || access == null || clientId == null) {
            return null;
        }
        SaveSite newSite = new SaveSite(siteId, null, clientId, where, access, null, false, false, false);
        return new Place(clientId, siteId, newClient, newSite);
    }

    private @Nullable SaveClient newClient(FormReader read) {
        var name = read.field("clientName", () -> Typed.requiredLine(clientName, 120));
        var telephone = read.field("phone", () -> Typed.line(phone, 60));
        return name == null || telephone == null
                ? null
                : new SaveClient(Reader.own(newClientId), null, name, telephone, "", "");
    }
}
