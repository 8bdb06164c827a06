package org.tallywright.estimates;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embedded;
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
import java.util.UUID;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
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

    @Embedded
    private FrozenSums sums;

    @JdbcTypeCode(SqlTypes.JSON)
    private String document;

    /** Of an option: the bid that offers it, and what it was copied from. */
    private @Nullable UUID optionOf;

    private @Nullable UUID optionId;
    private String oneOf = "";
    private int addedDays;

    @Embedded
    private GivenAnswer answer;

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
        sums = new FrozenSums(offer);
        answer = new GivenAnswer();
        tasks.addAll(offer.tasks());
        materials.addAll(offer.materials());
        others.addAll(offer.others());
    }

    static Bid option(BidNumber number, OfferMaker.Optional offered, String document, Bid of) {
        Bid option = new Bid(offered.id(), number, offered.offer(), document);
        option.optionOf = of.id;
        option.optionId = offered.source().option().id();
        option.oneOf = offered.source().option().oneOf();
        option.issue(of.issuedBy, of.issuedAt, of.issuedOn, of.validUntil);
        return option;
    }

    void issue(UUID by, Instant at, LocalDate on, LocalDate until) {
        issuedBy = by;
        issuedAt = at;
        issuedOn = on;
        validUntil = until;
    }

    void accept(String name, GivenAnswer.How how) {
        state = BidState.ACCEPTED.code();
        answer.yes(name, how);
    }

    void addDays(int working) {
        addedDays = working;
    }

    int addedDays() {
        return addedDays;
    }

    /** What its days did to the day that was promised. */
    void movedPromise(LocalDate from, LocalDate to) {
        answer.movedPromise(from, to);
    }

    /** The client took the bid without this option of it. */
    void leaveOut() {
        end(BidState.DECLINED);
    }

    void withdraw() {
        end(BidState.WITHDRAWN);
    }

    void decline(Refusal reason, GivenAnswer.How how) {
        end(BidState.DECLINED);
        answer.no(reason, how);
    }

    GivenAnswer answer() {
        return answer;
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
        return state() == BidState.ACCEPTED && answer.acceptedName().equals(name) && on.equals(answer.acceptedOn());
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
                .map(option -> option.sums.total())
                .toList());
        return new BidPaper(
                id,
                jobId,
                kind(),
                number,
                standing,
                validUntil,
                answer.acceptedOn(),
                answer.acceptedName(),
                sums.total(),
                sums.total().plus(all),
                each,
                read);
    }

    BidPaper.Option asOption() {
        return new BidPaper.Option(id, title, oneOf, sums.price(), sums.total(), state() == BidState.ACCEPTED);
    }

    AcceptedBid asAccepted() {
        return new AcceptedBid(
                id,
                jobId,
                kind(),
                number,
                title,
                optionId,
                issuedOn,
                validUntil,
                answer.acceptedOn(),
                sums.read(),
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
}
