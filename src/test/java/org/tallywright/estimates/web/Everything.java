package org.tallywright.estimates.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

/** Every rate, name, unit and setting that a bid is made from, turned into another. */
@Component
class Everything {
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Trail trail;

    Everything(JdbcClient jdbc, TransactionTemplate transaction, Trail trail) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.trail = trail;
    }

    void changes(SignedIn by) {
        transaction.executeWithoutResult(status -> {
            trail.by(by.personId());
            for (String sql : new String[] {
                "update shop set name = 'Other Name', units = 'metric', currency = 'EUR', overhead_rate = 99, margin_percent = 50,"
                        + " contingency_percent = 20, rounding_step_amount = 100, tax_percent = 9, tax_label = 'VAT',"
                        + " bid_valid_days = 5, bid_terms = 'other terms', contact_lines = 'other contact', time_zone = 'Asia/Tokyo'",
                "update client set name = 'Somebody Else', phone = '555-0199'",
                "update site set address = 'Elsewhere 1'",
                "update job set title = 'Other title', promised_on = date '2027-03-01'",
                "update piece set name = 'Other piece', width = 1, height = 2, depth = 3, count = 9",
                "update stage set name = name || ' x'",
                "update task_kind set name = name || ' x', unit_hours = 9, unit = 'each'",
                "update task set name = name || ' x', unit_hours = 9, unit = 'each', quantity = 7, estimated_minutes = 3780",
                "update material set name = name || ' x', unit = 'lump', starting_yield = 0.1",
                "update material_price set unit_price = 999",
                "update estimate set overhead_rate = 88, margin_percent = 40, contingency_percent = 30, scope = 'other',"
                        + " terms = 'other', exclusions = 'other', tax_percent = 3",
                "update estimate_material set unit_price = 999, amount = 44955",
                "update estimate_other set description = 'Other', amount = 999",
                "update wage set wage_amount = 99, burden_percent = 99",
                "update person set name = name || ' x'"
            }) {
                assertThat(jdbc.sql(sql).update()).as(sql).isPositive();
            }
        });
    }
}
