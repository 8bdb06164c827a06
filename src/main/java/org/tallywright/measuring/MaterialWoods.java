package org.tallywright.measuring;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface MaterialWoods extends JpaRepository<MaterialWood, UUID> {}
