package org.tallywright.takeoff;

import static org.tallywright.takeoff.LayoutWords.figure;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.ShopDates;
import org.tallywright.materials.HeldOffcuts;
import org.tallywright.materials.MaterialLedger;
import org.tallywright.shared.Length;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.ShopConventions;

/**
 * What lies in the shop for a job: stock by quantity, offcuts by the size that was written down, its length along the grain
 * first. Offcuts held for it come first; those held for another job are not there.
 */
@Component
class OwnedPieces {
    private final JdbcClient jdbc;
    private final MaterialLedger ledger;
    private final HeldOffcuts held;
    private final ShopConventions shop;
    private final ShopDates dates;

    OwnedPieces(JdbcClient jdbc, MaterialLedger ledger, HeldOffcuts held, ShopConventions shop, ShopDates dates) {
        this.jdbc = jdbc;
        this.ledger = ledger;
        this.held = held;
        this.shop = shop;
        this.dates = dates;
    }

    /**
     * One offcut.
     *
     * @param size as read: one length, or length and width; nothing where it is no size
     * @param written the size as it was written down
     * @param quantity in the material's unit
     * @param kept when, and what was noted
     * @param heldFor the number of the job it is held for, or null
     */
    record Offcut(
            UUID id,
            List<Length> size,
            String written,
            BigDecimal quantity,
            String kept,
            @Nullable String heldFor) {
        BuyLine.Offcut used() {
            return new BuyLine.Offcut(id, written + kept, heldFor != null);
        }
    }

    /** @param elsewhere held for other jobs */
    record Owned(BigDecimal stock, List<Offcut> offcuts, List<Offcut> elsewhere) {
        static final Owned NOTHING = new Owned(BigDecimal.ZERO, List.of(), List.of());

        /** Those with one length, or with a length and a width. */
        List<Offcut> sized(int sides) {
            return offcuts.stream().filter(o -> o.size().size() == sides).toList();
        }

        List<String> unread() {
            return sized(0).stream().map(Offcut::written).toList();
        }

        /**
         * The same with no more offcuts than it takes to give that much, where they are counted and not laid out.
         *
         * @param least an offcut that is known to be shorter is of no use
         */
        Owned upTo(BigDecimal wanted, Length least) {
            List<Offcut> taken = new ArrayList<>();
            BigDecimal have = BigDecimal.ZERO;
            for (Offcut offcut : offcuts) {
                boolean fits = offcut.size().isEmpty() || offcut.size().get(0).compareTo(least) >= 0;
                if (fits && have.compareTo(wanted) < 0) {
                    taken.add(offcut);
                    have = have.add(offcut.quantity());
                }
            }
            return new Owned(stock, taken, elsewhere);
        }

        /** Of all offcuts, in the material's unit. */
        BigDecimal offcutQuantity() {
            return offcuts.stream().map(Offcut::quantity).reduce(BigDecimal.ZERO, BigDecimal::add);
        }

        List<BuyLine.Offcut> used() {
            return offcuts.stream().map(Offcut::used).toList();
        }

        /** What of a need it covers, in words: offcuts first, then stock. */
        List<String> words(BigDecimal need, String unit) {
            BigDecimal fromOffcuts = need.min(offcutQuantity());
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

    Map<UUID, Owned> of(String jobNumber) {
        Map<UUID, String> holds = held.all();
        Map<UUID, Owned> owned = new HashMap<>();
        ledger.stock().forEach(row -> owned.put(row.id(), empty(row.here().max(BigDecimal.ZERO))));
        jdbc.sql("""
                        select o.material_id, o.id, o.size, o.quantity, o.kept_on, o.note from offcut o
                        where o.gone_on is null order by o.kept_on, o.id""").query(row -> {
            Offcut offcut = offcut(row, holds.get(row.getObject(2, UUID.class)));
            Owned of = owned.computeIfAbsent(row.getObject(1, UUID.class), m -> empty(BigDecimal.ZERO));
            if (offcut.heldFor() == null) {
                of.offcuts().add(offcut);
            } else if (Objects.equals(offcut.heldFor(), jobNumber)) {
                of.offcuts()
                        .add(
                                (int) of.offcuts().stream()
                                        .filter(o -> o.heldFor() != null)
                                        .count(),
                                offcut);
            } else {
                of.elsewhere().add(offcut);
            }
        });
        return owned;
    }

    private static Owned empty(BigDecimal stock) {
        return new Owned(stock, new ArrayList<>(), new ArrayList<>());
    }

    private Offcut offcut(ResultSet row, @Nullable String heldFor) throws SQLException {
        String size = row.getString(3);
        List<Length> lengths = new ArrayList<>();
        try {
            for (String side : size.split("\\s*[x\u00d7]\\s*", -1)) {
                lengths.add(Length.parseSize(side, shop.units()));
            }
        } catch (NotUnderstood notASize) {
            lengths.clear();
        }
        String note = row.getString(6);
        return new Offcut(
                row.getObject(2, UUID.class),
                lengths.size() > 2 ? List.of() : List.copyOf(lengths),
                size.isBlank() ? "one without a size" : size,
                row.getBigDecimal(4),
                ", kept " + dates.day(row.getObject(5, java.time.LocalDate.class))
                        + (note.isBlank() ? "" : ", " + note),
                heldFor);
    }
}
