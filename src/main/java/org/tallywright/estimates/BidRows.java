package org.tallywright.estimates;

import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;

interface BidRows extends JpaRepository<Bid, UUID> {
    int countByJobIdAndKind(UUID jobId, String kind);

    /** Without options, as everywhere here where nothing else is said: those are read with the bid that offers them. */
    @Query("select b from Bid b where b.jobId = ?1 and b.kind <> 'option' order by b.issuedAt, b.id")
    List<Bid> offersOf(UUID jobId);

    @Query("select b from Bid b where b.id = ?1 and b.kind <> 'option'")
    Optional<Bid> offer(UUID id);

    @Query("select b from Bid b where b.optionOf = ?1 order by b.number, b.id")
    List<Bid> optionsOf(UUID bidId);

    /** The job of a bid, without holding or keeping the bid itself. */
    @Query("select b.jobId from Bid b where b.id = ?1 and b.kind <> 'option'")
    Optional<UUID> jobOf(UUID id);

    /** Read when the job is held already, so that what is decided is decided on the newest state. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select b from Bid b where b.id = ?1 and b.kind <> 'option'")
    Optional<Bid> hold(UUID id);

    /** Options that were chosen too. */
    @Query("select b from Bid b where b.jobId = ?1 and b.state = 'accepted' order by b.kind, b.issuedAt, b.id")
    List<Bid> accepted(UUID jobId);

    @Query("""
            select count(n) > 0 from Bid b join Bid n on n.jobId = b.jobId and n.kind = 'bid' and n.issuedAt > b.issuedAt
            where b.id = ?1 and b.kind = 'bid'""")
    boolean isFollowed(UUID id);

    @Query("""
            select count(n) > 0 from Bid b join Bid n on n.jobId = b.jobId and n.kind = 'bid' and n.issuedAt > b.issuedAt
            where b.id = ?1 and b.kind = 'bid' and n.state in ('issued', 'accepted')""")
    boolean isFollowedByOneThatStands(UUID id);
}
