package org.tallywright.materials;

import java.util.UUID;
import org.springframework.data.repository.CrudRepository;

interface MaterialReturns extends CrudRepository<MaterialReturn, UUID> {}
