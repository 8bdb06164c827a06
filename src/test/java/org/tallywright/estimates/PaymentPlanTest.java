package org.tallywright.estimates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tallywright.estimates.PaymentPlan.Payment;
import org.tallywright.shared.Money;
import org.tallywright.shared.Refused;
import org.tallywright.shop.PaymentRule;

class PaymentPlanTest {
    private static final Money TOTAL = Money.of("1260");

    @Test
    void readsStepsAsPeopleWriteThem() {
        List<Payment> payments = PaymentPlan.of(
                        "40 % to book\n\nat delivery: 40%\n the rest when the punch list is done ")
                .of(TOTAL);

        assertThat(payments)
                .containsExactly(
                        new Payment("To book", "40 %", Money.of("504")),
                        new Payment("At delivery", "40 %", Money.of("504")),
                        new Payment("When the punch list is done", "", Money.of("252")));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            deposit $1,000        | Deposit     | 1000.00
            deposit: 250          | Deposit     | 250.00
            $ 99.50 for the stone | For the stone | 99.50
            1.000,00 \u20ac to book   | To book     | 1000.00
            500 - to book         | To book     | 500.00
            1. Deposit $1,000     | Deposit     | 1000.00
            2) deposit 250        | Deposit     | 250.00
            after 2 coats $500    | After 2 coats | 500.00
            15 January: $200      | 15 January  | 200.00
            """)
    void readsSums(String line, String name, String amount) {
        Payment first = PaymentPlan.of(line + "\nrest").of(TOTAL).get(0);

        assertThat(first).isEqualTo(new Payment(name, "", Money.of(amount)));
    }

    @Test
    void addsUpToTheCentWhateverTheShares() {
        Random random = new Random(11);
        for (int n = 0; n < 2_000; n++) {
            int first = 1 + random.nextInt(60);
            int second = 1 + random.nextInt(99 - first);
            Money total = Money.ofCents(1_000 + random.nextInt(9_000_000));
            String fixed = first + " % now\n" + second + ",5 % later\n" + (100 - first - second - 1) + ".5 % last";
            String rest = first + " % now\nrest last\n" + second + " % between";
            for (String typed : List.of(fixed, rest)) {
                List<Payment> payments = PaymentPlan.of(typed).of(total);
                assertThat(Money.sum(payments.stream().map(Payment::amount).toList()))
                        .as(typed + " of " + total)
                        .isEqualTo(total);
                assertThat(payments).allMatch(payment -> !payment.amount().isNegative());
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "half to book",
                "40 % to book",
                "60 % to book\n60 % later",
                "100 % to book\nrest later",
                "100 % to book\n$5 later",
                "rest now\nrest later",
                "$400 to book",
                "1,23,4.5.6 to book\nrest",
                "$1,000 balance of the deposit\nrest",
                "10 % or $1,000, whichever is less\nrest",
                "15 January: 200\nrest",
                "10 % and 20 % later\nrest"
            })
    void refusesAPlanThatDoesNotComeToTheWhole(String typed) {
        assertThatThrownBy(() -> PaymentPlan.of(typed))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.field()).isEqualTo("payments"));
    }

    @Test
    void refusesSumsAboveTheTotalAndTooManySteps() {
        PaymentPlan plan = PaymentPlan.of("$1,300 to book\nrest when done");
        assertThatThrownBy(() -> plan.of(TOTAL)).isInstanceOf(Refused.class).hasMessageContaining("whole total");
        assertThatThrownBy(() -> PaymentPlan.of("$1 each\n".repeat(12) + "rest"))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> PaymentPlan.of("10 % " + "x".repeat(81) + "\nrest"))
                .isInstanceOf(Refused.class);
    }

    @Test
    void nothingSaidIsNoPlan() {
        assertThat(PaymentPlan.of(" \n ").isEmpty()).isTrue();
        assertThat(PaymentPlan.of("").of(TOTAL)).isEmpty();
        assertThat(PaymentPlan.of("100 % when done").deposit(TOTAL)).isEmpty();
        assertThat(PaymentPlan.of("40 % to book\nrest").deposit(TOTAL)).contains(Money.of("504"));
        for (String before : List.of(
                "100 % to book",
                "100 %",
                "rest before installation",
                "rest",
                "all: 100 % in advance",
                "100 % on signing, before we install",
                "rest when you book, before delivery",
                "100 % on acceptance, installation follows",
                "100 % two days after signing")) {
            assertThat(PaymentPlan.of(before).deposit(TOTAL)).as(before).contains(TOTAL);
        }
        for (String after : List.of(
                "rest when done",
                "100 % on completion",
                "rest after installation",
                "100 % net 30",
                "rest at delivery")) {
            assertThat(PaymentPlan.of(after).deposit(TOTAL)).as(after).isEmpty();
        }
    }

    /**
     * California's contractors board, consumer text as restated in the trade handbook of this project: a home improvement
     * down payment is at most the lesser of $1,000 and 10 % of the contract price.
     */
    @ParameterizedTest
    @CsvSource({"1260, 126.00", "9999, 999.90", "10000, 1000.00", "38000, 1000.00"})
    void holdsTheFirstPaymentToTheLesserOfTwoLimits(String total, String most) {
        PaymentRule rule = new PaymentRule("", BigDecimal.TEN, new BigDecimal("1000"), "California");

        assertThat(rule.most(Money.of(total))).contains(Money.of(most));
        assertThat(new PaymentRule("", null, null, "").most(Money.of(total))).isEmpty();
    }
}
