package org.tallywright.estimates.web;

import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.tallywright.estimates.AcceptedBid;
import org.tallywright.estimates.BidAnswer;
import org.tallywright.estimates.BidDifference;
import org.tallywright.estimates.BidKind;
import org.tallywright.estimates.BidPaper;
import org.tallywright.estimates.BidStanding;
import org.tallywright.estimates.BidTask;
import org.tallywright.estimates.Bids;
import org.tallywright.estimates.MoneyAtRisk;
import org.tallywright.estimates.web.EstimatePage.Entry;
import org.tallywright.jobs.JobDesk;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.JobState;
import org.tallywright.jobs.ShopDates;
import org.tallywright.shared.Hours;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.ShopConventions;

/** Puts an issued bid on its page: the frozen sums, the answer, and what differs from the bid before. For the owner only. */
@Component
class SumsPages {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

    private final Bids bids;
    private final JobDesk jobs;
    private final Ladder ladder;
    private final RiskRungs risk;
    private final ShopDates dates;
    private final ShopClock clock;
    private final ShopConventions shop;
    private final MessageSource words;

    SumsPages(
            Bids bids,
            JobDesk jobs,
            Ladder ladder,
            RiskRungs risk,
            ShopDates dates,
            ShopClock clock,
            ShopConventions shop,
            MessageSource words) {
        this.bids = bids;
        this.jobs = jobs;
        this.ladder = ladder;
        this.risk = risk;
        this.dates = dates;
        this.clock = clock;
        this.shop = shop;
        this.words = words;
    }

    void fill(BidPaper paper, Model model) {
        AcceptedBid inside = bids.inside(paper.id());
        JobRef job = jobs.get(paper.jobId());
        MoneyAtRisk said = bids.risk(paper.id()).orElse(null);
        model.addAttribute("paper", paper);
        model.addAttribute("bid", inside);
        model.addAttribute("tag", EstimatePages.tag(paper.standing()));
        model.addAttribute("job", job);
        model.addAttribute(
                "ladder",
                ladder.of(inside, said == null ? null : said.confidence(), materials(inside), others(inside)));
        model.addAttribute("risk", said == null ? List.of() : risk.of(said));
        model.addAttribute("hint", said == null ? "" : RiskRungs.hint(said));
        model.addAttribute(
                "lineHours",
                Hours.sum(inside.tasks().stream().map(BidTask::hours).toList()));
        model.addAttribute("answer", bids.answer(paper.id()).map(this::answer).orElse(List.of()));
        model.addAttribute("options", options(paper));
        model.addAttribute("difference", difference(inside));
        model.addAttribute("canRevise", canRevise(paper, job));
    }

    /**
     * An option inside, as it was issued.
     *
     * @param tag chosen, declined, or empty while it is not decided
     */
    record Inside(AcceptedBid bid, String tag, List<EstimatePage.Rung> ladder) {}

    private List<Inside> options(BidPaper paper) {
        return bids.optionsInside(paper.id()).stream()
                .map(option -> new Inside(option, fate(paper, option.id()), ladder(option)))
                .toList();
    }

    private static String fate(BidPaper paper, UUID option) {
        return !paper.accepted() ? "" : paper.chose(option) ? "chosen" : "declined";
    }

    private List<EstimatePage.Rung> ladder(AcceptedBid inside) {
        Integer confidence = bids.risk(inside.id()).map(MoneyAtRisk::confidence).orElse(null);
        return ladder.of(inside, confidence, materials(inside), others(inside));
    }

    private static boolean canRevise(BidPaper paper, JobRef job) {
        return paper.kind() == BidKind.BID
                && paper.standing() != BidStanding.ACCEPTED
                && (job.state() == JobState.LEAD || job.state() == JobState.BIDDING);
    }

    private @Nullable BidDifference difference(AcceptedBid now) {
        return bids.before(now.id())
                .map(old -> BidDifference.between(offered(old), offered(now)))
                .orElse(null);
    }

    private BidDifference.Offered offered(AcceptedBid bid) {
        return new BidDifference.Offered(bid, bids.optionsInside(bid.id()));
    }

    /** One sentence for what was answered, and one for the reason of a no. */
    private List<String> answer(BidAnswer said) {
        String when = dates.day(said.on());
        ZonedDateTime at = said.at().atZone(clock.zone());
        String moment = dates.day(at.toLocalDate()) + " at " + TIME.format(at);
        String recorded = said.byLink()
                ? " by the link, recorded " + moment + (said.from().isEmpty() ? "" : " from " + said.from())
                : ", recorded here " + moment;
        String what = said.yes() ? "Accepted by " + said.name() + " on " + when : "Declined on " + when;
        return said.yes() ? yes(what + recorded + ".", said) : no(what + recorded + ".", said);
    }

    private List<String> yes(String sentence, BidAnswer said) {
        LocalDate before = said.promisedBefore();
        LocalDate after = said.promisedAfter();
        return before == null || after == null
                ? List.of(sentence)
                : List.of(
                        sentence, "The promised day moved from " + dates.day(before) + " to " + dates.day(after) + ".");
    }

    private List<String> no(String sentence, BidAnswer said) {
        String pick = said.reason().pick().isEmpty()
                ? ""
                : words.getMessage("decline.reason." + said.reason().pick(), null, Locale.ENGLISH) + ". ";
        String reason = pick + said.reason().words();
        return reason.isBlank() ? List.of(sentence) : List.of(sentence, reason.strip());
    }

    private List<Entry> materials(AcceptedBid inside) {
        return inside.materials().stream()
                .map(m -> new Entry(
                        m.name() + ": " + m.netQuantity() + " " + m.unit() + " net / " + m.yield() + ", buys "
                                + m.purchaseQuantity() + " at " + shop.money().format(m.unitPrice()),
                        shop.money().format(m.amount())))
                .toList();
    }

    private List<Entry> others(AcceptedBid inside) {
        return inside.others().stream()
                .map(o -> new Entry(o.description(), shop.money().format(o.amount())))
                .toList();
    }
}
