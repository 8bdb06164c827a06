package org.tallywright.materials;

import java.util.List;
import java.util.UUID;
import org.springframework.data.repository.CrudRepository;

interface OffcutHolds extends CrudRepository<OffcutHold, UUID> {
    List<OffcutHold> findByJobId(UUID jobId);
}
