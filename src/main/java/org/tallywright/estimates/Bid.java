package org.tallywright.estimates;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Refused;

/** A numbered copy of an estimate as it was issued. Only its fate changes; the database refuses anything else. */
@Entity
@Table(name = "bid")
class Bid {
    @Id
    private UUID id;

    private UUID jobId;
    private String kind;
    private String mark;
    private String number;
    private String title;
    private String state;
    private Instant issuedAt;
    private LocalDate issuedOn;
    private UUID issuedBy;
    private LocalDate validUntil;

    @Column(name = "estimated_minutes")
    private Hours hours;

    private Money labourRate;
    private Money overheadRate;
    private Money labourAmount;
    private Money materialAmount;
    private Money otherAmount;
    private Money overheadAmount;
    private Money contingencyAmount;
    private Money marginAmount;
    private Money roundingAmount;
    private Money priceAmount;
    private Money taxAmount;
    private Money totalAmount;
    private Percent contingencyPercent;
    private String contingencyName;

    @Column(name = "margin_percent")
    private Margin margin;

    private Percent taxPercent;

    @JdbcTypeCode(SqlTypes.JSON)
    private String document;

    private @Nullable Instant acceptedAt;
    private @Nullable LocalDate acceptedOn;
    private String acceptedName = "";
    private @Nullable String acceptedVia;

    @ElementCollection
    @CollectionTable(name = "bid_task", joinColumns = @JoinColumn(name = "bid_id"))
    @OrderColumn(name = "position")
    private List<BidTask> tasks = new ArrayList<>();

    @ElementCollection
    @CollectionTable(name = "bid_material", joinColumns = @JoinColumn(name = "bid_id"))
    @OrderColumn(name = "position")
    private List<BidMaterial> materials = new ArrayList<>();

    @ElementCollection
    @CollectionTable(name = "bid_other", joinColumns = @JoinColumn(name = "bid_id"))
    @OrderColumn(name = "position")
    private List<BidOther> others = new ArrayList<>();

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected Bid() {}

    @SuppressWarnings("NullAway.Init")
    Bid(UUID id, BidNumber number, Offer offer, String document) {
        this.id = id;
        jobId = number.jobId();
        kind = number.kind().code();
        mark = number.mark();
        this.number = number.text();
        title = offer.title();
        state = BidState.ISSUED.code();
        this.document = document;
        copy(offer);
    }

    private void copy(Offer offer) {
        hours = offer.basis().hours();
        labourRate = offer.basis().labourRate();
        overheadRate = offer.basis().overheadRate();
        margin = offer.basis().margin();
        taxPercent = offer.basis().tax();
        contingencyPercent = offer.rates().contingencyPercent();
        contingencyName = offer.rates().contingencyName();
        PriceSum sum = offer.sum();
        labourAmount = sum.labour();
        materialAmount = sum.material();
        otherAmount = sum.other();
        overheadAmount = sum.overhead();
        contingencyAmount = sum.contingency();
        marginAmount = sum.margin();
        roundingAmount = sum.rounding();
        priceAmount = sum.price();
        taxAmount = sum.tax();
        totalAmount = sum.total();
        tasks.addAll(offer.tasks());
        materials.addAll(offer.materials());
        others.addAll(offer.others());
    }

    void issue(UUID by, Instant at, LocalDate on, LocalDate until) {
        issuedBy = by;
        issuedAt = at;
        issuedOn = on;
        validUntil = until;
    }

    void accept(String name, LocalDate on, Instant at, String via) {
        state = BidState.ACCEPTED.code();
        acceptedName = name;
        acceptedOn = on;
        acceptedAt = at;
        acceptedVia = via;
    }

    void withdraw() {
        end(BidState.WITHDRAWN);
    }

    void decline() {
        end(BidState.DECLINED);
    }

    private void end(BidState fate) {
        if (state() == BidState.ACCEPTED) {
            throw new Refused(
                    "Bid " + number + " was accepted; it stays as agreed. Offer a change order for a change.");
        }
        state = fate.code();
    }

    boolean wasAccepted(String name, LocalDate on) {
        return state() == BidState.ACCEPTED && acceptedName.equals(name) && on.equals(acceptedOn);
    }

    BidState state() {
        return BidState.of(state);
    }

    BidStanding standing(boolean followed, LocalDate today) {
        return BidStanding.of(state(), validUntil, followed, today);
    }

    BidKind kind() {
        return BidKind.of(kind);
    }

    UUID id() {
        return id;
    }

    UUID jobId() {
        return jobId;
    }

    String number() {
        return number;
    }

    LocalDate issuedOn() {
        return issuedOn;
    }

    LocalDate validUntil() {
        return validUntil;
    }

    String title() {
        return title;
    }

    String document() {
        return document;
    }

    BidPaper asPaper(BidDocument read, BidStanding standing) {
        return new BidPaper(id, jobId, kind(), number, standing, validUntil, acceptedOn, acceptedName, read);
    }

    AcceptedBid asAccepted() {
        return new AcceptedBid(
                id,
                jobId,
                kind(),
                number,
                title,
                issuedOn,
                validUntil,
                acceptedOn,
                sums(),
                kept(tasks),
                kept(materials),
                kept(others));
    }

    /** Positions only give the order: where they were counted from one, or with gaps, the list has holes. */
    private static <T> List<T> kept(List<@Nullable T> lines) {
        List<T> kept = new ArrayList<>();
        for (T line : lines) {
            if (line != null) {
                kept.add(line);
            }
        }
        return kept;
    }

    BidSums sums() {
        return new BidSums(
                hours,
                labourRate,
                overheadRate,
                contingencyPercent,
                contingencyName,
                margin,
                taxPercent,
                new PriceSum(
                        labourAmount,
                        materialAmount,
                        otherAmount,
                        overheadAmount,
                        contingencyAmount,
                        marginAmount,
                        roundingAmount,
                        taxAmount));
    }
}
