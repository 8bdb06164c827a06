package org.tallywright.offline;

/** The headers by which a phone's queue and the server speak; {@code static/js/queue.js} and {@code static/sw.js} know them too. */
final class Queued {
    /** Of a request: the id of the person whose save it is. */
    static final String BY = "Queued-By";

    /** Of a request: {@link #NOW} where the person waits for it, else it was kept on the phone before. */
    static final String WHEN = "Queued";

    static final String NOW = "now";

    /** Of an answer: where a page would have been led. It stands in place of a redirect, which a script cannot read. */
    static final String WENT_TO = "Went-To";

    /** Of an answer: the id of the person who is signed in. */
    static final String PERSON = "Tallywright-Person";

    private Queued() {}
}
