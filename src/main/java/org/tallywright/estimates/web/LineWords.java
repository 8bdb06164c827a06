package org.tallywright.estimates.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.estimates.EstimateMaterials;
import org.tallywright.estimates.EstimateTasks;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.ShopConventions;

/** The lists that the forms of the lines offer, in words. */
@Component
class LineWords {
    private final EstimateTasks tasks;
    private final EstimateMaterials materials;
    private final ShopClock clock;
    private final ShopConventions shop;

    LineWords(EstimateTasks tasks, EstimateMaterials materials, ShopClock clock, ShopConventions shop) {
        this.tasks = tasks;
        this.materials = materials;
        this.clock = clock;
        this.shop = shop;
    }

    Map<String, String> kinds() {
        Map<String, String> kinds = new LinkedHashMap<>();
        tasks.kinds()
                .forEach(k -> kinds.put(
                        k.id().toString(),
                        k.stage() + ": " + k.name() + " (" + k.unitHours() + " h/"
                                + k.unit().code() + ")"));
        return kinds;
    }

    Map<String, String> pieces(UUID job) {
        Map<String, String> pieces = new LinkedHashMap<>();
        tasks.pieces(job).forEach(p -> pieces.put(p.id().toString(), p.name()));
        return pieces;
    }

    /** What can be picked, and what a line holds already though it is no longer offered. */
    Map<String, String> materials(@Nullable String chosen) {
        Map<String, String> offered = new LinkedHashMap<>();
        materials.offered(clock.today()).forEach(m -> offered.put(m.id().toString(), words(m)));
        kept(chosen).ifPresent(m -> offered.putIfAbsent(m.id().toString(), words(m)));
        return offered;
    }

    private Optional<EstimateMaterials.Facts> kept(@Nullable String chosen) {
        try {
            UUID id = Picked.maybe(chosen);
            return id == null ? Optional.empty() : materials.find(id, clock.today());
        } catch (Refused notAnId) {
            return Optional.empty();
        }
    }

    private String words(EstimateMaterials.Facts m) {
        String price = m.price() == null ? "no price yet" : shop.money().format(m.price()) + " a " + m.unit();
        return m.group() + ": " + m.name() + " (" + price + ", yield " + m.startingYield() + ")";
    }
}
