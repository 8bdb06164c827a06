package org.tallywright.takeoff.formula;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Units;

/** Cuts a formula into words. A length carries its unit: {@code 3/4 in}, {@code 1 1/2 in}, {@code 18 mm}, {@code 4 ft}. */
final class Tokens {
    private static final Pattern LENGTH =
            Pattern.compile("(\\d{1,6}(?:\\.\\d{1,6})?(?: \\d{1,2}/\\d{1,2})?|\\d{1,2}/\\d{1,2}) ?"
                    + "(inches|inch|in|\"|mm|cm|m|feet|foot|ft|')(?![a-z0-9_])");
    private static final Pattern NUMBER = Pattern.compile("\\d{1,9}(?:\\.\\d{1,9})?");
    private static final Pattern NAME = Pattern.compile("[A-Za-z][A-Za-z0-9_]{0,39}");
    private static final Pattern SIGN = Pattern.compile("<=|>=|[-+*/(),<>=]|[\u00d7\u00f7\u2212]");

    private Tokens() {}

    static List<Token> of(String formula) {
        List<Token> tokens = new ArrayList<>();
        int at = 0;
        while (at < formula.length()) {
            if (Character.isWhitespace(formula.charAt(at))) {
                at++;
                continue;
            }
            Token token = next(formula, at);
            tokens.add(token);
            at = end(formula, at);
        }
        tokens.add(new Token(Token.Sort.END, "", formula.length() + 1, null));
        return tokens;
    }

    private static Token next(String formula, int at) {
        String length = match(LENGTH, formula, at);
        if (length != null) {
            return new Token(Token.Sort.AMOUNT, length, at + 1, length(length, at + 1));
        }
        String number = match(NUMBER, formula, at);
        if (number != null) {
            return new Token(Token.Sort.AMOUNT, number, at + 1, Amount.of(new BigDecimal(number), 0));
        }
        String name = match(NAME, formula, at);
        if (name != null) {
            return new Token(Token.Sort.NAME, name.toLowerCase(java.util.Locale.ROOT), at + 1, null);
        }
        String sign = match(SIGN, formula, at);
        if (sign != null) {
            return new Token(Token.Sort.SIGN, plain(sign), at + 1, null);
        }
        throw new FormulaError(
                at + 1, "\"" + new String(Character.toChars(formula.codePointAt(at))) + "\" means nothing here.");
    }

    private static int end(String formula, int at) {
        for (Pattern pattern : List.of(LENGTH, NUMBER, NAME, SIGN)) {
            String found = match(pattern, formula, at);
            if (found != null) {
                return at + found.length();
            }
        }
        return formula.length();
    }

    private static @Nullable String match(Pattern pattern, String formula, int at) {
        Matcher matcher = pattern.matcher(formula).region(at, formula.length());
        return matcher.lookingAt() ? matcher.group() : null;
    }

    private static String plain(String sign) {
        return switch (sign) {
            case "\u00d7" -> "*";
            case "\u00f7" -> "/";
            case "\u2212" -> "-";
            default -> sign;
        };
    }

    private static Amount length(String text, int at) {
        try {
            return Amount.length(Length.parse(text, Units.IMPERIAL).units());
        } catch (NotUnderstood notUnderstood) {
            throw new FormulaError(at, notUnderstood.sentence());
        }
    }
}
