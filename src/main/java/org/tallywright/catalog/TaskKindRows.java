package org.tallywright.catalog;

import java.util.UUID;
import org.springframework.data.repository.ListCrudRepository;

interface TaskKindRows extends ListCrudRepository<TaskKind, UUID> {
    boolean existsByNameIgnoreCaseAndIdNot(String name, UUID id);

    boolean existsByCode(String code);

    boolean existsByMergedInto(UUID id);
}
