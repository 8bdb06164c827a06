package org.tallywright.takeoff;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;
import org.tallywright.shared.Length;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Units;
import org.tallywright.shared.jpa.SaveTurn;
import org.tallywright.trail.Trail;

/** How each material comes: as the shop wrote it down, else as the starting catalogue has it, by code. */
@Service
public class MaterialShapes {
    private static final Map<String, MaterialShape> SHIPPED = shipped();

    private final MaterialForms rows;
    private final Materials materials;
    private final SaveTurn turn;
    private final Trail trail;

    MaterialShapes(MaterialForms rows, Materials materials, SaveTurn turn, Trail trail) {
        this.rows = rows;
        this.materials = materials;
        this.turn = turn;
        this.trail = trail;
    }

    /** @param version null where the shop has not written its own */
    public record Kept(MaterialShape shape, @Nullable Integer version) {}

    /** Of those materials that have one, by id. */
    @Transactional(readOnly = true)
    public Map<UUID, Kept> of(Collection<MaterialCard> cards) {
        Map<UUID, Kept> shapes = new HashMap<>();
        cards.forEach(card -> {
            MaterialShape shape = SHIPPED.get(card.code());
            if (shape != null) {
                shapes.put(card.id(), new Kept(shape, null));
            }
        });
        rows.findAllById(cards.stream().map(MaterialCard::id).toList())
                .forEach(row -> shapes.put(row.id(), new Kept(row.shape(), row.version())));
        return shapes;
    }

    /**
     * @throws Refused for sizes that leave nothing to cut
     * @throws Stale where somebody else wrote in between
     */
    @Transactional
    public void write(UUID materialId, @Nullable Integer version, MaterialShape shape, UUID by) {
        trail.by(by);
        turn.of(materialId);
        materials.card(materialId);
        check(shape);
        MaterialForm kept = rows.findById(materialId).orElse(null);
        if (kept == null) {
            if (version != null) {
                throw new Stale("form of the material");
            }
            rows.save(new MaterialForm(materialId, shape));
        } else if (!kept.shape().equals(shape)) {
            if (!kept.isAt(version)) {
                throw new Stale("form of the material");
            }
            kept.rewrite(shape);
        }
    }

    private static void check(MaterialShape shape) {
        switch (shape.form()) {
            case SHEET -> room("trim", shape.sheetWidth(), shape.sheetLength(), shape.trim());
            case BAR -> {
                if (shape.barLengths().isEmpty()) {
                    throw new Refused("barLengths", "Write the lengths it is sold in, such as 8 ft, 12 ft.");
                }
                room("trim", shape.barLengths().get(0), shape.barLengths().get(0), shape.trim());
            }
            case BOARD -> {
                if (shape.longest().compareTo(shape.shortest()) < 0) {
                    throw new Refused("longest", "The longest board is at least as long as the shortest.");
                }
                if (shape.widest().compareTo(shape.narrowest()) < 0) {
                    throw new Refused("widest", "The widest board is at least as wide as the narrowest.");
                }
                room("trim", shape.shortest(), shape.shortest(), shape.trim());
                room("edgeLoss", shape.narrowest(), shape.narrowest(), shape.edgeLoss());
            }
        }
    }

    private static void room(String field, Length one, Length other, Length trim) {
        if (Math.min(one.units(), other.units()) <= 2 * trim.units()) {
            throw new Refused(field, "This takes all there is; write less.");
        }
    }

    private static Map<String, MaterialShape> shipped() {
        String path = "/db/catalog/material_forms.csv";
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        Map<String, MaterialShape> shapes = new HashMap<>();
        try (Reader reader = new InputStreamReader(
                Objects.requireNonNull(MaterialShapes.class.getResourceAsStream(path), path), StandardCharsets.UTF_8)) {
            format.parse(reader).getRecords().forEach(row -> shapes.put(row.get("code"), shape(row)));
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + path, e);
        }
        return Map.copyOf(shapes);
    }

    private static MaterialShape shape(CSVRecord row) {
        List<Length> bars = Arrays.stream(row.get("bar_lengths").split(";"))
                .filter(text -> !text.isBlank())
                .map(text -> Length.parseSize(text, Units.IMPERIAL))
                .toList();
        String defects = row.get("defects_percent");
        return new MaterialShape(
                MaterialShape.Form.valueOf(row.get("form").toUpperCase(Locale.ROOT)),
                length(row, "thickness"),
                length(row, "sheet_length"),
                length(row, "sheet_width"),
                bars,
                length(row, "shortest"),
                length(row, "longest"),
                length(row, "narrowest"),
                length(row, "widest"),
                row.get("surfacing"),
                length(row, "kerf"),
                length(row, "trim"),
                length(row, "edge_loss"),
                length(row, "rough_length"),
                length(row, "rough_width"),
                defects.isEmpty() ? BigDecimal.ZERO : new BigDecimal(defects));
    }

    private static Length length(CSVRecord row, String column) {
        String text = row.get(column);
        return text.isEmpty() ? Length.ZERO : Length.parse(text, Units.IMPERIAL);
    }
}
