package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Markup;

/** A markup in percent of the cost, in a {@code numeric(7,3)} column. */
@Converter(autoApply = true)
public class MarkupColumn implements AttributeConverter<Markup, BigDecimal> {
    @Override
    public @Nullable BigDecimal convertToDatabaseColumn(@Nullable Markup value) {
        return value == null ? null : value.percent().amount();
    }

    @Override
    public @Nullable Markup convertToEntityAttribute(@Nullable BigDecimal column) {
        return column == null ? null : Markup.of(column);
    }
}
