package org.tallywright.cutting;

/** Which way a part lies on its sheet; the grain of a sheet runs along its length. */
public enum Grain {
    /** The part's length follows the grain. */
    ALONG,
    /** The part's width follows the grain. */
    ACROSS,
    /** Either way. */
    ANY
}
