package org.tallywright.materials;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.Money;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.UnitPrice;

/** One coming or going of material, read and checked, before it is kept. */
public sealed interface MovementDraft {
    Common common();

    LocalDate on();

    Kind kind();

    default @Nullable UUID jobId() {
        return common().jobId();
    }

    default UUID materialId() {
        return common().materialId();
    }

    default Quantity quantity() {
        return common().quantity();
    }

    default String note() {
        return common().note();
    }

    /** @param jobId null for stock */
    record Common(@Nullable UUID jobId, UUID materialId, Quantity quantity, String note) {}

    /** Bought, to a job or to stock. */
    record Bought(Common common, UnitPrice price, Money freight, String supplier, String receiptNumber, LocalDate on)
            implements MovementDraft {
        @Override
        public Kind kind() {
            return Kind.PURCHASES;
        }

        /** Quantity x unit price, to the cent, and freight. */
        Money amount() {
            return price.times(quantity()).plus(freight);
        }
    }

    /**
     * Taken for a job.
     *
     * @param net how much of it is in the finished work; null until somebody says
     * @param fromStock taken from stock, else from what was bought for the job
     */
    record Taken(Common common, @Nullable Quantity net, boolean fromStock, LocalDate on) implements MovementDraft {
        @Override
        public Kind kind() {
            return Kind.USES;
        }
    }

    /** Sent back to the supplier for a credit. */
    record SentBack(Common common, Money credit, LocalDate on) implements MovementDraft {
        @Override
        public Kind kind() {
            return Kind.RETURNS;
        }
    }

    /** An offcut kept; the credit is what it takes off this job's cost. */
    record Kept(
            Common common,
            String size,
            Money credit,
            LocalDate on,
            @Nullable LocalDate goneOn) implements MovementDraft {
        @Override
        public Kind kind() {
            return Kind.OFFCUTS;
        }
    }
}
