package org.tallywright.daylog;

import java.time.LocalDate;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.ShopAccount;

/**
 * What the day sheet knows about a {@link Target}.
 *
 * @param jobId null for the shop's own account, as are number and state
 * @param name of the task, else of the job or account
 * @param stage of the task, else empty
 * @param usualClass what hours on it usually are
 * @param onSite whether the work is done at the client's
 * @param openedOn the job's first day
 * @param oneWayMinutes the drive to the site, where it is known
 * @param planned whether it is a task that has not begun
 */
public record Place(
        Target target,
        @Nullable UUID jobId,
        String number,
        String jobTitle,
        String jobState,
        String name,
        String stage,
        HourClass usualClass,
        boolean onSite,
        @Nullable LocalDate openedOn,
        @Nullable Integer oneWayMinutes,
        boolean planned) {
    public static Place ofShop(ShopAccount account) {
        HourClass usual = account == ShopAccount.MAINTENANCE ? HourClass.DIRECT : HourClass.OFFICE;
        String name = "Shop: " + account.label().toLowerCase(Locale.ROOT);
        return new Place(Target.shop(account), null, "", "", "", name, "", usual, false, null, null, false);
    }

    public boolean closed() {
        return "closed".equals(jobState);
    }

    public boolean lost() {
        return "lost".equals(jobState);
    }

    /** {@code Sand to 150, 26-014}; the shop's accounts have no number. */
    public String inWords() {
        return number.isEmpty() ? name : name + ", " + number;
    }
}
