package org.tallywright.jobs.web;

import org.tallywright.web.FormErrors;

/**
 * One of the forms that decide what becomes of a job, as it was sent and refused.
 *
 * @param form award, loss or reopening; empty where nothing was sent
 */
record Decision(String form, String acceptedOn, String note, String reason, FormErrors errors) {
    static Decision none() {
        return new Decision("", "", "", "", FormErrors.none());
    }

    static Decision award(String acceptedOn, String note, FormErrors errors) {
        return new Decision("award", acceptedOn, note, "", errors);
    }

    static Decision loss(String reason, FormErrors errors) {
        return new Decision("loss", "", "", reason, errors);
    }

    static Decision reopening(String reason, FormErrors errors) {
        return new Decision("reopening", "", "", reason, errors);
    }

    /** The refusals of that form. */
    public FormErrors of(String name) {
        return form.equals(name) ? errors : FormErrors.none();
    }

    /** True where the job has moved on, so that its page no longer holds the form that was sent. */
    public boolean outOf(String state) {
        return switch (form) {
            case "" -> false;
            case "reopening" -> !state.equals("closed") && !state.equals("lost");
            default -> !state.equals("lead") && !state.equals("bidding");
        };
    }

    /** What was typed into the only box of words. */
    public String words() {
        return note + reason;
    }
}
