package org.tallywright.jobs;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface Waits extends JpaRepository<Wait, UUID> {
    Optional<Wait> findByIdAndJobId(UUID id, UUID jobId);

    List<Wait> findByTaskIdOrderByPosition(UUID taskId);

    void deleteByTaskId(UUID taskId);
}
