package org.tallywright.clients;

import java.util.UUID;
import org.springframework.data.repository.ListCrudRepository;

interface SiteRows extends ListCrudRepository<Site, UUID> {}
