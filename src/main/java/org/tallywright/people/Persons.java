package org.tallywright.people;

import java.util.UUID;
import org.springframework.data.repository.CrudRepository;
import org.tallywright.web.Role;

interface Persons extends CrudRepository<Person, UUID> {
    int countByRoleAndActiveTrueAndIdNot(Role role, UUID id);
}
