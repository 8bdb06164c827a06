package org.tallywright.takeoff;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.estimates.EstimateLines;
import org.tallywright.estimates.MaterialDraft;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/**
 * Puts what is to buy into the material lines of the estimate: one line for each material, with the net and the yield of
 * the layout, so that the purchase comes out as laid out. Done again, it brings the same lines up to date; a price or
 * freight that somebody wrote there stays.
 */
@Service
public class BuyLinesToEstimate {
    private final BuyLister lister;
    private final EstimateLines estimate;
    private final JdbcClient jdbc;

    BuyLinesToEstimate(BuyLister lister, EstimateLines estimate, JdbcClient jdbc) {
        this.lister = lister;
        this.estimate = estimate;
        this.jdbc = jdbc;
    }

    private record Line(@Nullable Integer version, @Nullable UnitPrice price, Money freight) {
        static final Line NEW = new Line(null, null, Money.ZERO);
    }

    /** @return how many lines were put there */
    @Transactional
    public int put(UUID job, UUID by) {
        Map<UUID, Line> there = there(job);
        int put = 0;
        for (BuyLine buy : lister.of(job).lines()) {
            UUID id = UUID.nameUUIDFromBytes(
                    ("buy list/" + job + "/" + buy.material().id()).getBytes(StandardCharsets.UTF_8));
            if (buy.buy().isZero()) {
                estimate.removeMaterial(job, id, by);
            } else {
                Line line = there.getOrDefault(id, Line.NEW);
                NetQuantity net = new NetQuantity(least(buy.netBought()));
                estimate.save(
                        job,
                        new MaterialDraft(
                                id,
                                line.version(),
                                null,
                                buy.material().id(),
                                net,
                                yieldOf(net.quantity(), buy.buy()),
                                line.price(),
                                line.freight()),
                        by);
                put++;
            }
        }
        return put;
    }

    private static Quantity least(Quantity net) {
        return net.isZero() ? new Quantity(new BigDecimal("0.0001")) : net;
    }

    /** Rounded up, so that net / yield is never a hair above the purchase. */
    private static Yield yieldOf(Quantity net, Quantity buy) {
        BigDecimal share = net.amount().divide(buy.amount(), 4, RoundingMode.CEILING);
        return Yield.of(share.min(BigDecimal.ONE).max(new BigDecimal("0.0001")));
    }

    private Map<UUID, Line> there(UUID job) {
        Map<UUID, Line> lines = new HashMap<>();
        jdbc.sql("select id, version, unit_price, freight_amount from estimate_material where job_id = ?")
                .param(job)
                .query(row -> {
                    lines.put(
                            row.getObject(1, UUID.class),
                            new Line(
                                    row.getInt(2),
                                    UnitPrice.of(row.getBigDecimal(3)),
                                    new Money(row.getBigDecimal(4))));
                });
        return lines;
    }
}
