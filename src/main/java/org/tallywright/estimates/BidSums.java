package org.tallywright.estimates;

import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/** The frozen figures of a bid: never shown to the client. */
public record BidSums(
        Hours hours,
        Money labourRate,
        Money overheadRate,
        Percent contingencyPercent,
        String contingencyName,
        Margin margin,
        Percent taxPercent,
        PriceSum sum) {}
