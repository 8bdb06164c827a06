package org.tallywright.cutting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tallywright.Draw;
import org.tallywright.Tries;

/** In sixteenths of an inch. */
class BoardBuyerTest {
    private static final long INCH = 16;

    /**
     * No outside value for buying boards is known here. The range is our own figure, .556, held so that a change is seen. By
     * hand, boards of 10 ft x 7 in on the mean give at most 118 / 120 of their length between the end trims, of that .92
     * without defects, 6 1/2 / 7 of their width between the edges, and the blanks are .867 part: .73.
     */
    @Test
    void narrowPartsFromGoodBoardsTakeWhatTheyTook() {
        List<BoardPart> parts = new ArrayList<>();
        for (int n = 0; n < 12; n++) {
            parts.add(new BoardPart(30 * INCH, 2 * INCH));
            parts.add(new BoardPart(18 * INCH, 3 * INCH));
        }

        BoardNeed need = BoardBuyer.need(parts, boards(0.08));

        double most = 118 / 120.0 * 0.92 * (6.5 / 7) * ((30.0 * 2 + 18 * 3) / (31 * 2.25 + 19 * 3.25));
        assertThat((double) need.net() / need.likely()).isBetween(0.53, 0.58).isLessThan(most);
        assertThat(need.safe()).isGreaterThanOrEqualTo(need.likely());
        assertThat(need.unplaced()).isEmpty();
    }

    @Test
    void aSeatWiderThanABoardIsGluedUp() {
        BoardNeed need = BoardBuyer.need(List.of(new BoardPart(60 * INCH, 20 * INCH)), boards(0));

        // Between its edges and with its joints a middling board of 7 in gives 6 1/4: three are 18 3/4, too few.
        assertThat(need.staves()).containsExactly(4);
        assertThat(need.likely()).isGreaterThan(need.net());
    }

    @Test
    void namesWhatIsLongerThanAnyBoard() {
        assertThat(BoardBuyer.need(List.of(new BoardPart(200 * INCH, 3 * INCH)), boards(0))
                        .unplaced())
                .containsExactly(0);
    }

    @Test
    void neverBuysLessThanTheParts() {
        Tries.of(60, draw -> {
            List<BoardPart> parts =
                    draw.list(0, 30, () -> new BoardPart(draw.between(1, 100 * INCH), draw.between(1, 30 * INCH)));
            BoardNeed need = BoardBuyer.need(parts, boards(defects(draw)));
            if (need.unplaced().isEmpty()) {
                assertThat(need.likely()).isGreaterThanOrEqualTo(need.net());
                assertThat(need.safe()).isGreaterThanOrEqualTo(need.likely());
            }
        });
    }

    private static double defects(Draw draw) {
        return draw.between(0, 40) / 100.0;
    }

    private static BoardRules boards(double defects) {
        return new BoardRules(
                8 * 12 * INCH, 12 * 12 * INCH, 5 * INCH, 9 * INCH, 2, INCH, INCH / 4, INCH, INCH / 4, defects);
    }
}
