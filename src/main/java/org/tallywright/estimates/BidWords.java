package org.tallywright.estimates;

/**
 * What the client reads beside the price. Any of them may be empty.
 *
 * @param payments how it is paid, one step a line; see {@link PaymentPlan}
 */
public record BidWords(String scope, String exclusions, String payments, String terms) {}
