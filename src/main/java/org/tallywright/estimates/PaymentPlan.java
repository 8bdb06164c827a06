package org.tallywright.estimates;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Refused;

/**
 * How a price is paid, step by step, as an owner writes it: one step a line with a percentage of the total, a sum, or
 * "rest" for what is left. {@code 40 % to book}, {@code at delivery: 40 %}, {@code deposit $1,000}, {@code rest when done}.
 */
public final class PaymentPlan {
    private static final int MOST_STEPS = 12;
    private static final int MOST_LETTERS = 80;
    private static final Pattern SHARE = Pattern.compile("(\\d{1,3}(?:[.,]\\d{1,3})?) ?%");
    private static final Pattern REST = Pattern.compile("(?i)\\b(?:the )?(?:rest|balance|remainder)\\b");
    private static final Pattern COIN =
            Pattern.compile("\\p{Sc} ?\\d[\\d.,]*\\d|\\p{Sc} ?\\d|\\b\\d[\\d.,]*\\d ?\\p{Sc}|\\b\\d ?\\p{Sc}");
    private static final Pattern SUM = Pattern.compile("\\b\\d[\\d.,]*\\d|\\b\\d");
    private static final Pattern AFTER = Pattern.compile(
            "(?i)\\b(?:when|once|on|at|upon|after)\\b.*\\b(?:done|finish\\w*|complet\\w*|end|install\\w*|deliver\\w*|handover|invoice)\\b"
                    + "|\\bafter\\b|\\bnet \\d");
    /** Words that put a payment before the work, whatever else its name holds. */
    private static final Pattern BEFORE = Pattern.compile(
            "(?i)\\b(?:before|sign\\w*|book\\w*|accept\\w*|award\\w*|order\\w*|advance|deposit|start\\w*|begin\\w*)\\b");
    /** "1. " and "2) " before a step. */
    private static final String COUNTED = "^\\d{1,2}[.)]\\s+";

    /** Of share and sum at most one; neither is the rest. */
    private record Step(
            String name, @Nullable Percent share, @Nullable Money sum) {
        boolean isRest() {
            return share == null && sum == null;
        }
    }

    /**
     * A step in money.
     *
     * @param share "40 %", or empty for a fixed sum
     */
    public record Payment(String name, String share, Money amount) {}

    private final List<Step> steps;

    private PaymentPlan(List<Step> steps) {
        this.steps = steps;
    }

    /**
     * @throws Refused for the field "payments" where a line has no share, sum or rest, or the shares are not 100 % of the total
     */
    public static PaymentPlan of(String typed) {
        List<Step> steps = typed.lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .map(PaymentPlan::step)
                .toList();
        if (steps.size() > MOST_STEPS) {
            throw refused("A payment plan has at most " + MOST_STEPS + " steps.");
        }
        PaymentPlan plan = new PaymentPlan(steps);
        plan.guard();
        return plan;
    }

    private static Step step(String typed) {
        String line = typed.replaceFirst(COUNTED, "");
        Matcher share = SHARE.matcher(line);
        Matcher rest = REST.matcher(line);
        Matcher coin = COIN.matcher(line);
        boolean shared = share.find();
        boolean balance = rest.find();
        boolean coined = coin.find();
        if (shared && balance
                || shared && coined
                || balance && coined
                || shared && share.find()
                || coined && coin.find()) {
            throw refused("\u201c" + shown(typed)
                    + "\u201d says more than one share or sum. Say one of them, and the others on lines of their own.");
        }
        if (shared) {
            share.find(0);
            return new Step(name(line, share), Percent.of(share.group(1).replace(',', '.')), null);
        }
        if (balance) {
            return new Step(name(line, rest), null, null);
        }
        if (coined) {
            coin.find(0);
            return new Step(name(line, coin), null, amount(coin.group()));
        }
        return plain(line);
    }

    /** A sum without its sign, where it is the only number of the line. */
    private static Step plain(String line) {
        Matcher sum = SUM.matcher(line);
        boolean found = sum.find();
        if (found && sum.find()) {
            throw refused("\u201c" + shown(line)
                    + "\u201d has more than one number. Mark the sum, as in $1,500, or write a share in %.");
        }
        sum.reset();
        if (!sum.find()) {
            throw refused("\u201c" + shown(line)
                    + "\u201d says no share. Write it like 40 % to book, $1,000 at delivery or rest when done.");
        }
        return new Step(name(line, sum), null, amount(sum.group()));
    }

