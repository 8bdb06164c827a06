package org.tallywright.demo;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.tallywright.estimates.BidDocument;
import org.tallywright.estimates.PaymentPlan;
import org.tallywright.shared.Length;
import org.tallywright.shared.Money;
import org.tallywright.shared.MoneyFormat;
import org.tallywright.shared.Units;
import tools.jackson.databind.json.JsonMapper;

/**
 * The bids and change orders, issued from the estimates. The scenario's past bids were priced by a percentage for
 * contingency; they are history and are taken over figure by figure. Of a first revision only the sums are kept.
 */
@Component
class DemoBids {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private static final int VALID_DAYS = 30;

    private static final String INSERT = """
            insert into bid (id, job_id, kind, mark, number, title, state, issued_at, issued_on, issued_by, valid_until,
                estimated_minutes, labour_rate, overhead_rate, labour_amount, material_amount, other_amount, overhead_amount,
                contingency_amount, margin_amount, rounding_amount, price_amount, total_amount, contingency_percent, margin_percent,
                document, accepted_at, accepted_on, accepted_name, accepted_via, version)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?::jsonb, ?, ?, ?, ?, 0)""";

    private final JsonMapper json;

    DemoBids(JsonMapper json) {
        this.json = json;
    }

    void load(DemoLedger ledger) {
        Map<String, DemoRow> jobs = new HashMap<>();
        DemoFile.rows("jobs").forEach(job -> jobs.put(job.get("key"), job));
        ledger.knowAll("material/", "select id, code from material");
        DemoEstimates.load(ledger);
        List<Object[]> rows = DemoLedger.list();
        for (DemoRow bid : DemoFile.rows("bids")) {
            rows.add(bid(ledger, jobs.getOrDefault(bid.get("job"), DemoRow.NONE), bid));
        }
        for (DemoRow order : DemoFile.rows("change_orders")) {
            rows.add(changeOrder(ledger, jobs.getOrDefault(order.get("job"), DemoRow.NONE), order));
        }
        ledger.insert(INSERT, rows);
        DemoBidLines.load(ledger);
    }

    private Object[] bid(DemoLedger ledger, DemoRow job, DemoRow row) {
        String number = jobNumber(ledger, job) + " " + row.get("revision");
        Issue issue = new Issue("bid", row.get("revision"), number, job.getOrDefault("title", ""), row.get("offset"));
        UUID id = ledger.make("bid/" + row.get("job") + "/" + row.get("revision"));
        return columns(
                ledger,
                id,
                job,
                issue,
                row,
                row.get("labour_rate"),
                row.get("contingency_percent"),
                row.get("margin_percent"));
    }

    private Object[] changeOrder(DemoLedger ledger, DemoRow job, DemoRow row) {
        String number = jobNumber(ledger, job) + " " + row.get("number");
        Issue issue = new Issue("change order", row.get("number"), number, row.get("title"), row.get("offset"));
        UUID id = ledger.make("bid/" + row.get("job") + "/" + row.get("number"));
        BigDecimal hours = new BigDecimal(row.get("est_hours"));
        String rate = new BigDecimal(row.get("labour"))
                .divide(hours, 2, RoundingMode.HALF_EVEN)
                .toPlainString();
        BigDecimal margin = new BigDecimal(row.get("margin"))
                .multiply(BigDecimal.valueOf(100))
                .divide(new BigDecimal(row.get("price")), 3, RoundingMode.HALF_EVEN);
        return columns(ledger, id, job, issue, row, rate, "5", margin.toPlainString());
    }

    private record Issue(String kind, String mark, String number, String title, String offset) {}

