package org.tallywright.catalog;

import java.math.BigDecimal;
import java.util.UUID;
import org.tallywright.shared.Yield;

/**
 * A material as the catalogue has it, without its price; prices are dated and asked for by day.
 *
 * @param unit what it is bought by; any word of the shop
 * @param startingYield in the finished work / bought, before the shop has its own figures
 * @param purchaseStep the smallest quantity that can be bought: 1 for whole units, 0.1 for tenths
 * @param stocked kept in stock, not bought for each job
 */
public record MaterialCard(
        UUID id,
        String code,
        String name,
        String group,
        String unit,
        Yield startingYield,
        BigDecimal purchaseStep,
        boolean stocked,
        String supplier,
        String yieldBasis,
        boolean active,
        int version) {}
