package org.tallywright.jobs.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.clients.ClientBook;
import org.tallywright.clients.SiteCard;
import org.tallywright.jobs.JobDetails;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.web.FormReader;

/** What is written about a job, as typed. */
record JobForm(@Nullable Integer version, String site, String title, String promisedOn, String note) {
    JobForm {
        site = Texts.of(site);
        title = Texts.of(title);
        promisedOn = Texts.of(promisedOn);
        note = Texts.of(note);
    }

    @Nullable
    JobDetails read(FormReader read, ClientBook book) {
        var words = read.field("title", () -> Typed.requiredLine(title, 160));
        var promised = read.optional("promisedOn", promisedOn, () -> Reader.day(promisedOn));
        var internal = read.field("note", () -> Typed.block(note, 4000));
        SiteCard card = read.field("site", () -> {
            UUID id = Reader.id(site, "Pick a site from the list.");
            return book.site(id).orElseThrow(() -> new NotUnderstood("Pick a site from the list."));
        });
        return read.refused() || words == null || internal == null || card == null
                ? null
                : new JobDetails(card.clientId(), card.id(), words, promised, internal);
    }

    List<Stale.Row> beside(JobForm theirs, java.util.function.Function<String, String> siteName) {
        return List.of(
                new Stale.Row("Site", siteName.apply(theirs.site), siteName.apply(site)),
                new Stale.Row("Title", theirs.title, title),
                new Stale.Row("Promised", theirs.promisedOn, promisedOn),
                new Stale.Row("Internal note", theirs.note, note));
    }
}
