package org.tallywright.estimates;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface MaterialLines extends JpaRepository<MaterialLine, UUID> {
    @Query("select coalesce(max(l.position), 0) from MaterialLine l where l.jobId = ?1")
    int lastPosition(UUID jobId);
}
