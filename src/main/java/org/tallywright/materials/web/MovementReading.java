package org.tallywright.materials.web;

import static org.tallywright.materials.web.MovementForm.text;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.tallywright.jobs.JobDesk;
import org.tallywright.materials.Kind;
import org.tallywright.materials.MovementDraft;
import org.tallywright.materials.MovementDraft.Common;
import org.tallywright.shared.Money;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopClock;
import org.tallywright.shared.Typed;
import org.tallywright.shared.UnitPrice;
import org.tallywright.web.FormReader;

/** Turns what was typed into a draft, or gathers every refusal. */
@Component
class MovementReading {
    private static final Quantity MOST = Quantity.of(1_000_000);

    private final JobDesk jobs;
    private final ShopClock clock;

    MovementReading(JobDesk jobs, ShopClock clock) {
        this.jobs = jobs;
        this.clock = clock;
    }

    @Nullable
    MovementDraft read(Kind kind, MovementForm form, FormReader read) {
        UUID job = read.optional("job", form.job(), () -> job(text(form.job())));
        UUID material = read.field("material", () -> material(text(form.material())));
        Quantity quantity = read.field("quantity", () -> quantity(text(form.quantity())));
        String note = read.field("note", () -> Typed.line(text(form.note()), 300));
        LocalDate on = read.field("on", () -> day(text(form.on())));
        if (kind == Kind.USES && text(form.job()).isBlank()) {
            read.refuse("job", "Say which job it was taken for.");
        }
        Common common =
                material == null || quantity == null || note == null ? null : new Common(job, material, quantity, note);
        MovementDraft draft = details(kind, form, common, on, read);
        return read.refused() ? null : draft;
    }

    private @Nullable MovementDraft details(
            Kind kind, MovementForm form, @Nullable Common common, @Nullable LocalDate on, FormReader read) {
        return switch (kind) {
            case PURCHASES -> bought(form, common, on, read);
            case USES -> taken(form, common, on, read);
            case RETURNS -> sentBack(form, common, on, read);
            case OFFCUTS -> kept(form, common, on, read);
        };
    }

    private static @Nullable MovementDraft bought(
            MovementForm form, @Nullable Common common, @Nullable LocalDate on, FormReader read) {
        UnitPrice price = read.field("price", () -> price(text(form.price())));
        Money freight =
                text(form.freight()).isBlank() ? Money.ZERO : read.field("freight", () -> amount(text(form.freight())));
        String supplier = read.field("supplier", () -> Typed.line(text(form.supplier()), 120));
        String receipt = read.field("receipt", () -> Typed.line(text(form.receipt()), 60));
        return common == null || on == null || price == null || freight == null || supplier == null || receipt == null
                ? null
                : new MovementDraft.Bought(common, price, freight, supplier, receipt, on);
    }

    private static @Nullable MovementDraft taken(
            MovementForm form, @Nullable Common common, @Nullable LocalDate on, FormReader read) {
        Quantity net = read.optional("net", form.net(), () -> Quantity.of(text(form.net())));
        if (net != null && common != null && net.compareTo(common.quantity()) > 0) {
            read.refuse("net", "No more can be in the work than was taken.");
        }
        return common == null || on == null
                ? null
                : new MovementDraft.Taken(common, net, "stock".equals(form.source()), on);
    }

    private static @Nullable MovementDraft sentBack(
            MovementForm form, @Nullable Common common, @Nullable LocalDate on, FormReader read) {
        Money credit = read.field("credit", () -> amount(text(form.credit())));
        return common == null || on == null || credit == null ? null : new MovementDraft.SentBack(common, credit, on);
    }

    private @Nullable MovementDraft kept(
            MovementForm form, @Nullable Common common, @Nullable LocalDate on, FormReader read) {
        Money credit =
                text(form.credit()).isBlank() ? Money.ZERO : read.field("credit", () -> amount(text(form.credit())));
        String size = read.field("size", () -> Typed.line(text(form.size()), 80));
        LocalDate gone = read.optional("gone", form.gone(), () -> day(text(form.gone())));
        return common == null || on == null || credit == null || size == null
                ? null
                : new MovementDraft.Kept(common, size, credit, on, gone);
    }

    private UUID job(String number) {
        try {
            return jobs.find(number.strip()).id();
        } catch (NotHere unknown) {
            throw new Refused("There is no job of that number.");
        }
    }

    private static UUID material(String id) {
        try {
            return UUID.fromString(id);
        } catch (IllegalArgumentException notChosen) {
            throw new Refused("Choose a material from the list.");
        }
    }

    private static Quantity quantity(String typed) {
        Quantity quantity = Quantity.of(typed);
        if (quantity.compareTo(Quantity.ZERO) <= 0 || quantity.compareTo(MOST) > 0) {
            throw new Refused("Give a quantity above 0 and up to 1,000,000.");
        }
        return quantity;
    }

    private static UnitPrice price(String typed) {
        UnitPrice price = UnitPrice.of(typed);
        if (price.compareTo(UnitPrice.ZERO) < 0 || price.compareTo(UnitPrice.of(Money.of(1_000_000))) > 0) {
            throw new Refused("Give a price from 0 to 1,000,000.");
        }
        return price;
    }

    private static Money amount(String typed) {
        Money amount = Money.of(typed);
        if (amount.isNegative() || amount.compareTo(Money.of(1_000_000)) > 0) {
            throw new Refused("Give an amount from 0 to 1,000,000.");
        }
        return amount;
    }

    private LocalDate day(String typed) {
        LocalDate day;
        try {
            day = LocalDate.parse(typed.strip());
        } catch (DateTimeParseException notDate) {
            throw new Refused("Give a day, such as 2026-11-25.");
        }
        if (day.isAfter(clock.today())) {
            throw new Refused("This day has not come yet.");
        }
        if (day.getYear() < 2000) {
            throw new Refused("This day is too long ago.");
        }
        return day;
    }
}
