package org.tallywright.cutting;

/** How good a plan is known to be. */
public enum Answer {
    /** It meets a lower bound: nothing less can be bought. */
    PROVED,
    /** The best found within a fixed amount of searching. */
    SEARCHED,
    /** Too many parts to search; laid out once by a simple rule. */
    COARSE
}
