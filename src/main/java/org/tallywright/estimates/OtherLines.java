package org.tallywright.estimates;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface OtherLines extends JpaRepository<OtherLine, UUID> {
    @Query("select coalesce(max(l.position), 0) from OtherLine l where l.jobId = ?1")
    int lastPosition(UUID jobId);
}
