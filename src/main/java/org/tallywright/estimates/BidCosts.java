package org.tallywright.estimates;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.tallywright.shared.Money;
import org.tallywright.shared.Percent;

/** What an issued bid was said to cost and to leave, frozen with it. */
@Component
class BidCosts {
    private final JdbcClient jdbc;

    BidCosts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void keep(UUID bid, MoneyAtRisk risk) {
        CostBehind behind = risk.behind();
        jdbc.sql("""
                        insert into bid_cost (bid_id, confidence, expected_amount, low_amount, likely_amount, high_amount, p80_amount,
                            loss_percent, profit_amount, draws, seed, jobs, starting_percent, materials, yields, price_steps,
                            laid_out, crew_matters, crew_jobs)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(bid)
                .param(risk.confidence())
                .param(risk.expected().amount())
                .param(risk.low().amount())
                .param(risk.likely().amount())
                .param(risk.high().amount())
                .param(risk.p80().amount())
                .param(risk.loss().amount())
                .param(risk.profit().amount())
                .param(behind.draws())
                .param(behind.seed())
                .param(behind.jobs())
                .param(behind.startingPercent())
                .param(behind.materials())
                .param(behind.yields())
                .param(behind.priceSteps())
                .param(behind.laidOut())
                .param(behind.crewMatters())
                .param(behind.crewJobs())
                .update();
    }

    Optional<MoneyAtRisk> of(UUID bid) {
        return jdbc.sql("select * from bid_cost where bid_id = ?")
                .param(bid)
                .query(BidCosts::read)
                .optional();
    }

    private static MoneyAtRisk read(ResultSet row, int n) throws SQLException {
        return new MoneyAtRisk(
                row.getObject("confidence", Integer.class),
                Money.of(row.getBigDecimal("expected_amount")),
                Money.of(row.getBigDecimal("low_amount")),
                Money.of(row.getBigDecimal("likely_amount")),
                Money.of(row.getBigDecimal("high_amount")),
                Money.of(row.getBigDecimal("p80_amount")),
                Percent.of(row.getBigDecimal("loss_percent")),
                Money.of(row.getBigDecimal("profit_amount")),
                new CostBehind(
                        row.getInt("draws"),
                        row.getLong("seed"),
                        row.getInt("jobs"),
                        row.getInt("starting_percent"),
                        row.getInt("materials"),
                        row.getInt("yields"),
                        row.getInt("price_steps"),
                        row.getInt("laid_out"),
                        row.getBoolean("crew_matters"),
                        row.getInt("crew_jobs")));
    }
}
