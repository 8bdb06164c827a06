package org.tallywright.takeoff.formula;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Reads a formula by descent, from comparisons down to names and numbers. */
final class FormulaReader {
    private static final int DEEPEST = 30;
    private static final Set<String> COMPARED = Set.of("<", "<=", ">", ">=", "=");
    private static final Set<String> FUNCTIONS = Set.of("min", "max", "up", "down", "if");

    private final List<Token> tokens;
    private int next;
    private int depth;

    FormulaReader(List<Token> tokens) {
        this.tokens = tokens;
    }

    Term read() {
        Term term = comparison();
        if (peek().sort() != Token.Sort.END) {
            throw new FormulaError(
                    peek().at(),
                    "\"" + peek().text() + "\" is too much here; a sign such as + or * is missing before it.");
        }
        return term;
    }

    private Token peek() {
        return tokens.get(next);
    }

    private Token take() {
        return tokens.get(next++);
    }

    private Term comparison() {
        if (++depth > DEEPEST) {
            throw new FormulaError(peek().at(), "too many brackets inside each other.");
        }
        Term left = sum();
        if (peek().sort() == Token.Sort.SIGN && COMPARED.contains(peek().text())) {
            Token sign = take();
            left = new Term.Pair(sign.at(), sign.text(), left, sum());
        }
        depth--;
        return left;
    }

    private Term sum() {
        Term left = product();
        while (peek().is("+") || peek().is("-")) {
            Token sign = take();
            left = new Term.Pair(sign.at(), sign.text(), left, product());
        }
        return left;
    }

    private Term product() {
        Term left = signed();
        while (peek().is("*") || peek().is("/")) {
            Token sign = take();
            left = new Term.Pair(sign.at(), sign.text(), left, signed());
        }
        return left;
    }

    private Term signed() {
        boolean minus = false;
        int at = peek().at();
        while (peek().is("-")) {
            take();
            minus = !minus;
        }
        Term term = single();
        return minus ? new Term.Minus(at, term) : term;
    }

    private Term single() {
        Token token = take();
        Amount amount = token.amount();
        if (amount != null) {
            return new Term.Fixed(token.at(), amount);
        }
        if (token.sort() == Token.Sort.NAME) {
            return peek().is("(") ? call(token) : named(token);
        }
        if (token.is("(")) {
            Term inside = comparison();
            close();
            return inside;
        }
        throw new FormulaError(
                token.at(),
                token.sort() == Token.Sort.END
                        ? "the formula stops here; a name, a number or a length is missing."
                        : "a name, a number or a length is missing before \"" + token.text() + "\".");
    }

    private static Term named(Token token) {
        if (FUNCTIONS.contains(token.text())) {
            throw new FormulaError(token.at(), "\"" + token.text() + "\" wants brackets behind it.");
        }
        return new Term.Named(token.at(), token.text());
    }

    private Term call(Token name) {
        if (!FUNCTIONS.contains(name.text())) {
            throw new FormulaError(
                    name.at(), "there is no \"" + name.text() + "(...)\"; use min, max, up, down or if.");
        }
        take();
        List<Term> of = new ArrayList<>(List.of(comparison()));
        while (peek().is(",")) {
            take();
            of.add(comparison());
        }
        close();
        boolean right = switch (name.text()) {
            case "if" -> of.size() == 3;
            case "up", "down" -> of.size() <= 2;
            default -> of.size() >= 2;
        };
        if (!right) {
            throw new FormulaError(name.at(), name.text() + " wants " + wanted(name.text()) + ".");
        }
        return new Term.Call(name.at(), name.text(), List.copyOf(of));
    }

    private static String wanted(String function) {
        return switch (function) {
            case "if" -> "three: what holds, then, else";
            case "up", "down" -> "one value, or a value and a step";
            default -> "two values or more";
        };
    }

    private void close() {
        if (!peek().is(")")) {
            throw new FormulaError(peek().at(), "a closing bracket is missing here.");
        }
        take();
    }
}
