package org.tallywright.catalog;

import java.util.UUID;
import org.springframework.data.repository.ListCrudRepository;

interface PieceKindRows extends ListCrudRepository<PieceKind, UUID> {
    boolean existsByNameIgnoreCaseAndIdNot(String name, UUID id);
}
