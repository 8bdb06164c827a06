package org.tallywright.shared;

import java.math.BigDecimal;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;

/**
 * How the shop writes amounts; the default is {@code $9,413.00}.
 *
 * @param symbol the currency sign or code, may be empty
 * @param symbolFirst true for {@code $12.00}, false for {@code 12.00 kr}
 * @param point between whole and cents
 * @param grouping between thousands
 */
public record MoneyFormat(String symbol, boolean symbolFirst, char point, char grouping) {
    public static final MoneyFormat DEFAULT = new MoneyFormat("$", true, '.', ',');

    public MoneyFormat {
        if (symbol.length() > 8) {
            throw new Refused("currency", "A currency sign has at most 8 characters.");
        }
        if (point == grouping) {
            throw new Refused("currency", "The decimal point and the thousands mark must differ.");
        }
    }

    public String format(Money money) {
        return write(money.amount(), "#,##0.00");
    }

    /** In whole units, for what is not known to the cent: {@code $9,413}. */
    public String whole(Money money) {
        return write(money.amount(), "#,##0");
    }

    /** At least two places, up to four where the price has them: {@code $0.0125}. */
    public String format(UnitPrice price) {
        return write(price.amount(), "#,##0.00##");
    }

    private String write(BigDecimal amount, String pattern) {
        DecimalFormatSymbols signs = DecimalFormatSymbols.getInstance(Locale.ROOT);
        signs.setDecimalSeparator(point);
        signs.setGroupingSeparator(grouping);
        String number = new DecimalFormat(pattern, signs).format(amount.abs());
        String gap = symbol.isEmpty() ? "" : "\u00a0";
        String close = symbol.length() > 1 ? gap : "";
        String figure = symbolFirst ? symbol + close + number : number + gap + symbol;
        return amount.signum() < 0 ? "-" + figure : figure;
    }
}
