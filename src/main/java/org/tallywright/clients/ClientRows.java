package org.tallywright.clients;

import java.util.UUID;
import org.springframework.data.repository.ListCrudRepository;

interface ClientRows extends ListCrudRepository<Client, UUID> {}
