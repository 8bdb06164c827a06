package org.tallywright.catalog;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface MaterialRows extends JpaRepository<Material, UUID> {
    boolean existsByNameIgnoreCaseAndIdNot(String name, UUID id);

    boolean existsByCode(String code);
}
