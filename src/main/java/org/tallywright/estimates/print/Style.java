package org.tallywright.estimates.print;

/**
 * How text looks.
 *
 * @param size in points
 * @param grey from 0, black, to 1, white
 */
record Style(float size, boolean bold, float grey) {
    static final Style TITLE = new Style(19, true, 0);
    static final Style HEADING = new Style(13, true, 0);
    static final Style MINOR = new Style(10.5f, true, 0);
    static final Style TEXT = new Style(10.5f, false, 0);
    static final Style STRONG = new Style(10.5f, true, 0);
    static final Style SOFT = new Style(9.5f, false, 0.33f);
    static final Style SMALL = new Style(8.5f, false, 0.33f);

    float line() {
        return size * 1.38f;
    }

    /** From the top of a line down to where its letters stand. */
    float ascent() {
        return size * 1.04f;
    }
}
