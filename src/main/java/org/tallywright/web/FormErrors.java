package org.tallywright.web;

import java.util.LinkedHashMap;

/**
 * Field name to refusal, in the order of the page; the key "" is the whole form. Templates ask it for any field: a
 * field without a refusal answers null, where a plain map would fail the expression.
 */
public final class FormErrors extends LinkedHashMap<String, String> {
    public static FormErrors none() {
        return new FormErrors();
    }

    public static FormErrors of(String field, String sentence) {
        FormErrors errors = new FormErrors();
        errors.put(field, sentence);
        return errors;
    }

    /** Expressions ask this before they read. */
    @Override
    public boolean containsKey(Object key) {
        return true;
    }
}
