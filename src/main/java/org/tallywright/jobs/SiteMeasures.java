package org.tallywright.jobs;

import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface SiteMeasures extends JpaRepository<SiteMeasure, UUID> {
    Optional<SiteMeasure> findByIdAndJobId(UUID id, UUID jobId);

    boolean existsByPieceId(UUID pieceId);
}
