package org.tallywright.proof;

import java.util.Locale;

/** Who asks: somebody of the shop, or nobody known to it. */
enum Reader {
    OWNER,
    LEAD,
    HELPER,
    BOOKKEEPER,
    STRANGER;

    String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
