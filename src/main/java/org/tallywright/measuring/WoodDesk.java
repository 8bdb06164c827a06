package org.tallywright.measuring;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;
import org.tallywright.shared.Stale;
import org.tallywright.shared.jpa.SaveTurn;
import org.tallywright.trail.Trail;

/** What wood each material of the catalogue is: as the shop says, else as the starting catalogue has it, by code. */
@Service
@Transactional
public class WoodDesk {
    private static final Map<String, Species> SHIPPED = shipped();

    private final MaterialWoods woods;
    private final Materials materials;
    private final SaveTurn turn;
    private final Trail trail;

    WoodDesk(MaterialWoods woods, Materials materials, SaveTurn turn, Trail trail) {
        this.woods = woods;
        this.materials = materials;
        this.turn = turn;
        this.trail = trail;
    }

    /**
     * @param species null where it is no wood whose movement is known
     * @param version null where the shop has said nothing yet
     */
    public record Kept(@Nullable Species species, @Nullable Integer version) {}

    /** @throws org.tallywright.shared.NotHere where there is no such material */
    @Transactional(readOnly = true)
    public Kept of(UUID material) {
        MaterialCard card = materials.card(material);
        return woods.findById(material)
                .map(kept -> new Kept(kept.species().orElse(null), kept.version()))
                .orElseGet(() -> new Kept(SHIPPED.get(card.code()), null));
    }

    /** The names of the materials in use that are of each wood. */
    @Transactional(readOnly = true)
    public Map<Species, List<String>> inUse() {
        Map<UUID, MaterialWood> said = new HashMap<>();
        woods.findAll().forEach(wood -> said.put(wood.id(), wood));
        Map<Species, List<String>> names = new EnumMap<>(Species.class);
        for (MaterialCard card : materials.active()) {
            MaterialWood own = said.get(card.id());
            Species species =
                    own == null ? SHIPPED.get(card.code()) : own.species().orElse(null);
            if (species != null) {
                names.computeIfAbsent(species, s -> new ArrayList<>()).add(card.name());
            }
        }
        return names;
    }

    /**
     * Says what wood a material is; null for none that is known. The same again is a repeat.
     *
     * @throws Stale where somebody else said otherwise in between
     */
    public void say(UUID material, @Nullable Integer version, @Nullable Species species, UUID by) {
        trail.by(by);
        turn.of(material);
        materials.card(material);
        MaterialWood kept = woods.findById(material).orElse(null);
        if (kept == null) {
            if (version != null) {
                throw new Stale("wood of the material");
            }
            woods.save(new MaterialWood(material, species));
        } else if (!Objects.equals(kept.species().orElse(null), species)) {
            if (version == null || version != kept.version()) {
                throw new Stale("wood of the material");
            }
            kept.say(species);
        }
    }

    private static Map<String, Species> shipped() {
        String path = "/db/catalog/material_species.csv";
        Map<String, Species> species = new HashMap<>();
        try (InputStream in = Objects.requireNonNull(WoodDesk.class.getResourceAsStream(path), path)) {
            new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .forEach(line -> {
                        String[] columns = line.split(",", 2);
                        species.put(columns[0], Species.of(columns[1]).orElseThrow());
                    });
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + path, e);
        }
        return Map.copyOf(species);
    }
}
