package org.tallywright.sharing;

import java.util.Optional;
import java.util.UUID;
import org.springframework.data.repository.CrudRepository;

interface ClientNoteRows extends CrudRepository<ClientNote, UUID> {
    Optional<ClientNote> findByIdAndJobId(UUID id, UUID jobId);
}
