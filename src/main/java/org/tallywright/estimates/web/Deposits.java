package org.tallywright.estimates.web;

import org.springframework.stereotype.Component;
import org.tallywright.estimates.BidKind;
import org.tallywright.estimates.BidWords;
import org.tallywright.estimates.PaymentPlan;
import org.tallywright.estimates.PriceSum;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.shared.Money;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shop.PaymentRule;
import org.tallywright.shop.ShopSettings;

/** Holds the first payment of a bid or change order against the limit that the shop has set for it; a warning, for local law decides. */
@Component
class Deposits {
    private final ShopSettings settings;
    private final ShopConventions shop;

    Deposits(ShopSettings settings, ShopConventions shop) {
        this.settings = settings;
        this.shop = shop;
    }

    /** What to say of a first payment over the limit; empty where it is not, or where nothing is known of it. */
    String over(BidWords words, WorkingSum working) {
        if (working.sum().isEmpty()) {
            return "";
        }
        Money total = working.sum().map(PriceSum::total).orElse(Money.ZERO);
        PaymentRule rule = settings.current().payments();
        Money most = rule.most(total).orElse(null);
        Money first = first(words, total);
        if (most == null || first == null || first.compareTo(most) <= 0) {
            return "";
        }
        String whose = rule.place().isEmpty() ? "you set under Shop" : "you set under Shop for " + rule.place();
        boolean change = working.sheet().nextKind() == BidKind.CHANGE_ORDER;
        boolean one = PaymentPlan.of(words.payments()).isOnePayment();
        return (one ? "All of it before the work, " : "The first payment, ")
                + shop.money().format(first) + ", is over the limit that " + whose + ", "
                + shop.money().format(most) + " of this total."
                + (change
                        ? " It is a change: what was asked first of the contract may count with it."
                        : one ? " Say so in the step where it is paid when the work is done." : "")
                + " Local law decides.";
    }

    private static @org.jspecify.annotations.Nullable Money first(BidWords words, Money total) {
        try {
            return PaymentPlan.of(words.payments()).deposit(total).orElse(null);
        } catch (Refused unclear) {
            return null; // said beside the box when the bid is issued
        }
    }
}
