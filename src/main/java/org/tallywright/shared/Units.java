package org.tallywright.shared;

/** Which way the shop measures; decides how a bare number is read and how lengths are written. */
public enum Units {
    IMPERIAL,
    METRIC
}
