package org.tallywright.people;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.repository.CrudRepository;

interface WageRows extends CrudRepository<Wage, UUID> {
    Optional<Wage> findByPersonIdAndFromDate(UUID personId, LocalDate fromDate);
}
