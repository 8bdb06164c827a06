package org.tallywright.measuring;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface SolidParts extends JpaRepository<SolidPart, UUID> {
    List<SolidPart> findByJobIdOrderByNameAscId(UUID jobId);
}
