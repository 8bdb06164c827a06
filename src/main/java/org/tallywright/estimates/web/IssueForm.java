package org.tallywright.estimates.web;

import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tallywright.estimates.BidKind;
import org.tallywright.estimates.BidWords;
import org.tallywright.estimates.IssueBid;
import org.tallywright.estimates.PaymentPlan;
import org.tallywright.estimates.WorkingSum;
import org.tallywright.shared.Ids;
import org.tallywright.shared.Money;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;
import org.tallywright.web.FormReader;

/**
 * The words of a bid as typed.
 *
 * @param version of the estimate whose words these are
 * @param seen the total that the page showed
 */
record IssueForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Nullable String seen,
        @Nullable String title,
        @Nullable String scope,
        @Nullable String exclusions,
        @Nullable String payments,
        @Nullable String terms,
        @Nullable String validDays,
        @Nullable String addedDays,
        @Nullable String overLimit) {
    private static final int MOST_WORDS = 8000;
    private static final Pattern DAYS = Pattern.compile("(\\d{1,3})( working)?( days?)?");

    /** @param about of a change order: its title, where it is known */
    static IssueForm of(WorkingSum sum, String jobTitle, String about, int validDays) {
        return new IssueForm(
                Ids.next(),
                sum.version(),
                total(sum),
                sum.sheet().nextKind() == BidKind.BID ? jobTitle : about,
                sum.words().scope(),
                sum.words().exclusions(),
                sum.words().payments(),
                sum.words().terms(),
                String.valueOf(validDays),
                "",
                "");
    }

    /**
     * The same words beside the sum as it is now, so that the next press of the button is about that. The version moves
     * on only where these words are the kept ones: others are still to be seen.
     */
    IssueForm seeing(WorkingSum sum) {
        BidWords typed = words(new FormReader());
        Integer seenVersion = sum.words().equals(typed) ? sum.version() : version;
        return new IssueForm(
                id,
                seenVersion,
                total(sum),
                title,
                scope,
                exclusions,
                payments,
                terms,
                validDays,
                addedDays,
                overLimit);
    }

    private static String total(WorkingSum sum) {
        return sum.everything().amount().toPlainString();
    }

    @Nullable
    IssueBid read(FormReader read) {
        UUID own = read.field("", () -> Picked.own(id));
        String what = read.field("title", () -> Typed.requiredLine(Picked.text(title), 160));
        BidWords words = words(read);
        Integer days = read.field("validDays", () -> days(Picked.text(validDays)));
        Integer more = read.field("addedDays", () -> addedDays(Picked.text(addedDays)));
        Money total = read.field("", () -> seenTotal());
        if (read.refused()
                || own == null
                || what == null
                || words == null
                || days == null
                || more == null
                || total == null) {
            return null;
        }
        return new IssueBid(own, version, what, words, days, more, total);
    }

    private Money seenTotal() {
        try {
            return Money.of(Picked.text(seen));
        } catch (NotUnderstood lost) {
            throw new Refused("The form did not arrive as this page sends it. Look at the price again, then issue.");
        }
    }

    @Nullable
    BidWords words(FormReader read) {
        String does = read.field("scope", () -> Typed.block(Picked.text(scope), MOST_WORDS));
        String not = read.field("exclusions", () -> Typed.block(Picked.text(exclusions), MOST_WORDS));
        String paid = read.field("payments", () -> payments(Picked.text(payments)));
        String how = read.field("terms", () -> Typed.block(Picked.text(terms), MOST_WORDS));
        return does == null || not == null || paid == null || how == null ? null : new BidWords(does, not, paid, how);
    }

    @Nullable
    PaymentPlan readPayments(FormReader read) {
        return read.field("payments", () -> PaymentPlan.of(payments(Picked.text(payments))));
    }

    private static String payments(String typed) {
        String block = Typed.block(typed, 2000);
        PaymentPlan.of(block);
        return block;
    }

    boolean knowsTheLimit() {
        return "true".equals(overLimit);
    }

    /** "2", "2 days", "2 working days"; nothing is none. */
    private static int addedDays(String typed) {
        Matcher days = DAYS.matcher(typed.strip());
        if (typed.isBlank()) {
            return 0;
        }
        if (!days.matches() || Integer.parseInt(days.group(1)) > 365) {
            throw new Refused("Give whole working days from 0 to 365, such as 2.");
        }
        return Integer.parseInt(days.group(1));
    }

    private static int days(String typed) {
        if (!typed.strip().matches("\\d{1,3}")
                || Integer.parseInt(typed.strip()) < 1
                || Integer.parseInt(typed.strip()) > 365) {
            throw new Refused("Give a number of days from 1 to 365.");
        }
        return Integer.parseInt(typed.strip());
    }
}
