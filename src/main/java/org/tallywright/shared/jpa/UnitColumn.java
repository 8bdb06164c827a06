package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Unit;

/** A unit by its code in a {@code text} column. */
@Converter(autoApply = true)
public class UnitColumn implements AttributeConverter<Unit, String> {
    @Override
    public @Nullable String convertToDatabaseColumn(@Nullable Unit value) {
        return value == null ? null : value.code();
    }

    @Override
    public @Nullable Unit convertToEntityAttribute(@Nullable String column) {
        return column == null ? null : Unit.of(column);
    }
}
