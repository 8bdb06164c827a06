package org.tallywright.takeoff;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.calibration.YieldBook;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;
import org.tallywright.materials.MaterialLedger;
import org.tallywright.shared.NotUnderstood;
import org.tallywright.shared.Quantity;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Unit;
import org.tallywright.takeoff.formula.Amount;
import org.tallywright.takeoff.formula.FormulaError;

/** Works out what a job needs bought, material by material, stock and offcuts first. */
@Service
public class BuyLister {
    private final PartRows rows;
    private final PieceFacts pieces;
    private final RecipeBook recipes;
    private final PartQuantities quantities;
    private final TakeoffDesk desk;
    private final Materials materials;
    private final MaterialShapes shapes;
    private final OwnedPieces owned;
    private final MaterialLedger ledger;
    private final Layouts layouts;
    private final ShopConventions shop;

    BuyLister(
            PartRows rows,
            PieceFacts pieces,
            RecipeBook recipes,
            PartQuantities quantities,
            TakeoffDesk desk,
            Materials materials,
            MaterialShapes shapes,
            OwnedPieces owned,
            MaterialLedger ledger,
            Layouts layouts,
            ShopConventions shop) {
        this.rows = rows;
        this.pieces = pieces;
        this.recipes = recipes;
        this.quantities = quantities;
        this.desk = desk;
        this.materials = materials;
        this.shapes = shapes;
        this.owned = owned;
        this.ledger = ledger;
        this.layouts = layouts;
        this.shop = shop;
    }

    @Transactional(readOnly = true)
    public BuyList of(UUID job) {
        Map<UUID, List<PartRows.Row>> byMaterial = new LinkedHashMap<>();
        List<String> without = new ArrayList<>();
        List<PartRows.Row> parts = rows.ofJob(job);
        for (PartRows.Row row : parts) {
            UUID material = row.details().materialId();
            if (material == null) {
                without.add(row.number() + " " + row.details().name() + ", " + row.pieceName());
            } else {
                byMaterial.computeIfAbsent(material, m -> new ArrayList<>()).add(row);
            }
        }
        Map<UUID, Quantity> supplies = supplies(job, parts, without);
        Map<UUID, MaterialCard> cards = new LinkedHashMap<>();
        materials.all().stream()
                .filter(card -> byMaterial.containsKey(card.id()) || supplies.containsKey(card.id()))
                .forEach(card -> cards.put(card.id(), card));
        Map<UUID, MaterialShapes.Kept> forms = shapes.of(cards.values());
        Map<UUID, OwnedPieces.Owned> here = owned.all();
        YieldBook book = YieldBook.learn(ledger.finished());
        MaterialLayout layout = new MaterialLayout(layouts, shop.units());
        List<BuyLine> lines = new ArrayList<>();
        cards.values().forEach(card -> {
            YieldBook.Expected expected = book.of(card.id(), card.startingYield());
            OwnedPieces.Owned has = here.getOrDefault(card.id(), OwnedPieces.Owned.NOTHING);
            MaterialShapes.Kept form = forms.get(card.id());
            List<PartRows.Row> cut = byMaterial.get(card.id());
            if (cut != null) {
                lines.add(layout.line(card, form == null ? null : form.shape(), cut, has, expected));
            }
            Quantity supply = supplies.get(card.id());
            if (supply != null) {
                lines.add(MaterialLayout.supply(card, supply, has, expected));
            }
        });
        return new BuyList(lines, without);
    }

    /** Hardware, edge band and the like, by the supply lines of the formulas, for all pieces alike. */
    private Map<UUID, Quantity> supplies(UUID job, List<PartRows.Row> parts, List<String> without) {
        Map<UUID, List<PartDetails>> byPiece = new HashMap<>();
        parts.forEach(row ->
                byPiece.computeIfAbsent(row.pieceId(), p -> new ArrayList<>()).add(row.details()));
        Map<UUID, Quantity> supplies = new HashMap<>();
        for (PieceFacts.Fact piece : pieces.ofJob(job)) {
            List<PartDetails> own = byPiece.get(piece.id());
            if (own != null) {
                Recipe recipe = recipes.of(piece.kindId()).recipe();
                if (!recipe.supplies().isEmpty()) {
                    supplies(piece, recipe, own, supplies, without);
                }
            }
        }
        return supplies;
    }

    private void supplies(
            PieceFacts.Fact piece,
            Recipe recipe,
            List<PartDetails> parts,
            Map<UUID, Quantity> into,
            List<String> without) {
        Map<String, Amount> totals = quantities.totals(piece, recipe, parts);
        Map<String, UUID> chosen = desk.chosen(recipe, desk.answered(piece.id()).answers());
        for (Recipe.Supply supply : recipe.supplies()) {
            UUID material = chosen.get(supply.slot());
            MaterialCard card =
                    material == null ? null : materials.find(material).orElse(null);
            try {
                Amount amount = supply.formula().value(totals);
                if (card == null) {
                    without.add(supply.slot() + ", " + piece.name());
                } else if (amount.signum() > 0) {
                    Quantity quantity = quantity(card, amount, piece.count());
                    into.merge(card.id(), quantity, Quantity::plus);
                }
            } catch (FormulaError | NotUnderstood cannot) {
                without.add(supply.slot() + ", " + piece.name());
            }
        }
    }

    private static Quantity quantity(MaterialCard card, Amount amount, int pieces) {
        Unit unit;
        try {
            unit = Unit.of(card.unit());
        } catch (NotUnderstood ownWord) {
            unit = Unit.EACH;
        }
        return Measured.in(unit, amount, pieces);
    }

    /** The smallest number of whole purchase steps that is at least this. */
    static Quantity wholeSteps(BigDecimal amount, BigDecimal step) {
        return Quantity.of(
                amount.divide(step, 0, java.math.RoundingMode.CEILING).multiply(step));
    }
}
