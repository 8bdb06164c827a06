package org.tallywright.estimates;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.estimates.BidDocument.OptionRow;
import org.tallywright.estimates.BidDocument.PieceRow;
import org.tallywright.estimates.BidDocument.PriceRow;
import org.tallywright.estimates.print.PaperSize;
import org.tallywright.jobs.JobRef;
import org.tallywright.shared.Length;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shop.Shop;
import org.tallywright.shop.ShopSettings;

/** Writes down all that a bid prints, in today's words and formats. */
@Component
class BidWriter {
    static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    private static final String LAW =
            "Local law decides what a contract, a deposit, a cancellation and tax must look like; where it differs from"
                    + " this page, the law holds.";

    private final BidFacts facts;
    private final ShopSettings settings;
    private final ShopConventions conventions;

    BidWriter(BidFacts facts, ShopSettings settings, ShopConventions conventions) {
        this.facts = facts;
        this.settings = settings;
        this.conventions = conventions;
    }

    BidDocument write(
            JobRef job,
            BidNumber number,
            IssueBid said,
            Offer offer,
            List<OfferMaker.Optional> options,
            LocalDate on,
            LocalDate until) {
        Shop shop = settings.current();
        BidFacts.Place place = facts.place(job.id());
        return new BidDocument(
                BidDocument.FORM,
                number.kind().label(),
                number.text(),
                said.title(),
                shop.name(),
                lines(shop.contactLines()),
                DAY.format(on),
                DAY.format(until),
                place.clientName(),
                place.siteAddress(),
                job.number(),
                job.title(),
                lines(said.words().scope()),
                shown(facts.pieces(job.id()), number.kind(), offer, options).stream()
                        .map(piece -> new PieceRow(piece.name(), piece.count(), size(piece)))
                        .toList(),
                lines(said.words().exclusions()),
                days(number.kind() == BidKind.CHANGE_ORDER ? said.addedDays() : 0),
                prices(offer.sum(), offer.basis().tax(), shop.taxLabel()),
                lines(said.words().terms()),
                LAW,
                PaperSize.ofCurrency(shop.currency().getCurrencyCode()).code(),
                options.stream().map(option -> option(job, offer, option)).toList(),
                allowances(offer),
                payments(said.words(), offer.sum().total()));
    }

    /** A bid lists every piece of the job but those that are built only for an option, a change order those it touches. */
    private static List<BidFacts.PieceFacts> shown(
            List<BidFacts.PieceFacts> pieces, BidKind kind, Offer offer, List<OfferMaker.Optional> options) {
        return pieces.stream()
                .filter(piece -> offer.pieces().contains(piece.name())
                        || kind == BidKind.BID
                                && options.stream()
                                        .noneMatch(option ->
                                                option.offer().pieces().contains(piece.name())))
                .toList();
    }

    private String size(BidFacts.PieceFacts piece) {
        return Stream.of(side(piece.width(), "wide"), side(piece.height(), "high"), side(piece.depth(), "deep"))
                .filter(side -> !side.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private String side(@Nullable Length length, String way) {
        return length == null ? "" : length.format(conventions.units()) + " " + way;
    }

    private List<PriceRow> prices(PriceSum sum, Percent tax, String taxLabel) {
        List<PriceRow> rows = new ArrayList<>();
        rows.add(new PriceRow("Price", money(sum.price())));
        if (!sum.tax().isZero()) {
            rows.add(new PriceRow((taxLabel.isBlank() ? "Tax" : taxLabel) + ", " + tax + " %", money(sum.tax())));
            rows.add(new PriceRow("Total", money(sum.total())));
        }
        return rows;
    }

    private List<PriceRow> allowances(Offer offer) {
        return offer.others().stream()
                .filter(other -> other.sort().equals(CostSort.ALLOWANCE.code()))
                .map(other ->
                        new PriceRow(other.description(), money(offer.sum().asked(other.amount()))))
                .toList();
    }

    private List<PriceRow> payments(BidWords words, Money total) {
        return PaymentPlan.of(words.payments()).of(total).stream()
                .map(step -> new PriceRow(
                        step.share().isEmpty() ? step.name() : step.name() + ", " + step.share(), money(step.amount())))
                .toList();
    }

    private static String days(int added) {
        return added == 0 ? "" : added == 1 ? "1 working day" : added + " working days";
    }

    private OptionRow option(JobRef job, Offer base, OfferMaker.Optional option) {
        Stream<String> built = facts.pieces(job.id()).stream()
                .filter(piece -> option.offer().pieces().contains(piece.name())
                        && !base.pieces().contains(piece.name()))
                .map(this::built);
        return new OptionRow(
                option.id(),
                option.offer().title(),
                Stream.concat(built, lines(option.source().option().words()).stream())
                        .toList(),
                money(option.offer().sum().total()),
                option.source().option().oneOf(),
                allowances(option.offer()));
    }

    /** A piece in one line, as an option names what is built for it alone. */
    private String built(BidFacts.PieceFacts piece) {
        String size = size(piece);
        String count = piece.count() == 1 ? "" : piece.count() + " x ";
        return count + piece.name() + (size.isEmpty() ? "" : ": " + size);
    }

    private String money(Money amount) {
        return conventions.money().format(amount);
    }

    private static List<String> lines(String block) {
        return block.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
    }
}
