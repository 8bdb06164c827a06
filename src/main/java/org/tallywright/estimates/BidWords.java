package org.tallywright.estimates;

/** What the client reads beside the price. Any of them may be empty. */
public record BidWords(String scope, String exclusions, String terms) {}
