package org.tallywright.takeoff.formula;

import org.jspecify.annotations.Nullable;

/**
 * A word of a formula.
 *
 * @param at its first character, from 1
 * @param amount of a number or a length; else null
 */
record Token(Sort sort, String text, int at, @Nullable Amount amount) {
    enum Sort {
        AMOUNT,
        NAME,
        SIGN,
        END
    }

    boolean is(String sign) {
        return sort == Sort.SIGN && text.equals(sign);
    }
}
