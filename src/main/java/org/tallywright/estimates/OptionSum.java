package org.tallywright.estimates;

/** An option that would be offered next, with the lines it holds, priced by the same formula and rates as the bid. */
public record OptionSum(OptionRow option, WorkingSum working) {}
