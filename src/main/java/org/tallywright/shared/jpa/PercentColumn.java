package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Percent;

/** A percentage in a {@code numeric(7,3)} column: 16 for 16 %. */
@Converter(autoApply = true)
public class PercentColumn implements AttributeConverter<Percent, BigDecimal> {
    @Override
    public @Nullable BigDecimal convertToDatabaseColumn(@Nullable Percent value) {
        return value == null ? null : value.amount();
    }

    @Override
    public @Nullable Percent convertToEntityAttribute(@Nullable BigDecimal column) {
        return column == null ? null : new Percent(column);
    }
}
