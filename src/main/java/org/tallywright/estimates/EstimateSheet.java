package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.shared.HourClass;
import org.tallywright.shared.Hours;
import org.tallywright.shared.Money;
import org.tallywright.shared.NetQuantity;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitHours;
import org.tallywright.shared.UnitPrice;
import org.tallywright.shared.Yield;

/**
 * The lines of a job's working sum as they stand. A line in an accepted bid is sold: it stays as agreed. Once a bid is
 * accepted, what is offered next is a change order of the lines that are neither sold nor in a change order that is out.
 */
public record EstimateSheet(List<TaskRow> tasks, List<MaterialRow> materials, List<OtherRow> others, boolean sold) {

    /**
     * @param pieceName empty for the whole job
     * @param startingUnitHours the catalogue's rate when the task was made
     */
    public record TaskRow(
            UUID id,
            int version,
            String pieceName,
            String stageName,
            int stagePosition,
            String kindCode,
            HourClass hourClass,
            String name,
            Quantity quantity,
            Unit unit,
            UnitHours startingUnitHours,
            UnitHours unitHours,
            Hours hours,
            Lot lot) {
        /** Whether the rate differs from the catalogue's. */
        public boolean isAdjusted() {
            return unitHours.compareTo(startingUnitHours) != 0;
        }
    }

    /**
     * @param yield of this line
     * @param startingYield the catalogue's
     * @param purchaseStep the smallest quantity that can be bought
     */
    public record MaterialRow(
            UUID id,
            int version,
            @Nullable UUID pieceId,
            String pieceName,
            UUID materialId,
            String name,
            String unit,
            NetQuantity net,
            Yield yield,
            Yield startingYield,
            Quantity purchaseStep,
            Quantity purchase,
            UnitPrice price,
            Money freight,
            Money amount,
            Lot lot) {}

    public record OtherRow(UUID id, int version, String description, Money amount, Lot lot) {}

    /**
     * Where a line stands between working sum and contract.
     *
     * @param soldIn number of the accepted bid that holds it, or empty
     * @param offeredIn number of a change order that is out with it, or empty
     */
    public record Lot(String soldIn, String offeredIn) {
        public boolean isFree() {
            return soldIn.isEmpty() && offeredIn.isEmpty();
        }

        public boolean isSold() {
            return !soldIn.isEmpty();
        }
    }

    public BidKind nextKind() {
        return sold ? BidKind.CHANGE_ORDER : BidKind.BID;
    }

    /** The lines that the next bid would hold: all of them until one is accepted. */
    public EstimateSheet next() {
        if (!sold) {
            return this;
        }
        return new EstimateSheet(
                tasks.stream().filter(t -> t.lot().isFree()).toList(),
                materials.stream().filter(m -> m.lot().isFree()).toList(),
                others.stream().filter(o -> o.lot().isFree()).toList(),
                true);
    }

    public boolean isEmpty() {
        return tasks.isEmpty() && materials.isEmpty() && others.isEmpty();
    }

    public Hours hours() {
        return Hours.sum(tasks.stream().map(TaskRow::hours).toList());
    }

    public Money material() {
        return Money.sum(materials.stream().map(MaterialRow::amount).toList());
    }

    public Money other() {
        return Money.sum(others.stream().map(OtherRow::amount).toList());
    }

    /** An issued bid as a row of a list; without its document and its lines. */
    public record BidRow(
            UUID id,
            BidKind kind,
            String number,
            String title,
            BidStanding standing,
            LocalDate issuedOn,
            LocalDate validUntil,
            Money price,
            Money total,
            @Nullable LocalDate acceptedOn,
            String acceptedName) {}
}
