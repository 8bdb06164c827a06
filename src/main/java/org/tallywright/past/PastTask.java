package org.tallywright.past;

import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;

/**
 * A task of a past job beside what it took. Of a closed job the hours and quantity are those that its review froze.
 *
 * @param pieceId null for a task of the whole job
 * @param quantity estimated
 * @param unitHours the rate it was estimated at
 * @param done whether it was finished; only then it says what it takes
 * @param quantityDone null until it was done
 * @param confirmed whether somebody said that quantity; else it is the estimate, taken when the task was done
 * @param minutes of the hour classes that count in a rate
 * @param rework minutes; likewise call-backs and standby, none of them in {@code minutes}
 */
public record PastTask(
        UUID id,
        @Nullable UUID pieceId,
        UUID kindId,
        String name,
        Unit unit,
        Quantity quantity,
        UnitHours unitHours,
        Hours estimated,
        boolean done,
        @Nullable Quantity quantityDone,
        boolean confirmed,
        int minutes,
        int rework,
        int callBack,
        int standby) {

    private static final UnitHours MOST = UnitHours.of("1000");

    /** What was done, whether somebody counted or not; what was estimated where nobody got that far. */
    public Quantity there() {
        return done && quantityDone != null ? quantityDone : quantity;
    }

    /** Hours per unit that it really took, without rework; empty where it was not finished or nothing was logged. */
    public Optional<UnitHours> took() {
        if (!done || minutes == 0 || there().isZero()) {
            return Optional.empty();
        }
        UnitHours rate = UnitHours.observed(Hours.ofMinutes(minutes), there());
        return rate.equals(UnitHours.ZERO) || rate.compareTo(MOST) > 0 ? Optional.empty() : Optional.of(rate);
    }

    /** {@code 14 h 30 there for 22 sf, quantity not confirmed, and 1 h rework}. */
    String words() {
        if (!done) {
            return "estimated " + estimated + " for " + amount(quantity) + ", not done there";
        }
        return minutes == 0
                ? amount(there()) + " done there" + unconfirmed() + ", no hours logged" + beside()
                : Hours.ofMinutes(minutes) + " there for " + amount(there()) + unconfirmed() + beside();
    }

    /** {@code 14 h 30 for 22 sf, estimated 12 h for 20 sf; 1 h rework besides}. */
    String story() {
        return done ? words() + "; estimated " + estimated + " for " + amount(quantity) : words();
    }

    private String unconfirmed() {
        return confirmed ? "" : ", quantity not confirmed";
    }

    private String amount(Quantity some) {
        return some + " " + unit.code();
    }

    private String beside() {
        return said(rework, " rework") + said(callBack, " call-back") + said(standby, " standby");
    }

    private static String said(int some, String what) {
        return some == 0 ? "" : ", and " + Hours.ofMinutes(some) + what;
    }
}
