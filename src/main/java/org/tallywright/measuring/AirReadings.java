package org.tallywright.measuring;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface AirReadings extends JpaRepository<AirReading, UUID> {
    List<AirReading> findByJobIdOrderByTakenOnAscId(UUID jobId);
}
