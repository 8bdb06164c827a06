package org.tallywright.estimates.web;

import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.tallywright.estimates.WilsonInterval;
import org.tallywright.estimates.WinRates;
import org.tallywright.shared.Money;
import org.tallywright.web.Access;
import org.tallywright.web.Role;

/** Which offers were won. */
@Controller
@Access(Role.OWNER)
class WinsController {
    /** Below it a share says little; common practice, no source. */
    private static final int FEW = 10;

    private final WinRates rates;

    WinsController(WinRates rates) {
        this.rates = rates;
    }

    /** @param share won among those decided, with its range and their number; or that nothing is decided */
    record Line(String kind, WinRates.Rate rate, String share) {
        public Money money() {
            return rate.money();
        }
    }

    @GetMapping("/bids")
    String index(Model model) {
        WinRates.Record record = rates.read();
        model.addAttribute("all", new Line("All jobs", record.all(), share(record.all())));
        model.addAttribute(
                "kinds",
                record.kinds().stream()
                        .map(rate -> new Line(rate.kind().isEmpty() ? "Of no kind" : rate.kind(), rate, share(rate)))
                        .toList());
        model.addAttribute("offers", record.offers());
        model.addAttribute("hint", hint(record.all().decided()));
        return "estimates/wins";
    }

    private static String share(WinRates.Rate rate) {
        WilsonInterval interval = rate.interval();
        if (interval == null) {
            return "none decided yet";
        }
        return percent((double) rate.won() / rate.decided()) + " of " + rate.decided() + ", between "
                + percent(interval.low()) + " and " + percent(interval.high())
                + (rate.decided() < FEW ? "; few bids, a hint at most" : "");
    }

    private static String percent(double share) {
        return Math.round(share * 100) + " %";
    }

    private static List<String> hint(int decided) {
        return decided >= FEW
                ? List.of()
                : List.of((decided == 0 ? "No offer is" : decided == 1 ? "1 offer is" : decided + " offers are")
                        + " decided so far. That is little: take the shares as a hint.");
    }
}
