package org.tallywright.people;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Pay from a day on.
 *
 * <p>wageAmount in the shop's currency per hour; burdenPercent is payroll cost on top, in percent of the wage.
 */
@Entity
class Wage {
    @Id
    private UUID id;

    private UUID personId;
    private LocalDate fromDate;
    private BigDecimal wageAmount;
    private BigDecimal burdenPercent;

    @Version
    private @Nullable Integer version;

    @SuppressWarnings("NullAway.Init")
    Wage() {}

    Wage(UUID id, UUID personId, LocalDate fromDate, BigDecimal wageAmount, BigDecimal burdenPercent) {
        this.id = id;
        this.personId = personId;
        this.fromDate = fromDate;
        this.wageAmount = wageAmount;
        this.burdenPercent = burdenPercent;
    }

    UUID id() {
        return id;
    }

    LocalDate fromDate() {
        return fromDate;
    }

    String figures() {
        return Wages.figures(wageAmount, burdenPercent);
    }

    void correct(BigDecimal newWage, BigDecimal newBurden) {
        wageAmount = newWage;
        burdenPercent = newBurden;
    }
}
