package org.tallywright.estimates;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
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
public record EstimateSheet(
        List<TaskRow> tasks,
        List<MaterialRow> materials,
        List<OtherRow> others,
        boolean sold,
        List<OptionRow> options) {

    /** Without options. */
    public EstimateSheet(List<TaskRow> tasks, List<MaterialRow> materials, List<OtherRow> others, boolean sold) {
        this(tasks, materials, others, sold, List.of());
    }

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
        TaskRow freed() {
            return new TaskRow(
                    id,
                    version,
                    pieceName,
                    stageName,
                    stagePosition,
                    kindCode,
                    hourClass,
                    name,
                    quantity,
                    unit,
                    startingUnitHours,
                    unitHours,
                    hours,
                    lot.freed());
        }

        /** Whether the rate differs from the catalogue's. */
        public boolean isAdjusted() {
            return unitHours.compareTo(startingUnitHours) != 0;
        }
    }

    /**
     * @param yield of this line
     * @param startingYield the catalogue's
     * @param purchaseStep the smallest quantity that can be bought
     * @param safe of a laid out line: charged four times in five at most; null where the purchase is net / yield
     * @param covered of a laid out line: what agreed lines and offcuts give of the whole need
     * @param stock of the purchase, taken from stock
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
            @Nullable Quantity safe,
            Quantity covered,
            Quantity stock,
            UnitPrice price,
            Money freight,
            Money amount,
            Lot lot) {
        MaterialRow freed() {
            return new MaterialRow(
                    id,
                    version,
                    pieceId,
                    pieceName,
                    materialId,
                    name,
                    unit,
                    net,
                    yield,
                    startingYield,
                    purchaseStep,
                    purchase,
                    safe,
                    covered,
                    stock,
                    price,
                    freight,
                    amount,
                    lot.freed());
        }

        /** What is left to buy beside the stock. */
        public Quantity toBuy() {
            return purchase.minus(stock);
        }
    }

    public record OtherRow(UUID id, int version, CostSort sort, String description, Money amount, Lot lot) {
        OtherRow freed() {
            return new OtherRow(id, version, sort, description, amount, lot.freed());
        }
    }

    /**
     * Where a line stands between working sum and contract.
     *
     * @param soldIn number of the accepted bid that holds it, or empty
     * @param offeredIn number of a change order that is out with it, or empty
     * @param option that holds it, or null for the bid itself
     */
    public record Lot(
            String soldIn, String offeredIn, @Nullable UUID option) {
        public Lot(String soldIn, String offeredIn) {
            this(soldIn, offeredIn, null);
        }

        Lot freed() {
            return new Lot(soldIn, offeredIn);
        }

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

    /** The lines that the next bid itself would hold: all that are in no option until one is accepted. */
    public EstimateSheet next() {
        return of(lot -> lot.option() == null && (!sold || lot.isFree()));
    }

    /** The lines that are in no option. */
    public EstimateSheet base() {
        return of(lot -> lot.option() == null);
    }

    /** Without what the client left out. */
    public EstimateSheet offered() {
        Set<UUID> left = options.stream()
                .filter(option -> option.fate().equals(OptionRow.DECLINED))
                .map(OptionRow::id)
                .collect(Collectors.toSet());
        return of(lot -> !left.contains(lot.option()));
    }

    /** The lines of an option, whatever became of it. */
    public EstimateSheet option(UUID option) {
        return of(lot -> option.equals(lot.option()));
    }

    /** As a sheet of its own, whose lines are in no option. */
    EstimateSheet freed() {
        return new EstimateSheet(
                tasks.stream().map(TaskRow::freed).toList(),
                materials.stream().map(MaterialRow::freed).toList(),
                others.stream().map(OtherRow::freed).toList(),
                sold);
    }

    private EstimateSheet of(Predicate<Lot> which) {
        return new EstimateSheet(
                tasks.stream().filter(t -> which.test(t.lot())).toList(),
                materials.stream().filter(m -> which.test(m.lot())).toList(),
                others.stream().filter(o -> which.test(o.lot())).toList(),
                sold,
                options);
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
            String acceptedName,
            @Nullable LocalDate declinedOn) {}
}
