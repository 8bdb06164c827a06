package org.tallywright.takeoff;

import java.math.BigDecimal;
import java.util.List;
import org.tallywright.cutting.BoardRules;
import org.tallywright.shared.Length;

/**
 * How a material comes. Of sheet, bar and board only the sizes that matter for it are above nothing.
 *
 * @param thickness of a board: the rough one it is tallied by
 * @param barLengths what bars are sold in
 * @param trim off each edge of a sheet, off each end of a bar or board
 * @param edgeLoss off each edge of a board until it is straight
 * @param defectsPercent of a board's length, cut out
 */
public record MaterialShape(
        Form form,
        Length thickness,
        Length sheetLength,
        Length sheetWidth,
        List<Length> barLengths,
        Length shortest,
        Length longest,
        Length narrowest,
        Length widest,
        String surfacing,
        Length kerf,
        Length trim,
        Length edgeLoss,
        Length roughLength,
        Length roughWidth,
        BigDecimal defectsPercent) {
    public enum Form {
        SHEET,
        BAR,
        BOARD
    }

    public MaterialShape {
        barLengths = barLengths.stream().distinct().sorted().toList();
        defectsPercent = defectsPercent.setScale(2, java.math.RoundingMode.HALF_UP);
    }

    BoardRules boards() {
        return new BoardRules(
                shortest.units(),
                longest.units(),
                narrowest.units(),
                widest.units(),
                kerf.units(),
                trim.units(),
                edgeLoss.units(),
                roughLength.units(),
                roughWidth.units(),
                defectsPercent.movePointLeft(2).doubleValue());
    }
}
