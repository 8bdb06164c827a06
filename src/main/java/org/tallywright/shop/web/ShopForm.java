package org.tallywright.shop.web;

import java.math.BigDecimal;
import java.time.ZoneId;
import java.util.Currency;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Money;
import org.tallywright.shared.OvertimeRule;
import org.tallywright.shared.Percent;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Typed;
import org.tallywright.shared.Units;
import org.tallywright.shop.PaymentRule;
import org.tallywright.shop.Shop;
import org.tallywright.shop.ShopChoices;
import org.tallywright.web.FormReader;

/** The settings as typed. */
record ShopForm(
        @Nullable Integer version,
        @Nullable String name,
        @Nullable String timeZone,
        @Nullable String units,
        @Nullable String currency,
        @Nullable String day,
        @Nullable String overtimeWeek,
        @Nullable String overtimeDay,
        @Nullable String overtimePremium,
        @Nullable String overheadRate,
        @Nullable String marginPercent,
        @Nullable String contingencyPercent,
        @Nullable String roundingStep,
        @Nullable String taxPercent,
        @Nullable String taxLabel,
        @Nullable String bidValidDays,
        @Nullable String bidTerms,
        @Nullable String bidPayments,
        @Nullable String depositPercent,
        @Nullable String depositMost,
        @Nullable String depositPlace,
        @Nullable String contactLines) {
    private static final BigDecimal MOST_MARGIN = new BigDecimal("99.9");

    static ShopForm of(Shop shop) {
        return new ShopForm(
                shop.version(),
                shop.name(),
                shop.zone().getId(),
                shop.units().name().toLowerCase(Locale.ROOT),
                shop.currency().getCurrencyCode(),
                Hours.ofMinutes(shop.dayMinutes()).toString(),
                hours(shop.overtime().week()),
                hours(shop.overtime().day()),
                Percent.of(shop.overtime().premiumPercent()).toString(),
                shop.overheadRate().toPlainString(),
                Percent.of(shop.marginPercent()).toString(),
                Percent.of(shop.contingencyPercent()).toString(),
                shop.roundingStep().toPlainString(),
                Percent.of(shop.taxPercent()).toString(),
                shop.taxLabel(),
                String.valueOf(shop.bidValidDays()),
                shop.bidTerms(),
                shop.payments().plan(),
                shop.payments().depositPercent() == null
                        ? ""
                        : Percent.of(shop.payments().depositPercent()).toString(),
                shop.payments().depositMost() == null
                        ? ""
                        : shop.payments().depositMost().toPlainString(),
                shop.payments().place(),
                shop.contactLines());
    }

    /** The settings typed, or null with the refusals in the reader. */
    @Nullable
    Shop read(FormReader read, boolean demo) {
        String shopName = read.field("name", () -> Typed.requiredLine(text(name), 80));
        ZoneId zone = read.field("timeZone", () -> ShopChoices.zone(text(timeZone)));
        Units measured = read.field("units", () -> units(text(units)));
        Currency money = read.field("currency", () -> ShopChoices.currency(text(currency)));
        Hours usual = read.field("day", () -> usualDay(text(day)));
        OvertimeRule overtime = overtime(read);
        BigDecimal overhead = read.field("overheadRate", notNegative(overheadRate));
        BigDecimal margin = percent("marginPercent", marginPercent, MOST_MARGIN, read);
        BigDecimal contingency = percent("contingencyPercent", contingencyPercent, BigDecimal.valueOf(100), read);
        BigDecimal step = read.field("roundingStep", notNegative(roundingStep));
        BigDecimal tax = percent("taxPercent", taxPercent, BigDecimal.valueOf(100), read);
        String taxName = read.field("taxLabel", () -> Typed.line(text(taxLabel), 40));
        Integer days = read.field("bidValidDays", () -> days(text(bidValidDays)));
        String terms = read.field("bidTerms", () -> Typed.block(text(bidTerms), 8000));
        PaymentRule payments = payments(read);
        String contact = read.field("contactLines", () -> Typed.block(text(contactLines), 500));
        if (shopName == null
                || zone == null
                || measured == null
                || money == null
                || usual == null
                || overtime == null
                || overhead == null
                || margin == null
                || contingency == null
                || step == null
                || tax == null
                || taxName == null
                || days == null
                || terms == null
                || payments == null
                || contact == null) {
            return null;
        }
        return new Shop(
                shopName,
                zone,
                measured,
                money,
                usual.minutes(),
                overtime,
                overhead,
                margin,
                contingency,
                step,
                tax,
                taxName,
                days,
                terms,
                payments,
                contact,
                demo,
                version == null ? -1 : version);
    }

    /** Null with the refusals in the reader; an empty limit means that there is none. */
    private @Nullable PaymentRule payments(FormReader read) {
        String plan = read.field("bidPayments", () -> Typed.block(text(bidPayments), 2000));
        BigDecimal share = text(depositPercent).isBlank()
                ? null
                : percent("depositPercent", depositPercent, BigDecimal.valueOf(100), read);
        BigDecimal most = read.optional("depositMost", depositMost, notNegative(depositMost));
        String place = read.field("depositPlace", () -> Typed.line(text(depositPlace), 80));
        return read.refused() || plan == null || place == null ? null : new PaymentRule(plan, share, most, place);
    }

    private static @Nullable BigDecimal percent(
            String field, @Nullable String typed, BigDecimal most, FormReader read) {
        return read.field(field, () -> {
            BigDecimal percent = Percent.of(text(typed)).amount();
            if (percent.compareTo(most) > 0) {
                throw new Refused("This goes up to " + most.toPlainString() + " %.");
            }
            return percent;
        });
    }

    private static Supplier<BigDecimal> notNegative(@Nullable String typed) {
        return () -> {
            Money amount = Money.of(text(typed));
            if (amount.isNegative() || amount.compareTo(Money.of(100_000)) > 0) {
                throw new Refused("This goes from 0 to 100,000.");
            }
            return amount.amount();
        };
    }

    /** Null with the refusals in the reader; an empty box means that no such rule holds. */
    private @Nullable OvertimeRule overtime(FormReader read) {
        Optional<Hours> week = read.field("overtimeWeek", () -> threshold(text(overtimeWeek), 168));
        Optional<Hours> day = read.field("overtimeDay", () -> threshold(text(overtimeDay), 24));
        BigDecimal premium = percent("overtimePremium", overtimePremium, BigDecimal.valueOf(200), read);
        return week == null || day == null || premium == null
                ? null
                : new OvertimeRule(week.orElse(null), day.orElse(null), premium);
    }

    private static Optional<Hours> threshold(String typed, int most) {
        if (typed.isBlank()) {
            return Optional.empty();
        }
        Hours hours = Hours.parseTotal(typed);
        if (hours.minutes() < 60 || hours.minutes() > most * 60) {
            throw new Refused("Give from 1 to " + most + " hours, or leave it empty where no such rule holds.");
        }
        return Optional.of(hours);
    }

    private static String hours(@Nullable Hours hours) {
        return hours == null ? "" : hours.toString();
    }

    private static Hours usualDay(String typed) {
        Hours usual = Hours.parse(typed);
        if (usual.minutes() < 30) {
            throw new Refused("A usual day has at least half an hour.");
        }
        return usual;
    }

    private static Units units(String typed) {
        return switch (typed) {
            case "imperial" -> Units.IMPERIAL;
            case "metric" -> Units.METRIC;
            default -> throw new Refused("Choose inches and feet or millimetres and metres.");
        };
    }

    private static int days(String typed) {
        if (!typed.strip().matches("\\d{1,3}")
                || Integer.parseInt(typed.strip()) < 1
                || Integer.parseInt(typed.strip()) > 365) {
            throw new Refused("Give a number of days from 1 to 365.");
        }
        return Integer.parseInt(typed.strip());
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
