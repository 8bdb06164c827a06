package org.tallywright.calibration;

/** What may hold of a site or job and make work slower; a shop's own history says by how much, and whether. */
public enum SiteCondition {
    OCCUPIED("occupied", "People live or work around it"),
    OUT_OF_SQUARE("out of square", "Old plaster or walls out of square"),
    STAIRS("stairs", "Carried up stairs or by lift"),
    UNFAMILIAR("unfamiliar material", "A material no earlier job had");

    private final String key;
    private final String label;

    SiteCondition(String key, String label) {
        this.key = key;
        this.label = label;
    }

    /** As kept with what was learnt. */
    public String key() {
        return key;
    }

    public String label() {
        return label;
    }
}
