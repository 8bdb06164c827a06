package org.tallywright.takeoff;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/** How a material comes, as the shop wrote it down. */
@Entity
class MaterialForm {
    @Id
    private UUID id;

    private String form;
    private Length thickness;
    private @Nullable Length sheetLength;
    private @Nullable Length sheetWidth;
    private @Nullable Length shortest;
    private @Nullable Length longest;
    private @Nullable Length narrowest;
    private @Nullable Length widest;
    private String surfacing;
    private Length kerf;
    private Length trim;
    private Length edgeLoss;
    private Length roughLength;
    private Length roughWidth;
    private BigDecimal defectsPercent;

    @ElementCollection(fetch = FetchType.EAGER)
    @CollectionTable(name = "material_bar_length", joinColumns = @JoinColumn(name = "material_form_id"))
    @Column(name = "length")
    private Set<Length> barLengths = new HashSet<>();

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    protected MaterialForm() {}

    @SuppressWarnings("NullAway.Init")
    MaterialForm(UUID materialId, MaterialShape shape) {
        this.id = materialId;
        rewrite(shape);
    }

    final void rewrite(MaterialShape shape) {
        form = shape.form().name().toLowerCase(Locale.ROOT);
        thickness = shape.thickness();
        sheetLength = some(shape.sheetLength());
        sheetWidth = some(shape.sheetWidth());
        shortest = some(shape.shortest());
        longest = some(shape.longest());
        narrowest = some(shape.narrowest());
        widest = some(shape.widest());
        surfacing = shape.surfacing();
        kerf = shape.kerf();
        trim = shape.trim();
        edgeLoss = shape.edgeLoss();
        roughLength = shape.roughLength();
        roughWidth = shape.roughWidth();
        defectsPercent = shape.defectsPercent();
        Set<Length> lengths = new HashSet<>(shape.barLengths());
        if (!barLengths.equals(lengths)) {
            barLengths.clear();
            barLengths.addAll(lengths);
        }
    }

    private static @Nullable Length some(Length length) {
        return length.isZero() ? null : length;
    }

    private static Length or(@Nullable Length length) {
        return length == null ? Length.ZERO : length;
    }

    MaterialShape shape() {
        return new MaterialShape(
                MaterialShape.Form.valueOf(form.toUpperCase(Locale.ROOT)),
                thickness,
                or(sheetLength),
                or(sheetWidth),
                java.util.List.copyOf(barLengths),
                or(shortest),
                or(longest),
                or(narrowest),
                or(widest),
                surfacing,
                kerf,
                trim,
                edgeLoss,
                roughLength,
                roughWidth,
                defectsPercent);
    }

    UUID id() {
        return id;
    }

    int version() {
        return version == null ? 0 : version;
    }

    boolean isAt(@Nullable Integer seen) {
        return version != null && version.equals(seen);
    }
}
