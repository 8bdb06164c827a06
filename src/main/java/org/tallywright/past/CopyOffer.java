package org.tallywright.past;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.tallywright.jobs.JobRef;
import org.tallywright.jobs.PieceDetails;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.Unit;
import org.tallywright.shared.UnitPrice;
import org.tallywright.takeoff.TakeoffCopy;

/**
 * What could be copied into a job, for sizes that are given; nothing is written yet.
 *
 * @param groups the whole job's own lines first, where there are any, then piece by piece
 * @param besides hours of the past job that are on no piece, where one piece alone is copied
 */
public record CopyOffer(JobRef into, PastJob from, List<Group> groups, List<CostLine> costs, int besides) {

    /**
     * @param piece null for the whole job's own tasks and material
     * @param now name and sizes of the piece to be; null as above
     * @param parts null where there are none to take over
     */
    public record Group(
            @Nullable PastPiece piece,
            @Nullable PieceDetails now,
            List<TaskLine> tasks,
            List<MaterialLine> materials,
            TakeoffCopy.@Nullable Found parts) {

        /** Parts listed by hand fit only a piece of the same sizes. */
        public boolean sameSizes() {
            return piece != null && now != null && PastPiece.shape(now).equals(PastPiece.shape(piece.details()));
        }
    }

    /**
     * @param kindId the kind it will be of: that of then, or the one that is counted as today
     * @param ticked whether it is taken unless somebody unticks it
     * @param notes what there was, and what happened to the quantity
     */
    public record TaskLine(
            PastTask past,
            UUID kindId,
            Unit unit,
            Quantity quantity,
            List<HoursChoice> choices,
            boolean ticked,
            List<String> notes) {

        public Optional<HoursChoice> choice(String code) {
            return choices.stream().filter(c -> c.basis().code().equals(code)).findFirst();
        }

        /** {@code As in 25-007, Bookcase: 14 h 30 there for 22 sf}. */
        public String origin(String what) {
            return "As in " + what + ": " + past.words();
        }
    }

    /** @param price of today; else that of then; null where neither is known */
    public record MaterialLine(
            PastMaterial past,
            Quantity net,
            @Nullable UnitPrice price,
            boolean priceOfToday,
            boolean ticked,
            List<String> notes) {

        /** {@code As in 25-007, Bookcase: 33 bf in the work there, 50 bf bought}. */
        public String origin(String what) {
            return "As in " + what + ": " + past.words();
        }
    }

    /** @param here the job has one that is called the same, so it is not ticked */
    public record CostLine(PastCost past, boolean here) {}

    /** {@code 25-007, Bookcase}, or {@code 25-007} for a whole job. */
    public String what(@Nullable PastPiece piece) {
        return piece == null
                ? from.ref().number()
                : from.ref().number() + ", " + piece.details().name();
    }
}
