package org.tallywright.takeoff;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.tallywright.cutting.Grain;

/** A grain by its word in a {@code text} column. */
@Converter
class GrainColumn implements AttributeConverter<Grain, String> {
    static Grain of(String word) {
        return Grain.valueOf(word.toUpperCase(Locale.ROOT));
    }

    @Override
    public @Nullable String convertToDatabaseColumn(@Nullable Grain value) {
        return value == null ? null : value.name().toLowerCase(Locale.ROOT);
    }

    @Override
    public @Nullable Grain convertToEntityAttribute(@Nullable String column) {
        return column == null ? null : of(column);
    }
}
