package org.tallywright.estimates;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface Estimates extends JpaRepository<Estimate, UUID> {}
