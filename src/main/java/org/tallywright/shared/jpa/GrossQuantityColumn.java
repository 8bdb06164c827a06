package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.GrossQuantity;
import org.tallywright.shared.Quantity;

/** A gross quantity in a {@code numeric(14,4)} column. */
@Converter(autoApply = true)
public class GrossQuantityColumn implements AttributeConverter<GrossQuantity, BigDecimal> {
    @Override
    public @Nullable BigDecimal convertToDatabaseColumn(@Nullable GrossQuantity value) {
        return value == null ? null : value.quantity().amount();
    }

    @Override
    public @Nullable GrossQuantity convertToEntityAttribute(@Nullable BigDecimal column) {
        return column == null ? null : new GrossQuantity(new Quantity(column));
    }
}
