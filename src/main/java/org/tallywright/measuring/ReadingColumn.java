package org.tallywright.measuring;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;

/** A reading by its code. */
@Converter
class ReadingColumn implements AttributeConverter<Reading, String> {
    @Override
    public String convertToDatabaseColumn(Reading reading) {
        return reading.code();
    }

    @Override
    public Reading convertToEntityAttribute(String code) {
        return Reading.of(code);
    }
}