    private static Money amount(String typed) {
        try {
            return Money.of(typed);
        } catch (NotUnderstood unclear) {
            throw unclear.at("payments");
        }
    }

    /** What is left of a line, beginning with a capital. */
    private static String name(String line, Matcher found) {
        String rest = (line.substring(0, found.start()) + " " + line.substring(found.end()))
                .replaceAll("\\s+", " ")
                .replaceAll("^[\\s:,;.\u2013-]+|[\\s:,;.\u2013-]+$", "");
        String name = rest.isEmpty() ? "Payment" : rest;
        if (name.length() > MOST_LETTERS) {
            throw refused("\u201c" + shown(name) + "\u201d is longer than " + MOST_LETTERS + " letters.");
        }
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }

    private void guard() {
        long rests = steps.stream().filter(Step::isRest).count();
        if (rests > 1) {
            throw refused("Only one step can be the rest.");
        }
        Percent shares = shares();
        int all = shares.compareTo(Percent.of(100));
        boolean fixed = steps.stream().anyMatch(step -> step.sum() != null);
        if (steps.isEmpty()) {
            return;
        }
        if (all > 0 || all == 0 && (rests == 1 || fixed)) {
            throw refused("The shares come to " + shares + " % with nothing left for the other steps.");
        }
        if (all < 0 && rests == 0) {
            throw refused("The shares come to " + shares + " %; make it 100, or let one step be the rest.");
        }
    }

    private Percent shares() {
        return Percent.of(steps.stream()
                .filter(step -> step.share() != null)
                .map(step -> step.share().amount())
                .reduce(BigDecimal.ZERO, BigDecimal::add));
    }

    public boolean isEmpty() {
        return steps.isEmpty();
    }

    /**
     * The steps in money. Each share is rounded to the cent; the rest, or without one the last share, takes what is left,
     * so that the steps always add up to the total.
     *
     * @throws Refused where the fixed sums are more than the total
     */
    public List<Payment> of(Money total) {
        int last = balancing();
        Money left = total;
        for (int n = 0; n < steps.size(); n++) {
            left = n == last ? left : left.minus(exact(steps.get(n), total));
        }
        if (!steps.isEmpty() && (left.isNegative() || left.isZero() && !total.isZero())) {
            throw refused("The steps before the last come to the whole total of " + total + " or more.");
        }
        List<Payment> payments = new ArrayList<>();
        for (int n = 0; n < steps.size(); n++) {
            Step step = steps.get(n);
            payments.add(new Payment(
                    step.name(),
                    step.share() == null ? "" : step.share() + " %",
                    n == last ? left : exact(step, total)));
        }
        return payments;
    }

    /**
     * What is asked first. A single step is held to be paid before the work unless its words say when it is done: "rest when
     * done", "on completion", "after installation" (words in common use, no source).
     */
    public Optional<Money> deposit(Money total) {
        return steps.isEmpty()
                        || steps.size() == 1 && isAfterTheWork(steps.get(0).name())
                ? Optional.empty()
                : Optional.of(of(total).get(0).amount());
    }

    private static boolean isAfterTheWork(String name) {
        return AFTER.matcher(name).find() && !BEFORE.matcher(name).find();
    }

    /** Whether all is paid at once. */
    public boolean isOnePayment() {
        return steps.size() == 1;
    }

    private int balancing() {
        int last = -1;
        for (int n = 0; n < steps.size(); n++) {
            if (steps.get(n).isRest()) {
                return n;
            }
            last = steps.get(n).share() != null ? n : last;
        }
        return last;
    }

    private static Money exact(Step step, Money total) {
        if (step.sum() != null) {
            return step.sum();
        }
        return step.share() == null ? Money.ZERO : total.times(step.share());
    }

    private static String shown(String line) {
        return line.length() > 60 ? line.substring(0, 60) + "\u2026" : line;
    }

    private static Refused refused(String sentence) {
        return new Refused("payments", sentence);
    }
}
