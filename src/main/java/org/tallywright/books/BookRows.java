package org.tallywright.books;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows behind the files: no notes, no reasons, no prices to the client. */
@Component
class BookRows {
    private static final String HOURS = """
            select e.on_date, p.name as person, coalesce(j.number, '') as job, coalesce(e.account, '') as account, e.hour_class,
                   e.minutes, w.wage_amount, w.burden_percent,
                   w.burdened_amount, round(e.minutes * w.wage_amount / 60, 2) as pay,
                   round(e.minutes * w.burdened_amount / 60, 2) as burdened_pay,
                   case when e.correction then (e.logged_at at time zone s.time_zone)::date end as corrected_on
            from time_entry e join shop s on true join person p on p.id = e.person_id left join job j on j.id = e.job_id
            left join lateral (select wage_amount, burden_percent,
                    round(wage_amount * (1 + burden_percent / 100), 2) as burdened_amount from wage
                where person_id = e.person_id and from_date <= e.on_date order by from_date desc limit 1) w on true
            where e.on_date between :from and :to
            """;

    private final JdbcClient jdbc;

    BookRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Hour> hours(Period period) {
        return jdbc.sql(HOURS + "order by e.on_date, lower(p.name), e.id")
                .param("from", period.from())
                .param("to", period.to())
                .query(Hour.class)
                .list();
    }

    /** Minutes and pay of each person; an hour before the first dated wage costs nothing and is counted apart. */
    List<PersonSum> sums(Period period) {
        return jdbc.sql("select person, sum(minutes) as minutes, sum(pay) as pay, "
                        + "sum(burdened_pay) as burdened, "
                        + "coalesce(sum(minutes) filter (where wage_amount is null), 0) as unpaid_minutes from ("
                        + HOURS + ") h group by person order by lower(person)")
                .param("from", period.from())
                .param("to", period.to())
                .query(PersonSum.class)
                .list();
    }

    List<Bought> purchases(Period period) {
        return jdbc.sql("""
                        select p.bought_on, p.supplier, p.receipt_number, m.name as material, p.quantity, m.unit, p.unit_price,
                               p.freight_amount, p.amount, coalesce(j.number, 'stock') as job
                        from purchase p join material m on m.id = p.material_id left join job j on j.id = p.job_id
                        where p.bought_on between :from and :to order by p.bought_on, p.receipt_number, p.id""")
                .param("from", period.from())
                .param("to", period.to())
                .query(Bought.class)
                .list();
    }

    /**
     * Wage and burdened wage per hour, pay of the entry to the cent, in the shop's currency.
     *
     * @param correctedOn when a locked week was corrected by this row, whose minutes may be less than nothing; else null
     */
    record Hour(
            LocalDate onDate,
            String person,
            String job,
            String account,
            String hourClass,
            int minutes,
            @Nullable BigDecimal wageAmount,
            @Nullable BigDecimal burdenPercent,
            @Nullable BigDecimal burdenedAmount,
            @Nullable BigDecimal pay,
            @Nullable BigDecimal burdenedPay,
            @Nullable LocalDate correctedOn) {}

    record PersonSum(
            String person,
            int minutes,
            @Nullable BigDecimal pay,
            @Nullable BigDecimal burdened,
            int unpaidMinutes) {}

    record Bought(
            LocalDate boughtOn,
            String supplier,
            String receiptNumber,
            String material,
            BigDecimal quantity,
            String unit,
            BigDecimal unitPrice,
            BigDecimal freightAmount,
            BigDecimal amount,
            String job) {}
}
