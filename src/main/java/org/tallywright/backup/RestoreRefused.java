package org.tallywright.backup;

import org.jspecify.annotations.Nullable;

/** A backup file cannot be restored here, and nothing was changed. The message is a sentence for the owner. */
public class RestoreRefused extends RuntimeException {
    public RestoreRefused(String sentence) {
        super(sentence);
    }

    public RestoreRefused(String sentence, @Nullable Throwable cause) {
        super(sentence, cause);
    }

    static RestoreRefused notEmpty() {
        return new RestoreRefused("This shop is not empty; a backup file is restored into an empty one only,"
                + " so give a new data folder or a new database.");
    }
}
