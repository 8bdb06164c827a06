package org.tallywright.takeoff.web;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.stereotype.Component;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;

/** The materials of the catalogue to pick from. */
@Component
class MaterialNames {
    private final Materials materials;

    MaterialNames(Materials materials) {
        this.materials = materials;
    }

    /** Name by id, in the order of the catalogue. */
    Map<String, String> byId() {
        Map<String, String> names = new LinkedHashMap<>();
        for (MaterialCard card : materials.all()) {
            names.put(card.id().toString(), card.name());
        }
        return names;
    }
}
