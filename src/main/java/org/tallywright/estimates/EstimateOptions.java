package org.tallywright.estimates;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface EstimateOptions extends JpaRepository<EstimateOption, UUID> {
    @Query("select coalesce(max(o.position), 0) from EstimateOption o where o.jobId = ?1")
    int lastPosition(UUID jobId);
}
