package org.tallywright.calibration;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.ShopClock;

/** The calibration in use, fitted once for each that becomes current. */
@Component
class Shelf {
    private static final Fitted STARTING = Fitted.of(null, Past.nothing(), LocalDate.EPOCH, List.of());

    private final CalibrationRows rows;
    private final ShopClock clock;
    private final AtomicReference<@Nullable Pair> taken = new AtomicReference<>();
    private final AtomicReference<@Nullable Pair> earlier = new AtomicReference<>();

    Shelf(CalibrationRows rows, ShopClock clock) {
        this.rows = rows;
        this.clock = clock;
    }

    private record Pair(Fitted fitted, CalibrationRows.Kept kept) {}

    /** Without any finished job: the starting rates. */
    @Transactional(readOnly = true)
    Fitted fitted() {
        return pair().map(Pair::fitted).orElse(STARTING);
    }

    /** An earlier one, as it was. @param jobs finished jobs behind it; with none and no id: the starting rates */
    @Transactional(readOnly = true)
    Optional<Fitted> fitted(@Nullable UUID id, int jobs) {
        if (id == null) {
            return jobs == 0 ? Optional.of(STARTING) : Optional.empty();
        }
        Optional<Pair> current = pair().filter(pair -> pair.kept().row().id().equals(id));
        if (current.isPresent()) {
            return current.map(Pair::fitted);
        }
        Pair seen = earlier.get();
        if (seen == null || !seen.kept().row().id().equals(id)) {
            seen = rows.kept(id).map(this::fit).orElse(null);
            earlier.set(seen);
        }
        return Optional.ofNullable(seen).map(Pair::fitted);
    }

    @Transactional(readOnly = true)
    Optional<CalibrationRows.Kept> kept() {
        return pair().map(Pair::kept);
    }

    /** The one that was just made and is kept by now: nobody needs to read and fit it again. */
    void put(Fitted fitted, CalibrationRows.Kept kept) {
        taken.set(new Pair(fitted, kept));
    }

    private Optional<Pair> pair() {
        UUID current = rows.current().orElse(null);
        if (current == null) {
            return Optional.empty();
        }
        Pair seen = taken.get();
        if (seen != null && seen.kept().row().id().equals(current)) {
            return Optional.of(seen);
        }
        Optional<Pair> read = rows.kept(current).map(this::fit);
        read.ifPresent(taken::set);
        return read;
    }

    private Pair fit(CalibrationRows.Kept kept) {
        LocalDate made = clock.dateOf(
                kept.row().madeAt() == null ? kept.row().askedAt() : kept.row().madeAt());
        return new Pair(Fitted.of(kept.row().id(), kept.past(), made, kept.record()), kept);
    }
}
