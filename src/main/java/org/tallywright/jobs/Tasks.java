package org.tallywright.jobs;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface Tasks extends JpaRepository<Task, UUID> {
    Optional<Task> findByIdAndJobId(UUID id, UUID jobId);

    List<Task> findByJobIdAndStateIn(UUID jobId, Collection<TaskState> states);

    boolean existsByPieceId(UUID pieceId);

    @Query("select coalesce(max(t.position), 0) from Task t where t.jobId = :jobId")
    int lastPosition(UUID jobId);
}
