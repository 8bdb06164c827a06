package org.tallywright.takeoff;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface PieceTakeoffs extends JpaRepository<PieceTakeoff, UUID> {}
