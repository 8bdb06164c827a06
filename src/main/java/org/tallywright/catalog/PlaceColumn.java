package org.tallywright.catalog;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import org.jspecify.annotations.Nullable;

/** A place by its code in a {@code text} column. */
@Converter
class PlaceColumn implements AttributeConverter<Place, String> {
    @Override
    public @Nullable String convertToDatabaseColumn(@Nullable Place value) {
        return value == null ? null : value.code();
    }

    @Override
    public @Nullable Place convertToEntityAttribute(@Nullable String column) {
        return column == null ? null : Place.of(column);
    }
}
