package org.tallywright.jobs;

import jakarta.persistence.LockModeType;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;

interface Jobs extends JpaRepository<Job, UUID> {
    Optional<Job> findByNumber(String number);

    /** Held until the end of the transaction, so that closing and writing to a job wait for each other. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select j from Job j where j.id = :id")
    Optional<Job> hold(UUID id);
}
