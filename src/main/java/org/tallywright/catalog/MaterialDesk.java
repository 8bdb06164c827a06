package org.tallywright.catalog;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.jpa.SaveTurn;
import org.tallywright.trail.Trail;

/** Adds, rewrites and sets aside materials, and sets their dated prices. A material never goes: purchases keep theirs. */
@Service
@Transactional
public class MaterialDesk {
    private static final BigDecimal MOST_STEP = BigDecimal.valueOf(100_000);
    private static final int STEP_PLACES = 4;

    private final MaterialRows rows;
    private final Materials lookUp;
    private final JdbcClient jdbc;
    private final SaveTurn turn;
    private final Trail trail;

    MaterialDesk(MaterialRows rows, Materials lookUp, JdbcClient jdbc, SaveTurn turn, Trail trail) {
        this.rows = rows;
        this.lookUp = lookUp;
        this.jdbc = jdbc;
        this.turn = turn;
        this.trail = trail;
    }

    /**
     * Same id and content is a repeat and changes nothing; same id and other content needs the version in force.
     *
     * @throws Refused with the field and the reason
     * @throws Stale with both versions
     */
    public void save(SaveMaterial save, UUID by) {
        trail.by(by);
        turn.of(save.id());
        check(save);
        Material kept = rows.findById(save.id()).orElse(null);
        if (kept == null) {
            rows.saveAndFlush(new Material(Codes.from(save.name(), rows::existsByCode), save));
        } else if (!kept.content().equals(save.unversioned())) {
            if (!Objects.equals(save.version(), kept.version())) {
                throw new Stale("material", differences(kept.content(), save));
            }
            kept.rewrite(save);
        }
    }

    /** As {@link #save(SaveMaterial, UUID)}, with the price of a new material from that day on, where it is known. */
    public void save(SaveMaterial save, @Nullable UnitPrice price, LocalDate from, UUID by) {
        boolean fresh = !rows.existsById(save.id());
        save(save, by);
        if (fresh && price != null) {
            price(save.id(), from, price, "", null, by);
        }
    }

    /**
     * The price from that day on. The same again is a repeat; another price for a day that has one corrects it.
     *
     * @param corrects the price of that day that the page showed, as {@link MaterialPrice#words()}; null where it showed none
     * @throws Refused where the day has another price than the page showed
     */
    public void price(
            UUID materialId, LocalDate from, UnitPrice price, String basis, @Nullable String corrects, UUID by) {
        turn.of(materialId);
        trail.by(by);
        if (!rows.existsById(materialId)) {
            throw new NotHere("material");
        }
        String typed = new MaterialPrice(from, price, basis).words();
        String kept = lookUp.history(materialId).stream()
                .filter(there -> there.from().equals(from))
                .map(MaterialPrice::words)
                .findFirst()
                .orElse(typed);
        if (!kept.equals(typed) && !kept.equals(corrects)) {
            throw new Refused(
                    "from",
                    "The price from this day is " + kept + " already. Save again to correct it to what you typed.");
        }
        jdbc.sql("""
                        insert into material_price (material_id, from_date, unit_price, basis)
                        values (:id, :from, :price, :basis)
                        on conflict (material_id, from_date) do update
                        set unit_price = excluded.unit_price, basis = excluded.basis""")
                .param("id", materialId)
                .param("from", from)
                .param("price", price.amount())
                .param("basis", basis)
                .update();
    }

    public void use(UUID id, boolean inUse, UUID by) {
        trail.by(by);
        rows.findById(id).orElseThrow(() -> new NotHere("material")).use(inUse);
    }

    private void check(SaveMaterial save) {
        if (rows.existsByNameIgnoreCaseAndIdNot(save.name(), save.id())) {
            throw new Refused("name", "There is a material of this name already.");
        }
        BigDecimal step = save.purchaseStep();
        if (step.signum() <= 0 || step.compareTo(MOST_STEP) > 0 || step.scale() > STEP_PLACES) {
            throw new Refused("purchaseStep", "The smallest purchase is above 0, such as 1 or 0.1.");
        }
    }

    private static List<Stale.Row> differences(SaveMaterial theirs, SaveMaterial yours) {
        return List.of(
                new Stale.Row("Name", theirs.name(), yours.name()),
                new Stale.Row("Group", theirs.group(), yours.group()),
                new Stale.Row("Unit", theirs.unit(), yours.unit()),
                new Stale.Row(
                        "Starting yield",
                        theirs.startingYield().toString(),
                        yours.startingYield().toString()),
                new Stale.Row("Smallest purchase", plain(theirs), plain(yours)),
                new Stale.Row("Kept in stock", yesNo(theirs), yesNo(yours)),
                new Stale.Row("Supplier", theirs.supplier(), yours.supplier()),
                new Stale.Row("Basis of the yield", theirs.yieldBasis(), yours.yieldBasis()));
    }

    private static String plain(SaveMaterial save) {
        return save.purchaseStep().toPlainString();
    }

    private static String yesNo(SaveMaterial save) {
        return save.stocked() ? "yes" : "no";
    }
}
