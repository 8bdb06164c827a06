package org.tallywright.jobs.web;

import org.jspecify.annotations.Nullable;

/** A box that was not sent is an empty box. */
final class Texts {
    private Texts() {}

    static String of(@Nullable String sent) {
        return sent == null ? "" : sent;
    }
}
