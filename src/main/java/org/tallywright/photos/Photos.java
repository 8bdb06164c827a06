package org.tallywright.photos;

import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface Photos extends JpaRepository<Photo, UUID> {
    Optional<Photo> findByIdAndJobId(UUID id, UUID jobId);
}
