package org.tallywright.people;

import java.util.UUID;
import org.tallywright.web.Role;

/** A person as other pages name him. */
public record PersonName(UUID id, String name, Role role) {}
