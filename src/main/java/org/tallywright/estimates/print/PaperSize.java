package org.tallywright.estimates.print;

import java.util.Set;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** The sheets that offices have. Which country uses which is common practice, no source. */
public enum PaperSize {
    LETTER("letter", PDRectangle.LETTER),
    A4("a4", PDRectangle.A4);

    private static final Set<String> LETTER_CURRENCIES = Set.of("USD", "CAD", "MXN", "PHP", "CLP", "COP");

    private final String code;
    private final PDRectangle sheet;

    PaperSize(String code, PDRectangle sheet) {
        this.code = code;
        this.sheet = sheet;
    }

    public String code() {
        return code;
    }

    public static PaperSize of(String code) {
        return code.equals(LETTER.code) ? LETTER : A4;
    }

    /** @param code of the shop's currency, which tells its country well enough for a sheet of paper */
    public static PaperSize ofCurrency(String code) {
        return LETTER_CURRENCIES.contains(code) ? LETTER : A4;
    }

    PDRectangle sheet() {
        return sheet;
    }
}
