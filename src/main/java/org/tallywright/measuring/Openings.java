package org.tallywright.measuring;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface Openings extends JpaRepository<Opening, UUID> {
    List<Opening> findByJobIdOrderByMeasuredOnAscPlaceAscId(UUID jobId);
}
