package org.tallywright.daylog;

import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.ShopAccount;

/** What hours went into: exactly one of a task, a job without a task, or an account of the shop. */
public record Target(
        @Nullable UUID taskId,
        @Nullable UUID jobId,
        @Nullable ShopAccount account) {
    public Target {
        if (Stream.of(taskId != null, jobId != null, account != null)
                        .filter(given -> given)
                        .count()
                != 1) {
            throw new IllegalArgumentException("hours go to one thing");
        }
    }

    public static Target task(UUID id) {
        return new Target(id, null, null);
    }

    public static Target job(UUID id) {
        return new Target(null, id, null);
    }

    public static Target shop(ShopAccount account) {
        return new Target(null, null, account);
    }

    /**
     * Reads what {@link #code} wrote.
     *
     * @throws NotUnderstood for anything else
     */
    public static Target of(String code) {
        String[] parts = code.strip().split(":", 2);
        try {
            if (parts.length == 2 && parts[1].length() <= 40) {
                switch (parts[0]) {
                    case "task":
                        return task(UUID.fromString(parts[1]));
                    case "job":
                        return job(UUID.fromString(parts[1]));
                    case "shop":
                        return shop(ShopAccount.of(parts[1]));
                    default:
                        break;
                }
            }
        } catch (IllegalArgumentException e) {
            // Said below: the words differ for a person who sees a list to choose from.
        }
        throw new NotUnderstood("Choose what these hours went into.");
    }

    /** As a form carries it: {@code task:...}, {@code job:...}, {@code shop:selling}. */
    public String code() {
        if (taskId != null) {
            return "task:" + taskId;
        }
        return account != null ? "shop:" + account.code() : "job:" + jobId;
    }
}
