package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;

/** Money in a {@code numeric(12,2)} column. */
@Converter(autoApply = true)
public class MoneyColumn implements AttributeConverter<Money, BigDecimal> {
    @Override
    public @Nullable BigDecimal convertToDatabaseColumn(@Nullable Money value) {
        return value == null ? null : value.amount();
    }

    @Override
    public @Nullable Money convertToEntityAttribute(@Nullable BigDecimal column) {
        return column == null ? null : new Money(column);
    }
}
