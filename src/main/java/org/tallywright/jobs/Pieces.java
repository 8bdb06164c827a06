package org.tallywright.jobs;

import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface Pieces extends JpaRepository<Piece, UUID> {
    Optional<Piece> findByIdAndJobId(UUID id, UUID jobId);

    boolean existsByIdAndJobId(UUID id, UUID jobId);

    @Query("select coalesce(max(p.position), 0) from Piece p where p.jobId = :jobId")
    int lastPosition(UUID jobId);
}
