package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;

/** Whole minutes in an {@code int} column. */
@Converter(autoApply = true)
public class HoursColumn implements AttributeConverter<Hours, Integer> {
    @Override
    public @Nullable Integer convertToDatabaseColumn(@Nullable Hours value) {
        return value == null ? null : value.minutes();
    }

    @Override
    public @Nullable Hours convertToEntityAttribute(@Nullable Integer column) {
        return column == null ? null : new Hours(column);
    }
}
