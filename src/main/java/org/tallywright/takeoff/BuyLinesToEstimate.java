package org.tallywright.takeoff;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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

    private record Line(
            UUID material,
            @Nullable Integer version,
            @Nullable UnitPrice price,
            Money freight) {
        static Line fresh(UUID material) {
            return new Line(material, null, null, Money.ZERO);
        }
    }

    /**
     * @param lines how many were put there
     * @param twice materials that another line of the estimate names as well, which may count them twice
     */
    public record Put(int lines, List<String> twice) {}

    @Transactional
    public Put put(UUID job, UUID by) {
        Map<UUID, Line> there = there(job);
        int put = 0;
        List<String> twice = new ArrayList<>();
        Set<UUID> ids = new HashSet<>();
        for (BuyLine buy : lister.of(job).lines()) {
            UUID id = ids.add(lineId(job, buy.material().id(), ""))
                    ? lineId(job, buy.material().id(), "")
                    : lineId(job, buy.material().id(), "/supply");
            ids.add(id);
            if (buy.buy().isZero()) {
                if (there.containsKey(id)) {
                    estimate.removeMaterial(job, id, by);
                }
            } else {
                Line line = there.getOrDefault(id, Line.fresh(buy.material().id()));
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
                if (there.entrySet().stream()
                        .anyMatch(other -> !other.getKey().equals(id)
                                && other.getValue()
                                        .material()
                                        .equals(buy.material().id()))) {
                    twice.add(buy.material().name());
                }
            }
        }
        for (Map.Entry<UUID, Line> line : there.entrySet()) {
            UUID material = line.getValue().material();
            boolean ours = line.getKey().equals(lineId(job, material, ""))
                    || line.getKey().equals(lineId(job, material, "/supply"));
            if (ours && !ids.contains(line.getKey())) {
                // No part needs it any more.
                estimate.removeMaterial(job, line.getKey(), by);
            }
        }
        return new Put(put, twice);
    }

    /** The same line each time, so that putting again changes it instead of adding another. */
    private static UUID lineId(UUID job, UUID material, String which) {
        return UUID.nameUUIDFromBytes(("buy list/" + job + "/" + material + which).getBytes(StandardCharsets.UTF_8));
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
        jdbc.sql("select id, version, unit_price, freight_amount, material_id from estimate_material where job_id = ?")
                .param(job)
                .query(row -> {
                    lines.put(
                            row.getObject(1, UUID.class),
                            new Line(
                                    row.getObject(5, UUID.class),
                                    row.getInt(2),
                                    UnitPrice.of(row.getBigDecimal(3)),
                                    new Money(row.getBigDecimal(4))));
                });
        return lines;
    }
}
