package org.tallywright.catalog;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import org.jspecify.annotations.Nullable;

/** A measure by its code in a {@code text} column. */
@Converter
class MeasureColumn implements AttributeConverter<Measure, String> {
    @Override
    public @Nullable String convertToDatabaseColumn(@Nullable Measure value) {
        return value == null ? null : value.code();
    }

    @Override
    public @Nullable Measure convertToEntityAttribute(@Nullable String column) {
        return column == null ? null : Measure.of(column);
    }
}
