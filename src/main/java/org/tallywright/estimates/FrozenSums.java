package org.tallywright.estimates;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Margin;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/** How an issued bid was priced, and the price, as its row keeps them. */
@Embeddable
class FrozenSums {
    @Column(name = "estimated_minutes")
    private Hours hours;

    private Money labourRate;
    private Money overheadRate;
    private Money labourAmount;
    private Money materialAmount;
    private Money otherAmount;
    private Money overheadAmount;
    private Money contingencyAmount;
    private Money marginAmount;
    private Money roundingAmount;
    private Money priceAmount;
    private Money taxAmount;
    private Money totalAmount;
    private Percent contingencyPercent;
    private String contingencyName;

    @Column(name = "margin_percent")
    private Margin margin;

    private Percent taxPercent;

    @SuppressWarnings("NullAway.Init")
    protected FrozenSums() {}

    FrozenSums(Offer offer) {
        hours = offer.basis().hours();
        labourRate = offer.basis().labourRate();
        overheadRate = offer.basis().overheadRate();
        margin = offer.basis().margin();
        taxPercent = offer.basis().tax();
        contingencyPercent = offer.rates().contingencyPercent();
        contingencyName = offer.rates().contingencyName();
        PriceSum sum = offer.sum();
        labourAmount = sum.labour();
        materialAmount = sum.material();
        otherAmount = sum.other();
        overheadAmount = sum.overhead();
        contingencyAmount = sum.contingency();
        marginAmount = sum.margin();
        roundingAmount = sum.rounding();
        priceAmount = sum.price();
        taxAmount = sum.tax();
        totalAmount = sum.total();
    }

    Money price() {
        return priceAmount;
    }

    Money total() {
        return totalAmount;
    }

    BidSums read() {
        return new BidSums(
                hours,
                labourRate,
                overheadRate,
                contingencyPercent,
                contingencyName,
                margin,
                taxPercent,
                new PriceSum(
                        labourAmount,
                        materialAmount,
                        otherAmount,
                        overheadAmount,
                        contingencyAmount,
                        marginAmount,
                        roundingAmount,
                        taxAmount));
    }
}
