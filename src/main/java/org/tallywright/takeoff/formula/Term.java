package org.tallywright.takeoff.formula;

import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A part of a formula that has a value. */
sealed interface Term {
    int at();

    Amount value(Map<String, Amount> known);

    void names(Set<String> into);

    record Fixed(int at, Amount amount) implements Term {
        @Override
        public Amount value(Map<String, Amount> known) {
            return amount;
        }

        @Override
        public void names(Set<String> into) {}
    }

    record Named(int at, String name) implements Term {
        @Override
        public Amount value(Map<String, Amount> known) {
            Amount amount = known.get(name);
            if (amount == null) {
                throw new FormulaError(at, "\"" + name + "\" is not known here.");
            }
            return amount;
        }

        @Override
        public void names(Set<String> into) {
            into.add(name);
        }
    }

    record Minus(int at, Term of) implements Term {
        @Override
        public Amount value(Map<String, Amount> known) {
            return of.value(known).negated();
        }

        @Override
        public void names(Set<String> into) {
            of.names(into);
        }
    }

    record Pair(int at, String sign, Term left, Term right) implements Term {
        @Override
        public Amount value(Map<String, Amount> known) {
            Amount a = left.value(known);
            Amount b = right.value(known);
            try {
                return switch (sign) {
                    case "*" -> a.times(b);
                    case "/" -> a.over(b);
                    case "+" -> alike(a, b).plus(b);
                    case "-" -> alike(a, b).plus(b.negated());
                    default -> truth(alike(a, b).compareTo(b));
                };
            } catch (ArithmeticException e) {
                throw new FormulaError(
                        at,
                        b.signum() == 0 && sign.equals("/") ? "this divides by nothing." : "this becomes too large.");
            }
        }

        private Amount alike(Amount a, Amount b) {
            if (a.power() != b.power()) {
                throw new FormulaError(
                        at,
                        a.kind() + " and " + b.kind() + " do not go together; write a length with its unit: 3/4 in.");
            }
            return a;
        }

        private Amount truth(int compared) {
            boolean holds = switch (sign) {
                case "<" -> compared < 0;
                case "<=" -> compared <= 0;
                case ">" -> compared > 0;
                case ">=" -> compared >= 0;
                default -> compared == 0;
            };
            return holds ? Amount.ONE : Amount.ZERO;
        }

        @Override
        public void names(Set<String> into) {
            left.names(into);
            right.names(into);
        }
    }

    record Call(int at, String function, List<Term> of) implements Term {
        @Override
        public Amount value(Map<String, Amount> known) {
            if (function.equals("if")) {
                return of.get(of.get(0).value(known).signum() != 0 ? 1 : 2).value(known);
            }
            List<Amount> values = of.stream().map(term -> term.value(known)).toList();
            Amount first = values.get(0);
            for (Amount other : values) {
                if (other.power() != first.power()) {
                    throw new FormulaError(
                            at,
                            function + " wants all of one kind; here are " + first.kind() + " and " + other.kind()
                                    + ".");
                }
            }
            return switch (function) {
                case "min" -> values.stream().min(Amount::compareTo).orElseThrow();
                case "max" -> values.stream().max(Amount::compareTo).orElseThrow();
                case "up" -> stepped(values, RoundingMode.CEILING);
                default -> stepped(values, RoundingMode.FLOOR);
            };
        }

        private Amount stepped(List<Amount> values, RoundingMode mode) {
            Amount value = values.get(0);
            if (values.size() == 1 && value.power() != 0) {
                throw new FormulaError(
                        at, function + " needs a step for " + value.kind() + ": " + function + "(x, 1/16 in).");
            }
            Amount step = values.size() == 1 ? Amount.ONE : values.get(1);
            if (step.signum() <= 0) {
                throw new FormulaError(at, "the step of " + function + " is above nothing.");
            }
            try {
                return new Amount(value.over(step).whole(mode), BigInteger.ONE, 0).times(step);
            } catch (ArithmeticException e) {
                throw new FormulaError(at, "this becomes too large.");
            }
        }

        @Override
        public void names(Set<String> into) {
            of.forEach(term -> term.names(into));
        }
    }
}
