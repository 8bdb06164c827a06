package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Quantity;

/** A net quantity in a {@code numeric(14,4)} column. */
@Converter(autoApply = true)
public class NetQuantityColumn implements AttributeConverter<NetQuantity, BigDecimal> {
    @Override
    public @Nullable BigDecimal convertToDatabaseColumn(@Nullable NetQuantity value) {
        return value == null ? null : value.quantity().amount();
    }

    @Override
    public @Nullable NetQuantity convertToEntityAttribute(@Nullable BigDecimal column) {
        return column == null ? null : new NetQuantity(new Quantity(column));
    }
}
