package org.tallywright.web.stick;

import java.util.ArrayList;
import java.util.List;

/** Hangs things side by side in lanes, so that no two in a lane meet. */
final class Lanes {
    private final List<List<double[]>> taken = new ArrayList<>();

    /** The first lane in which the stretch is free; the stretch is taken there. */
    int lane(double from, double to) {
        for (int lane = 0; ; lane++) {
            if (lane == taken.size()) {
                taken.add(new ArrayList<>());
            }
            List<double[]> others = taken.get(lane);
            if (others.stream().noneMatch(other -> from < other[1] && other[0] < to)) {
                others.add(new double[] {from, to});
                return lane;
            }
        }
    }

    int count() {
        return taken.size();
    }
}
