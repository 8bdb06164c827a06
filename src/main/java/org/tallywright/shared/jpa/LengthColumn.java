package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Length;

/** Units of 3.125 micrometres in a {@code bigint} column. */
@Converter(autoApply = true)
public class LengthColumn implements AttributeConverter<Length, Long> {
    @Override
    public @Nullable Long convertToDatabaseColumn(@Nullable Length value) {
        return value == null ? null : value.units();
    }

    @Override
    public @Nullable Length convertToEntityAttribute(@Nullable Long column) {
        return column == null ? null : new Length(column);
    }
}
