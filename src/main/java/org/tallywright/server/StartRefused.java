package org.tallywright.server;

import org.jspecify.annotations.Nullable;

/** The server cannot start as things are. The message is one sentence that tells the owner what to do. */
public class StartRefused extends RuntimeException {
    public StartRefused(String sentence) {
        super(sentence);
    }

    public StartRefused(String sentence, @Nullable Throwable cause) {
        super(sentence, cause);
    }
}
