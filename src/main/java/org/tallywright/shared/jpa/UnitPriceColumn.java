package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.UnitPrice;

/** A unit price in a {@code numeric(14,4)} column. */
@Converter(autoApply = true)
public class UnitPriceColumn implements AttributeConverter<UnitPrice, BigDecimal> {
    @Override
    public @Nullable BigDecimal convertToDatabaseColumn(@Nullable UnitPrice value) {
        return value == null ? null : value.amount();
    }

    @Override
    public @Nullable UnitPrice convertToEntityAttribute(@Nullable BigDecimal column) {
        return column == null ? null : new UnitPrice(column);
    }
}
