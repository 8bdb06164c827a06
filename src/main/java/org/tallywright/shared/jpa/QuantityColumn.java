package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Quantity;

/** A quantity in a {@code numeric(14,4)} column. */
@Converter(autoApply = true)
public class QuantityColumn implements AttributeConverter<Quantity, BigDecimal> {
    @Override
    public @Nullable BigDecimal convertToDatabaseColumn(@Nullable Quantity value) {
        return value == null ? null : value.amount();
    }

    @Override
    public @Nullable Quantity convertToEntityAttribute(@Nullable BigDecimal column) {
        return column == null ? null : new Quantity(column);
    }
}
