package org.tallywright.materials;

/** The four ways in which material comes and goes, as the addresses of their pages name them. */
public enum Kind {
    PURCHASES("purchase"),
    USES("use"),
    RETURNS("return"),
    OFFCUTS("offcut");

    private final String word;

    Kind(String word) {
        this.word = word;
    }

    /** One of them, in the shop's words. */
    public String word() {
        return word;
    }
}
