package org.tallywright.clients.web;

import static java.util.Objects.requireNonNull;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.clients.ClientCard;
import org.tallywright.clients.SaveClient;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Typed;
import org.tallywright.web.FormReader;

/** A client as typed. */
record ClientForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String name,
        @Nullable String phone,
        @Nullable String email,
        @Nullable String note) {

    static ClientForm blank(UUID id) {
        return new ClientForm(id, null, "", "", "", "");
    }

    static ClientForm of(ClientCard client) {
        return new ClientForm(
                client.id(), client.version(), client.name(), client.phone(), client.email(), client.note());
    }

    /** The save this asks for, or null with every refusal in {@code read}. */
    @Nullable
    SaveClient read(UUID savedId, FormReader read) {
        String readName = read.field("name", () -> Typed.requiredLine(text(name), 120));
        String readPhone = read.field("phone", () -> Typed.line(text(phone), 60));
        String readEmail = read.field("email", () -> mail(Typed.line(text(email), 200)));
        String readNote = read.field("note", () -> Typed.block(text(note), 2000));
        if (read.refused()) {
            return null;
        }
        return new SaveClient(
                savedId,
                version,
                requireNonNull(readName),
                requireNonNull(readPhone),
                requireNonNull(readEmail),
                requireNonNull(readNote));
    }

    private static String mail(String typed) {
        if (!typed.isEmpty() && !typed.matches("[^@\\s]+@[^@\\s]+")) {
            throw new NotUnderstood("A mail address has one @ and no spaces.");
        }
        return typed;
    }

    static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
