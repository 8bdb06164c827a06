package org.tallywright.books;

import jakarta.servlet.http.HttpServletResponse;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.web.Access;
import org.tallywright.web.FormErrors;
import org.tallywright.web.Role;

/** The bookkeeper's page: sums of a period, and the files behind them. */
@Controller
@RequestMapping("/books")
@Access({Role.OWNER, Role.BOOKKEEPER})
class BooksController {
    private static final List<String> HOURS = List.of(
            "date",
            "person",
            "job",
            "account",
            "hour_class",
            "minutes",
            "hours",
            "wage_per_hour",
            "burden_percent",
            "burdened_per_hour",
            "pay",
            "burdened_pay",
            "corrected_on");
    private static final List<String> PURCHASES = List.of(
            "date", "supplier", "receipt", "material", "quantity", "unit", "unit_price", "freight", "amount", "job");

    private final BookRows rows;
    private final ShopClock clock;

    BooksController(BookRows rows, ShopClock clock) {
        this.rows = rows;
        this.clock = clock;
    }

    @GetMapping
    String show(
            @RequestParam(required = false) @Nullable String from,
            @RequestParam(required = false) @Nullable String to,
            Model model,
            HttpServletResponse response) {
        Period period;
        FormErrors errors = FormErrors.none();
        try {
            period = Period.of(from, to, clock.today());
        } catch (Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            errors = FormErrors.of(String.valueOf(refused.field()), refused.sentence());
            period = Period.of(null, null, clock.today());
        }
        List<BookRows.Bought> bought = rows.purchases(period);
        model.addAttribute("from", errors.isEmpty() ? period.from().toString() : from);
        model.addAttribute("to", errors.isEmpty() ? period.to().toString() : to);
        model.addAttribute("errors", errors);
        model.addAttribute("sums", rows.sums(period));
        model.addAttribute("receipts", bought.size());
        model.addAttribute(
                "spent", bought.stream().map(BookRows.Bought::amount).reduce(BigDecimal.ZERO, BigDecimal::add));
        return "books/show";
    }

    @GetMapping("/hours.csv")
    ResponseEntity<String> hours(
            @RequestParam(required = false) @Nullable String from,
            @RequestParam(required = false) @Nullable String to) {
        Period period = Period.of(from, to, clock.today());
        List<Object[]> lines =
                rows.hours(period).stream().map(BooksController::line).toList();
        return CsvFile.of("hours-" + period.from() + "-to-" + period.to() + ".csv", HOURS, lines);
    }

    private static Object[] line(BookRows.Hour hour) {
        return new Object[] {
            hour.onDate(),
            hour.person(),
            hour.job(),
            hour.account(),
            hour.hourClass(),
            hour.minutes(),
            BigDecimal.valueOf(hour.minutes()).divide(BigDecimal.valueOf(60), 2, RoundingMode.HALF_UP),
            hour.wageAmount(),
            hour.burdenPercent(),
            hour.burdenedAmount(),
            hour.pay(),
            hour.burdenedPay(),
            hour.correctedOn()
        };
    }

    @GetMapping("/purchases.csv")
    ResponseEntity<String> purchases(
            @RequestParam(required = false) @Nullable String from,
            @RequestParam(required = false) @Nullable String to) {
        Period period = Period.of(from, to, clock.today());
        List<Object[]> lines = rows.purchases(period).stream()
                .map(p -> new Object[] {
                    p.boughtOn(),
                    p.supplier(),
                    p.receiptNumber(),
                    p.material(),
                    p.quantity(),
                    p.unit(),
                    p.unitPrice(),
                    p.freightAmount(),
                    p.amount(),
                    p.job()
                })
                .toList();
        return CsvFile.of("purchases-" + period.from() + "-to-" + period.to() + ".csv", PURCHASES, lines);
    }
}
