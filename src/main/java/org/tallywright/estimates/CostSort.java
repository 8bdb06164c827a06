package org.tallywright.estimates;

import java.util.Arrays;
import org.tallywright.shared.Refused;

/** What sort of cost a line is that is neither hours nor material. */
public enum CostSort {
    DELIVERY("delivery", "Delivery"),
    SERVICE("service", "Outside service"),
    RENTAL("rental", "Rental"),
    PERMIT("permit", "Permit"),
    /** A stated sum for a thing not chosen yet; the client reads it in the bid. */
    ALLOWANCE("allowance", "Allowance"),
    OTHER("other", "Other");

    private final String code;
    private final String label;

    CostSort(String code, String label) {
        this.code = code;
        this.label = label;
    }

    public String code() {
        return code;
    }

    public String label() {
        return label;
    }

    /** @throws Refused for a code that is none */
    public static CostSort of(String code) {
        return Arrays.stream(values())
                .filter(sort -> sort.code.equals(code))
                .findAny()
                .orElseThrow(() -> new Refused("Choose one of the list."));
    }
}
