package org.tallywright.shop;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.RequestContextHolder;
import org.tallywright.shared.Hours;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.OvertimeRule;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Units;
import org.tallywright.trail.Trail;
import org.tallywright.web.SignedIn;

/** Reads the shop's settings once for each request, so that several app instances never disagree for longer. */
@Service
public class ShopSettings {
    private static final String SEEN = ShopSettings.class.getName();

    private final JdbcClient jdbc;
    private final Trail trail;
    private final Clock clock;

    ShopSettings(JdbcClient jdbc, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.clock = clock;
    }

    /** @throws NotHere before set-up */
    public Shop current() {
        return find().orElseThrow(() -> new NotHere("shop"));
    }

    public Optional<Shop> find() {
        RequestAttributes request = RequestContextHolder.getRequestAttributes();
        if (request != null && request.getAttribute(SEEN, RequestAttributes.SCOPE_REQUEST) instanceof Shop seen) {
            return Optional.of(seen);
        }
        Optional<Shop> shop =
                jdbc.sql("select * from shop").query(ShopSettings::read).optional();
        if (request != null) {
            shop.ifPresent(found -> request.setAttribute(SEEN, found, RequestAttributes.SCOPE_REQUEST));
        }
        return shop;
    }

    private Optional<Shop> kept() {
        return jdbc.sql("select * from shop").query(ShopSettings::read).optional();
    }

    private static List<Stale.Row> beside(Shop kept, Shop typed) {
        return List.of(
                new Stale.Row("Name", kept.name(), typed.name()),
                new Stale.Row("Time zone", kept.zone().getId(), typed.zone().getId()),
                new Stale.Row(
                        "Currency",
                        kept.currency().getCurrencyCode(),
                        typed.currency().getCurrencyCode()),
                new Stale.Row(
                        "Overtime", kept.overtime().inWords(), typed.overtime().inWords()),
                new Stale.Row("Overhead per hour", plain(kept.overheadRate()), plain(typed.overheadRate())),
                new Stale.Row("Margin", plain(kept.marginPercent()), plain(typed.marginPercent())),
                new Stale.Row("Contingency", plain(kept.contingencyPercent()), plain(typed.contingencyPercent())),
                new Stale.Row("Round prices to", plain(kept.roundingStep()), plain(typed.roundingStep())),
                new Stale.Row("Tax", plain(kept.taxPercent()), plain(typed.taxPercent())),
                new Stale.Row("Address and contact", kept.contactLines(), typed.contactLines()),
                new Stale.Row(
                        "How bids are paid",
                        kept.payments().plan(),
                        typed.payments().plan()),
                new Stale.Row(
                        "Limit of the first payment",
                        kept.payments().limitInWords(),
                        typed.payments().limitInWords()),
                new Stale.Row("Terms", kept.bidTerms(), typed.bidTerms()));
    }

    private static String plain(BigDecimal figure) {
        return figure.stripTrailingZeros().toPlainString();
    }

    /** Called once, by set-up or the demo, inside their own transaction and trail. */
    @Transactional
    public void open(String name, ZoneId zone, Units units, Currency currency) {
        jdbc.sql("""
                        insert into shop (id, name, time_zone, units, currency, created_at, version)
                        values (1, ?, ?, ?, ?, ?, 0)""")
                .params(
                        name,
                        zone.getId(),
                        units.name().toLowerCase(Locale.ROOT),
                        currency.getCurrencyCode(),
                        Timestamp.from(clock.instant()))
                .update();
        forget();
    }

    @Transactional
    public void change(Shop to, SignedIn by) {
        trail.by(by.personId());
        int changed = jdbc.sql("""
                        update shop set name = ?, time_zone = ?, units = ?, currency = ?, day_minutes = ?, overhead_rate = ?,
                            overtime_week_minutes = nullif(?, 0), overtime_day_minutes = nullif(?, 0), overtime_premium_percent = ?,
                            margin_percent = ?, contingency_percent = ?, rounding_step_amount = ?, tax_percent = ?, tax_label = ?,
                            bid_valid_days = ?, bid_terms = ?, bid_payments = ?, deposit_limit_percent = nullif(?, -1), deposit_limit_amount = nullif(?, -1),
                            deposit_limit_place = ?, contact_lines = ?, version = version + 1
                        where version = ?""")
                .params(
                        to.name(),
                        to.zone().getId(),
                        to.units().name().toLowerCase(Locale.ROOT),
                        to.currency().getCurrencyCode(),
                        to.dayMinutes(),
                        to.overheadRate(),
                        minutes(to.overtime().week()),
                        minutes(to.overtime().day()),
                        to.overtime().premiumPercent(),
                        to.marginPercent(),
                        to.contingencyPercent(),
                        to.roundingStep(),
                        to.taxPercent(),
                        to.taxLabel(),
                        to.bidValidDays(),
                        to.bidTerms(),
                        to.payments().plan(),
                        limit(to.payments().depositPercent()),
                        limit(to.payments().depositMost()),
                        to.payments().place(),
                        to.contactLines(),
                        to.version())
                .update();
        if (changed == 0) {
            throw new Stale("page of settings", beside(kept().orElse(to), to));
        }
        forget();
    }

    /** The settings were changed by other means in this request; they are read anew. */
    public void forgetSeen() {
        forget();
    }

    private static void forget() {
        RequestAttributes request = RequestContextHolder.getRequestAttributes();
        if (request != null) {
            request.removeAttribute(SEEN, RequestAttributes.SCOPE_REQUEST);
        }
    }

    private static BigDecimal limit(@Nullable BigDecimal limit) {
        return limit == null ? BigDecimal.ONE.negate() : limit;
    }

    private static int minutes(@Nullable Hours hours) {
        return hours == null ? 0 : hours.minutes();
    }

    private static @Nullable Hours hours(ResultSet row, String column) throws SQLException {
        int minutes = row.getInt(column);
        return row.wasNull() ? null : new Hours(minutes);
    }

    private static Shop read(ResultSet row, int n) throws SQLException {
        return new Shop(
                row.getString("name"),
                ZoneId.of(row.getString("time_zone")),
                Units.valueOf(row.getString("units").toUpperCase(Locale.ROOT)),
                Currency.getInstance(row.getString("currency")),
                row.getInt("day_minutes"),
                new OvertimeRule(
                        hours(row, "overtime_week_minutes"),
                        hours(row, "overtime_day_minutes"),
                        row.getBigDecimal("overtime_premium_percent")),
                row.getBigDecimal("overhead_rate"),
                row.getBigDecimal("margin_percent"),
                row.getBigDecimal("contingency_percent"),
                row.getBigDecimal("rounding_step_amount"),
                row.getBigDecimal("tax_percent"),
                row.getString("tax_label"),
                row.getInt("bid_valid_days"),
                row.getString("bid_terms"),
                new PaymentRule(
                        row.getString("bid_payments"),
                        row.getBigDecimal("deposit_limit_percent"),
                        row.getBigDecimal("deposit_limit_amount"),
                        row.getString("deposit_limit_place")),
                row.getString("contact_lines"),
                row.getObject("demo_loaded_at") != null,
                row.getInt("version"));
    }
}
