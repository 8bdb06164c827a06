package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.UnitHours;

/** Hours per unit in a {@code numeric(12,5)} column. */
@Converter(autoApply = true)
public class UnitHoursColumn implements AttributeConverter<UnitHours, BigDecimal> {
    @Override
    public @Nullable BigDecimal convertToDatabaseColumn(@Nullable UnitHours value) {
        return value == null ? null : value.amount();
    }

    @Override
    public @Nullable UnitHours convertToEntityAttribute(@Nullable BigDecimal column) {
        return column == null ? null : new UnitHours(column);
    }
}
