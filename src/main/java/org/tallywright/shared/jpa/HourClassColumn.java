package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.HourClass;

/** An hour class by its code in a {@code text} column. */
@Converter(autoApply = true)
public class HourClassColumn implements AttributeConverter<HourClass, String> {
    @Override
    public @Nullable String convertToDatabaseColumn(@Nullable HourClass value) {
        return value == null ? null : value.code();
    }

    @Override
    public @Nullable HourClass convertToEntityAttribute(@Nullable String column) {
        return column == null ? null : HourClass.of(column);
    }
}
