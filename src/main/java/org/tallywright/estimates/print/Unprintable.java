package org.tallywright.estimates.print;

import java.util.Collection;
import java.util.stream.Collectors;

/** The document has signs that the font of the paper cannot show. */
public final class Unprintable extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private static final int MOST = 8;

    private final String signs;

    Unprintable(Collection<Integer> signs) {
        super("no glyph");
        this.signs = signs.stream().limit(MOST).map(Character::toString).collect(Collectors.joining(" "))
                + (signs.size() > MOST ? " …" : "");
    }

    /** The first few of them, with spaces between. */
    public String signs() {
        return signs;
    }
}
