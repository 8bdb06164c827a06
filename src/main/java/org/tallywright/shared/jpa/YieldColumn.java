package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Yield;

/** A yield between 0 and 1 in a {@code numeric(6,4)} column. */
@Converter(autoApply = true)
public class YieldColumn implements AttributeConverter<Yield, BigDecimal> {
    @Override
    public @Nullable BigDecimal convertToDatabaseColumn(@Nullable Yield value) {
        return value == null ? null : value.amount();
    }

    @Override
    public @Nullable Yield convertToEntityAttribute(@Nullable BigDecimal column) {
        return column == null ? null : new Yield(column);
    }
}
