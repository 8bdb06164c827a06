package org.tallywright.past.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.calibration.SeenRange;
import org.tallywright.catalog.Measure;
import org.tallywright.catalog.PieceKindCard;
import org.tallywright.catalog.PieceKinds;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.ShopDates;
import org.tallywright.past.BuiltBook;
import org.tallywright.past.BuiltPiece;
import org.tallywright.past.BuiltRanges;
import org.tallywright.past.BuiltSearch;
import org.tallywright.past.WholeJobs;
import org.tallywright.shared.Money;
import org.tallywright.web.NavItem;
import org.tallywright.web.SignedIn;

/** Puts past pieces and jobs on a page, from a fixed number of queries. */
@Component
class BuiltPages {
    static final int SIZE = 25;

    private static final String MATERIAL = "Material for one piece";
    private static final BuiltPage.Figure NO_MATERIAL = new BuiltPage.Figure(
            MATERIAL, "not known", "of none: nothing was bought, or some was given to no piece of its job");

    private final BuiltBook book;
    private final WholeJobs jobs;
    private final PieceKinds kinds;
    private final PastWords words;
    private final ShopDates dates;

    BuiltPages(BuiltBook book, WholeJobs jobs, PieceKinds kinds, PastWords words, ShopDates dates) {
        this.book = book;
        this.jobs = jobs;
        this.kinds = kinds;
        this.words = words;
        this.dates = dates;
    }

    BuiltPage pieces(BuiltForm form, BuiltSearch search, @Nullable JobRef job, SignedIn me) {
        List<PieceKindCard> cards = kinds.all();
        BuiltBook.Found found = book.find(search, form.pageNumber(), SIZE, me.seesMoney());
        boolean money = me.seesMoney() && !found.costs().isEmpty();
        return new BuiltPage(
                form,
                job == null ? null : job.number(),
                tabs(form, "/past"),
                names(cards),
                words.lengthSuffix(),
                ranges(found.ranges(), search, me.seesMoney()),
                found.page().stream()
                        .map(piece -> row(piece, found, natural(piece, cards), me))
                        .toList(),
                found.found(),
                form.pageNumber(),
                pages(found.found()),
                form.path("/past"),
                money,
                found.found() == 0 && form.q().isEmpty() && form.kind().isEmpty() && !search.all());
    }

    static List<NavItem> tabs(BuiltForm form, String now) {
        BuiltForm bare = new BuiltForm(form.job(), form.piece(), "", "", "", "", "", "", "");
        return List.of(
                new NavItem("pieces", "past.pieces", bare.path("/past"), now.equals("/past")),
                new NavItem("jobs", "past.jobs", bare.path("/past/jobs"), now.equals("/past/jobs")));
    }

    private static Map<String, String> names(List<PieceKindCard> cards) {
        Map<String, String> names = new LinkedHashMap<>();
        cards.forEach(card -> names.put(card.id().toString(), card.name()));
        return names;
    }

    static int pages(int found) {
        return Math.max(1, (found + SIZE - 1) / SIZE);
    }

    private static Measure natural(BuiltPiece piece, List<PieceKindCard> cards) {
        return cards.stream()
                .filter(card -> card.id().equals(piece.details().pieceKindId()))
                .findFirst()
                .map(BuiltRanges::natural)
                .orElse(Measure.EACH);
    }

    private BuiltPage.Row row(BuiltPiece piece, BuiltBook.Found found, Measure natural, SignedIn me) {
        BuiltPiece.Took took = found.took().getOrDefault(piece.id(), BuiltPiece.Took.NOTHING);
        Money cost = found.costs().get(piece.id());
        return new BuiltPage.Row(
                piece.id(),
                piece.details().name(),
                piece.kind(),
                words.sizes(piece.details()),
                piece.number(),
                piece.client(),
                finished(piece),
                piece.built() && took.minutes() > 0 ? PastWords.exact(took.minutes()) : "",
                PastWords.exact(took.estimated()),
                piece.built() ? per(piece, took, natural).orElse("") : "",
                took.beside() == 0 ? "" : PastWords.exact(took.beside()),
                cost == null ? "" : words.money(cost.amount().doubleValue()),
                me.seesMoney() && piece.closed() ? "/jobs/" + piece.number() + "/review" : null);
    }

    private String finished(BuiltPiece piece) {
        return piece.built() && piece.finished() != null ? dates.day(piece.finished()) : "Not built yet";
    }

    private Optional<String> per(BuiltPiece piece, BuiltPiece.Took took, Measure natural) {
        return took.minutes() == 0
                ? Optional.empty()
                : piece.measure(natural).map(size -> words.rate(took.minutes() / 60.0 / size.doubleValue(), natural));
    }

    private List<BuiltPage.Figure> ranges(@Nullable BuiltRanges ranges, BuiltSearch search, boolean money) {
        List<BuiltPage.Figure> figures = new ArrayList<>();
        if (ranges == null) {
            return figures;
        }
        Measure natural = ranges.natural();
        add(figures, "Hours for one piece", ranges.hours(), words::hours, "built");
        add(figures, "Hours by " + natural.label(), ranges.perMeasure(), h -> words.rate(h, natural), "built");
        search.measure(natural)
                .filter(size -> natural != Measure.EACH)
                .ifPresent(size -> add(
                        figures,
                        "At your size",
                        ranges.perMeasure(),
                        h -> words.hours(h * size.doubleValue()),
                        "built"));
        ranges.material()
                .map(seen -> material(seen, ranges.unpaid()))
                .or(() -> Optional.of(NO_MATERIAL).filter(f -> money && ranges.unpaid() > 0))
                .ifPresent(figures::add);
        add(
                figures,
                "Material by " + natural.label(),
                ranges.materialPerMeasure(),
                m -> words.moneyPer(m, natural),
                "built");
        ranges.hours().ifPresent(all -> figures.add(again(ranges)));
        add(figures, "On no piece, for one job", ranges.besides(), words::hours, "jobs");
        return figures;
    }

    private BuiltPage.Figure material(SeenRange seen, int unpaid) {
        String without = unpaid == 0 ? "" : "; " + unpaid + " more without a figure";
        return new BuiltPage.Figure(
                MATERIAL, words.money(seen.median()), PastWords.spread(seen, words::money, "built") + without);
    }

    private static void add(
            List<BuiltPage.Figure> figures,
            String name,
            Optional<SeenRange> range,
            DoubleFunction<String> figure,
            String counted) {
        range.ifPresent(seen -> figures.add(
                new BuiltPage.Figure(name, figure.apply(seen.median()), PastWords.spread(seen, figure, counted))));
    }

    private static BuiltPage.Figure again(BuiltRanges ranges) {
        return new BuiltPage.Figure(
                "Rework, call-backs, standby",
                ranges.rework() == 0 ? "none" : PastWords.exact(ranges.rework()),
                ranges.rework() == 0
                        ? "in none of them"
                        : "on " + ranges.reworked() + " of them; not in the hours beside");
    }

    List<WholeJobs.Row> jobs(String q, @Nullable JobRef not, int page) {
        return jobs.page(q, not == null ? null : not.id(), page, SIZE);
    }

    BuiltPage.JobRow jobRow(WholeJobs.Row row) {
        String when =
                row.closedOn() == null ? row.state().label() : row.state().label() + " " + dates.day(row.closedOn());
        String logged = row.logged() == 0 ? "nothing logged" : PastWords.exact(row.logged()) + " logged";
        return new BuiltPage.JobRow(
                row.number(),
                row.title(),
                row.client(),
                when,
                row.pieces(),
                logged + ", " + PastWords.exact(row.estimated()) + " estimated");
    }
}
