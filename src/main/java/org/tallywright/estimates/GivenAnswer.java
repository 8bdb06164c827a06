package org.tallywright.estimates;

import jakarta.persistence.Embeddable;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The client's yes or no as it is kept with a bid, and the day that a yes moved. Nothing of it while he has not answered. */
@Embeddable
class GivenAnswer {
    static final String LINK = "link";
    static final String OWNER = "owner";

    private @Nullable Instant acceptedAt;
    private @Nullable LocalDate acceptedOn;
    private String acceptedName = "";
    private @Nullable String acceptedVia;
    private @Nullable Instant declinedAt;
    private @Nullable LocalDate declinedOn;
    private @Nullable String declinedVia;
    private String declinedFor = "";
    private String declinedWords = "";
    private String answeredFrom = "";
    private @Nullable LocalDate promisedBefore;
    private @Nullable LocalDate promisedAfter;

    /** How an answer came: on which day it was given, when it was recorded, by link or owner, and from which address. */
    record How(LocalDate on, Instant at, String via, String from) {}

    void yes(String name, How how) {
        acceptedName = name;
        acceptedOn = how.on();
        acceptedAt = how.at();
        acceptedVia = how.via();
        answeredFrom = how.from();
    }

    void no(Refusal reason, How how) {
        declinedFor = reason.pick();
        declinedWords = reason.words();
        declinedOn = how.on();
        declinedAt = how.at();
        declinedVia = how.via();
        answeredFrom = how.from();
    }

    void movedPromise(LocalDate from, LocalDate to) {
        promisedBefore = from;
        promisedAfter = to;
    }

    @Nullable
    LocalDate acceptedOn() {
        return acceptedOn;
    }

    String acceptedName() {
        return acceptedName;
    }

    Refusal refusal() {
        return new Refusal(declinedFor, declinedWords);
    }

    Optional<BidAnswer> shown() {
        if (acceptedOn != null && acceptedAt != null) {
            return Optional.of(new BidAnswer(
                    true,
                    LINK.equals(acceptedVia),
                    acceptedOn,
                    acceptedAt,
                    acceptedName,
                    answeredFrom,
                    refusal(),
                    promisedBefore,
                    promisedAfter));
        }
        return declinedOn == null || declinedAt == null
                ? Optional.empty()
                : Optional.of(new BidAnswer(
                        false,
                        LINK.equals(declinedVia),
                        declinedOn,
                        declinedAt,
                        "",
                        answeredFrom,
                        refusal(),
                        null,
                        null));
    }
}
