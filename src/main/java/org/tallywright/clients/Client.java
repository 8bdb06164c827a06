package org.tallywright.clients;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Who the work is for. */
@Entity
class Client {
    @Id
    private UUID id;

    private String name;
    private String phone;
    private String email;
    private String note;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Client() {}

    @SuppressWarnings("NullAway.Init")
    Client(SaveClient first) {
        this.id = first.id();
        rewrite(first);
    }

    @Nullable
    Integer version() {
        return version;
    }

    SaveClient content() {
        return new SaveClient(id, null, name, phone, email, note);
    }

    final void rewrite(SaveClient save) {
        name = save.name();
        phone = save.phone();
        email = save.email();
        note = save.note();
    }
}
