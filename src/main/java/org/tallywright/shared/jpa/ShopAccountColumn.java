package org.tallywright.shared.jpa;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.ShopAccount;

/** A shop account by its code in a {@code text} column. */
@Converter(autoApply = true)
public class ShopAccountColumn implements AttributeConverter<ShopAccount, String> {
    @Override
    public @Nullable String convertToDatabaseColumn(@Nullable ShopAccount value) {
        return value == null ? null : value.code();
    }

    @Override
    public @Nullable ShopAccount convertToEntityAttribute(@Nullable String column) {
        return column == null ? null : ShopAccount.of(column);
    }
}
