package org.tallywright.catalog;

import java.util.List;
import java.util.UUID;
import org.springframework.data.repository.ListCrudRepository;

interface StageRows extends ListCrudRepository<Stage, UUID> {
    boolean existsByNameIgnoreCaseAndIdNot(String name, UUID id);

    List<Stage> findAllByOrderByPosition();
}
