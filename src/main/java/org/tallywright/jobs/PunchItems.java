package org.tallywright.jobs;

import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface PunchItems extends JpaRepository<PunchItem, UUID> {
    Optional<PunchItem> findByIdAndJobId(UUID id, UUID jobId);

    int countByJobIdAndDoneOnIsNull(UUID jobId);

    boolean existsByPieceId(UUID pieceId);
}
