package org.tallywright.people;

import jakarta.persistence.AttributeConverter;
import jakarta.persistence.Converter;
import org.tallywright.web.Role;

@Converter
class RoleColumn implements AttributeConverter<Role, String> {
    @Override
    public String convertToDatabaseColumn(Role role) {
        return role.code();
    }

    @Override
    public Role convertToEntityAttribute(String code) {
        return Role.of(code);
    }
}
