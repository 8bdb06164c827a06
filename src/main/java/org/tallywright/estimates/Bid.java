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
import java.util.Objects;
import java.util.Optional;
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
    static final String LINK = "link";
    static final String OWNER = "owner";

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

    /** Of an option: the bid that offers it, and what it was copied from. */
    private @Nullable UUID optionOf;

    private @Nullable UUID optionId;
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
    private int addedDays;
    private @Nullable LocalDate promisedBefore;
    private @Nullable LocalDate promisedAfter;

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

    static Bid option(UUID id, BidNumber number, Offer offer, String document, Bid of, UUID optionId) {
        Bid option = new Bid(id, number, offer, document);
        option.optionOf = of.id;
        option.optionId = optionId;
        option.issue(of.issuedBy, of.issuedAt, of.issuedOn, of.validUntil);
        return option;
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

    /** @param from network address of a yes by link, else empty */
    void accept(String name, LocalDate on, Instant at, String via, String from) {
        state = BidState.ACCEPTED.code();
        answeredFrom = from;
        acceptedName = name;
        acceptedOn = on;
        acceptedAt = at;
        acceptedVia = via;
    }

    void addDays(int working) {
        addedDays = working;
    }

    int addedDays() {
        return addedDays;
    }

    /** What its days did to the day that was promised. */
    void movedPromise(LocalDate from, LocalDate to) {
        promisedBefore = from;
        promisedAfter = to;
    }

    /** The client took the bid without this option of it. */
    void leaveOut() {
        end(BidState.DECLINED);
    }

    void withdraw() {
        end(BidState.WITHDRAWN);
    }

    /** @param from network address of a no by link, else empty */
    void decline(Refusal reason, LocalDate on, Instant at, String via, String from) {
        end(BidState.DECLINED);
        declinedFor = reason.pick();
        declinedWords = reason.words();
        declinedOn = on;
        declinedAt = at;
        declinedVia = via;
        answeredFrom = from;
    }

    Refusal refusal() {
        return new Refusal(declinedFor, declinedWords);
    }

    Optional<BidAnswer> answer() {
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

    private void end(BidState fate) {
        if (state() == BidState.ACCEPTED) {
            throw new Refused(
                    "Bid " + number + " was accepted; it stays as agreed. Offer a change order for a change.");
        }
        if (state() != BidState.ISSUED && state() != fate) {
            throw new Refused(number + " was " + state + " already.");
        }
        state = fate.code();
    }

    boolean wasAccepted(String name, LocalDate on) {
        return state() == BidState.ACCEPTED && acceptedName.equals(name) && on.equals(acceptedOn);
    }

    List<UUID> taskIds() {
        return kept(tasks).stream()
                .map(BidTask::taskId)
                .filter(Objects::nonNull)
                .toList();
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

    BidPaper asPaper(BidDocument read, BidStanding standing, List<Bid> options) {
        List<BidPaper.Option> each = options.stream().map(Bid::asOption).toList();
        Money all = Money.sum(options.stream()
                .filter(option -> option.state() == BidState.ACCEPTED)
                .map(option -> option.totalAmount)
                .toList());
        return new BidPaper(
                id,
                jobId,
                kind(),
                number,
                standing,
                validUntil,
                acceptedOn,
                acceptedName,
                totalAmount,
                totalAmount.plus(all),
                each,
                read);
    }

    private BidPaper.Option asOption() {
        return new BidPaper.Option(id, title, priceAmount, totalAmount, state() == BidState.ACCEPTED);
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
