package org.tallywright.people;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** How a person signs in. The epoch is raised to end every session made before. */
@Entity
class Account {
    @Id
    private UUID personId;

    private String signInName;
    private String passwordHash;
    private int sessionEpoch;
    private Instant createdAt;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    Account() {}

    Account(UUID personId, String signInName, String passwordHash, Instant createdAt) {
        this.personId = personId;
        this.signInName = signInName;
        this.passwordHash = passwordHash;
        this.createdAt = createdAt;
    }

    UUID personId() {
        return personId;
    }

    String signInName() {
        return signInName;
    }

    String passwordHash() {
        return passwordHash;
    }

    int sessionEpoch() {
        return sessionEpoch;
    }

    void signInAs(String newName, String newHash) {
        signInName = newName;
        passwordHash = newHash;
        signOutEverywhere();
    }

    void signOutEverywhere() {
        sessionEpoch++;
    }
}
