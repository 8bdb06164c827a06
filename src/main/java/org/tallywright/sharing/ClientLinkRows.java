package org.tallywright.sharing;

import java.util.Optional;
import java.util.UUID;
import org.springframework.data.repository.CrudRepository;

interface ClientLinkRows extends CrudRepository<ClientLink, UUID> {
    Optional<ClientLink> findByTokenHash(byte[] tokenHash);

    Optional<ClientLink> findByIdAndJobId(UUID id, UUID jobId);
}
