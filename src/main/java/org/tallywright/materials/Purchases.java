package org.tallywright.materials;

import java.util.UUID;
import org.springframework.data.repository.CrudRepository;

interface Purchases extends CrudRepository<Purchase, UUID> {}
