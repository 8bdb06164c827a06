package org.tallywright.people;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Dated pay. Owner and bookkeeper only; callers must not show it to anybody else. */
@Component
public class Wages {
    private final JdbcClient jdbc;

    Wages(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Wage x (1 + burden / 100), to the cent, as it stood on that day; empty before the first dated wage. */
    public Optional<BigDecimal> burdened(UUID person, LocalDate day) {
        return jdbc.sql("""
                        select round(wage_amount * (1 + burden_percent / 100), 2) from wage
                        where person_id = ? and from_date <= ? order by from_date desc limit 1""").params(person, day).query(BigDecimal.class).optional();
    }

    /** Pay per hour on each day of a stretch, without burden; days before the first dated wage are left out. */
    public Map<LocalDate, BigDecimal> on(UUID person, LocalDate from, LocalDate to) {
        Map<LocalDate, BigDecimal> wages = new HashMap<>();
        jdbc.sql("""
                        select d.day::date as day, w.wage_amount from generate_series(?::date, ?::date, interval '1 day') d(day)
                        cross join lateral (select wage_amount from wage where person_id = ? and from_date <= d.day
                            order by from_date desc limit 1) w""").params(from, to, person).query(row -> {
            wages.put(row.getObject("day", LocalDate.class), row.getBigDecimal("wage_amount"));
        });
        return wages;
    }

    /** All of one person's pay, newest first. */
    public List<Row> of(UUID person) {
        return jdbc.sql("""
                        select id, from_date, wage_amount, burden_percent,
                               round(wage_amount * (1 + burden_percent / 100), 2) as burdened_amount
                        from wage where person_id = ? order by from_date desc""").param(person).query(Row.class).list();
    }

    /** Both figures as the page writes them, so that a save can say which ones it was made beside. */
    static String figures(BigDecimal wage, BigDecimal burden) {
        return wage.setScale(2, RoundingMode.HALF_UP) + " + "
                + burden.stripTrailingZeros().toPlainString() + " %";
    }

    /** Amounts per hour in the shop's currency, burden in percent of the wage. */
    public record Row(
            UUID id, LocalDate fromDate, BigDecimal wageAmount, BigDecimal burdenPercent, BigDecimal burdenedAmount) {
        public String figures() {
            return Wages.figures(wageAmount, burdenPercent);
        }
    }
}
