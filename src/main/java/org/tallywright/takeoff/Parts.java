package org.tallywright.takeoff;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface Parts extends JpaRepository<Part, UUID> {
    @Query("select coalesce(max(p.position), 0) from Part p where p.pieceId = :piece")
    int lastPosition(UUID piece);

    @Query("select count(p) from Part p where p.jobId = :job")
    long ofJob(UUID job);

    @Query("select p.rule from Part p where p.pieceId = :piece and p.byHand = true and p.rule <> ''")
    java.util.Set<String> changedRules(UUID piece);

    @Query("select p from Part p where p.pieceId = :piece and p.byHand = true order by p.position")
    java.util.List<Part> byHand(UUID piece);

    @Query("select p from Part p where p.pieceId = :piece and p.byHand = false order by p.position")
    java.util.List<Part> byFormulas(UUID piece);
}