    private Object[] columns(
            DemoLedger ledger,
            UUID id,
            DemoRow job,
            Issue issue,
            DemoRow row,
            String rate,
            String contingency,
            String margin) {
        LocalDate issued = ledger.date(issue.offset());
        LocalDate accepted = ledger.dateOrNull(row.get("accepted_offset"));
        BigDecimal sum = BigDecimal.ZERO;
        for (String part : List.of("labour", "material", "other", "overhead", "contingency", "margin")) {
            sum = sum.add(new BigDecimal(row.get(part)));
        }
        BigDecimal price = new BigDecimal(row.get("price"));
        int minutes = new BigDecimal(row.get("est_hours"))
                .multiply(BigDecimal.valueOf(60))
                .setScale(0, RoundingMode.HALF_UP)
                .intValueExact();
        String client = clientName(ledger, job);
        return new Object[] {
            id,
            ledger.id("job/" + row.get("job")),
            issue.kind(),
            issue.mark(),
            issue.number(),
            issue.title(),
            accepted == null ? "withdrawn" : "accepted",
            DemoLedger.stamp(ledger.at(issue.offset(), 1020)),
            DemoLedger.day(issued),
            ledger.id("person/ada"),
            DemoLedger.day(issued.plusDays(VALID_DAYS)),
            minutes,
            new BigDecimal(rate),
            new BigDecimal(15),
            new BigDecimal(row.get("labour")),
            new BigDecimal(row.get("material")),
            new BigDecimal(row.get("other")),
            new BigDecimal(row.get("overhead")),
            new BigDecimal(row.get("contingency")),
            new BigDecimal(row.get("margin")),
            price.subtract(sum),
            price,
            price,
            new BigDecimal(contingency),
            new BigDecimal(margin),
            json.writeValueAsString(document(ledger, job, issue, client, new Money(price))),
            accepted == null ? null : DemoLedger.stamp(ledger.at(row.get("accepted_offset"), 1110)),
            DemoLedger.day(accepted),
            accepted == null ? "" : client,
            accepted == null ? null : "owner"
        };
    }

    private static BidDocument document(DemoLedger ledger, DemoRow job, Issue issue, String client, Money price) {
        LocalDate issued = ledger.date(issue.offset());
        String address = ledger.jdbc()
                .queryForObject(
                        "select address from site where id = ?", String.class, ledger.id("site/" + job.get("client")));
        return new BidDocument(
                1,
                issue.kind().equals("bid") ? "Bid" : "Change order",
                issue.number(),
                issue.title(),
                "Fenn Built-ins",
                List.of("Unit 4, Treadle Yard", "555-0100", "shop@example.com"),
                DAY.format(issued),
                DAY.format(issued.plusDays(VALID_DAYS)),
                client,
                address == null ? "" : address,
                jobNumber(ledger, job),
                job.getOrDefault("title", ""),
                List.of(issue.title() + ", built and installed as drawn."),
                issue.kind().equals("bid") ? pieces(job.getOrDefault("key", "")) : List.of(),
                List.of("Electrical work, drywall and moving of furniture.", "Lead paint or asbestos found on site."),
                "",
                List.of(new BidDocument.PriceRow("Price", MoneyFormat.DEFAULT.format(price))),
                List.of("Changes are agreed in writing before the work."),
                "Local law decides what a contract, a deposit, a cancellation and tax must look like; where it differs from"
                        + " this page, the law holds.",
                "letter",
                List.of(),
                List.of(),
                payments(price));
    }

    private static List<BidDocument.PriceRow> payments(Money price) {
        return PaymentPlan.of(DemoShop.PAYMENTS).of(price).stream()
                .map(step -> new BidDocument.PriceRow(
                        step.share().isEmpty() ? step.name() : step.name() + ", " + step.share(),
                        MoneyFormat.DEFAULT.format(step.amount())))
                .toList();
    }

    private static List<BidDocument.PieceRow> pieces(String job) {
        return DemoFile.rows("pieces").stream()
                .filter(piece -> piece.get("job").equals(job))
                .map(piece -> new BidDocument.PieceRow(
                        piece.get("name"),
                        1,
                        side(piece.get("width")) + " wide, " + side(piece.get("height")) + " high, "
                                + side(piece.get("depth")) + " deep"))
                .toList();
    }

    private static String side(String typed) {
        return Length.parse(typed, Units.IMPERIAL).format(Units.IMPERIAL);
    }

    private static String jobNumber(DemoLedger ledger, DemoRow job) {
        return DemoJobs.number(
                ledger.date(job.getOrDefault("opened_offset", "0")),
                Integer.parseInt(job.getOrDefault("sequence", "0")));
    }

    private static String clientName(DemoLedger ledger, DemoRow job) {
        String name = ledger.jdbc()
                .queryForObject(
                        "select name from client where id = ?", String.class, ledger.id("client/" + job.get("client")));
        return name == null ? "" : name;
    }
}
