package org.tallywright.demo;

import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.tallywright.takeoff.PieceFacts;
import org.tallywright.takeoff.Recipe;
import org.tallywright.takeoff.RecipeBook;
import org.tallywright.takeoff.TakeoffDesk;

/** The parts of every piece of an open job, by the formulas of its kind. */
@Component
class DemoTakeoffs {
    private final PieceFacts pieces;
    private final RecipeBook recipes;
    private final TakeoffDesk desk;

    DemoTakeoffs(PieceFacts pieces, RecipeBook recipes, TakeoffDesk desk) {
        this.pieces = pieces;
        this.recipes = recipes;
        this.desk = desk;
    }

    void load(DemoLedger ledger, UUID owner) {
        ledger.jdbc()
                .queryForList("select id from job where state <> 'closed' order by number", UUID.class)
                .forEach(job -> pieces.ofJob(job).forEach(piece -> takeOff(job, piece, owner)));
    }

    private void takeOff(UUID job, PieceFacts.Fact piece, UUID owner) {
        Recipe recipe = recipes.of(piece.kindId()).recipe();
        boolean whole = !recipe.parts().isEmpty()
                && desk.worked(piece, recipe, Map.of()).problems().isEmpty();
        if (whole) {
            desk.takeOff(job, piece.id(), null, Map.of(), owner);
        }
    }
}
