package org.tallywright.takeoff;

import static org.tallywright.takeoff.LayoutWords.figure;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.materials.MaterialLedger;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.ShopConventions;

/** What lies in the shop: stock by quantity, offcuts by the size that was written down, its length along the grain first. */
@Component
class OwnedPieces {
    private final JdbcClient jdbc;
    private final MaterialLedger ledger;
    private final ShopConventions shop;

    OwnedPieces(JdbcClient jdbc, MaterialLedger ledger, ShopConventions shop) {
        this.jdbc = jdbc;
        this.ledger = ledger;
        this.shop = shop;
    }

    /**
     * @param sizes of offcuts, as read: one length, or length and width
     * @param unread offcuts whose size is no size
     * @param offcutQuantity of all offcuts, in the material's unit
     */
    record Owned(BigDecimal stock, List<List<Length>> sizes, List<String> unread, BigDecimal offcutQuantity) {
        static final Owned NOTHING = new Owned(BigDecimal.ZERO, List.of(), List.of(), BigDecimal.ZERO);

        /** What of a need it covers, in words: offcuts first, then stock. */
        List<String> words(BigDecimal need, String unit) {
            BigDecimal fromOffcuts = need.min(offcutQuantity);
            BigDecimal fromStock = need.subtract(fromOffcuts).min(stock);
            List<String> words = new ArrayList<>();
            if (fromStock.signum() > 0) {
                words.add(figure(fromStock) + " " + unit + " from stock");
            }
            if (fromOffcuts.signum() > 0) {
                words.add(figure(fromOffcuts) + " " + unit + " from offcuts");
            }
            return words;
        }
    }

    Map<UUID, Owned> all() {
        Map<UUID, BigDecimal> stock = new HashMap<>();
        ledger.stock().forEach(row -> stock.put(row.id(), row.here().max(BigDecimal.ZERO)));
        Map<UUID, Owned> owned = new HashMap<>();
        stock.forEach((id, here) -> owned.put(id, new Owned(here, List.of(), List.of(), BigDecimal.ZERO)));
        jdbc.sql("select material_id, size, quantity from offcut where gone_on is null order by kept_on, id")
                .query(row -> {
                    owned.merge(
                            row.getObject(1, UUID.class),
                            offcut(row.getString(2), row.getBigDecimal(3)),
                            OwnedPieces::both);
                });
        return owned;
    }

    private Owned offcut(String size, BigDecimal quantity) {
        List<Length> lengths = new ArrayList<>();
        try {
            for (String side : size.split("\\s*[x\u00d7]\\s*", -1)) {
                lengths.add(Length.parseSize(side, shop.units()));
            }
        } catch (NotUnderstood notASize) {
            lengths.clear();
        }
        boolean read = lengths.size() == 1 || lengths.size() == 2;
        return new Owned(
                BigDecimal.ZERO,
                read ? List.of(List.copyOf(lengths)) : List.of(),
                read ? List.of() : List.of(size.isBlank() ? "one without a size" : size),
                quantity);
    }

    private static Owned both(Owned a, Owned b) {
        List<List<Length>> sizes = new ArrayList<>(a.sizes);
        sizes.addAll(b.sizes);
        List<String> unread = new ArrayList<>(a.unread);
        unread.addAll(b.unread);
        return new Owned(a.stock.add(b.stock), sizes, unread, a.offcutQuantity.add(b.offcutQuantity));
    }
}
