package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Margin;

/** A margin in percent of the price, in a {@code numeric(7,3)} column. */
@Converter(autoApply = true)
public class MarginColumn implements AttributeConverter<Margin, BigDecimal> {
    @Override
    public @Nullable BigDecimal convertToDatabaseColumn(@Nullable Margin value) {
        return value == null ? null : value.percent().amount();
    }

    @Override
    public @Nullable Margin convertToEntityAttribute(@Nullable BigDecimal column) {
        return column == null ? null : Margin.of(column);
    }
}
