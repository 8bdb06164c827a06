package org.tallywright.takeoff;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.calibration.YieldBook;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;
import org.tallywright.jobs.JobDesk;
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
    private final JobDesk jobs;
    private final PartRows rows;
    private final PieceFacts pieces;
    private final RecipeBook recipes;
    private final TakeoffDesk desk;
    private final Materials materials;
    private final MaterialShapes shapes;
    private final OwnedPieces owned;
    private final MaterialLedger ledger;
    private final Layouts layouts;
    private final ShopConventions shop;
    private final StalePieces stale;

    BuyLister(
            JobDesk jobs,
            PartRows rows,
            PieceFacts pieces,
            RecipeBook recipes,
            TakeoffDesk desk,
            Materials materials,
            MaterialShapes shapes,
            OwnedPieces owned,
            MaterialLedger ledger,
            Layouts layouts,
            ShopConventions shop,
            StalePieces stale) {
        this.jobs = jobs;
        this.rows = rows;
        this.pieces = pieces;
        this.recipes = recipes;
        this.desk = desk;
        this.materials = materials;
        this.shapes = shapes;
        this.owned = owned;
        this.ledger = ledger;
        this.layouts = layouts;
        this.shop = shop;
        this.stale = stale;
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
        List<MaterialCard> all = materials.all();
        Map<UUID, Quantity> supplies = supplies(job, parts, all, without);
        Map<UUID, MaterialCard> cards = new LinkedHashMap<>();
        all.stream()
                .filter(card -> byMaterial.containsKey(card.id()) || supplies.containsKey(card.id()))
                .forEach(card -> cards.put(card.id(), card));
        Map<UUID, MaterialShapes.Kept> forms = shapes.of(cards.values());
        Map<UUID, OwnedPieces.Owned> here = owned.of(jobs.get(job).number());
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
                lines.add(YieldReckoning.supply(card, supply, has, expected));
            }
        });
        return new BuyList(lines, without, unused(all, here, lines), stale.of(job, parts, all));
    }

    /** Held for the job while something else was laid out: a size, a material or a piece has changed since. */
    private static List<BuyLine.Offcut> unused(
            List<MaterialCard> all, Map<UUID, OwnedPieces.Owned> here, List<BuyLine> lines) {
        Set<UUID> used = lines.stream()
                .flatMap(line -> line.offcuts().stream())
                .map(BuyLine.Offcut::id)
                .collect(Collectors.toSet());
        Map<UUID, String> names = all.stream().collect(Collectors.toMap(MaterialCard::id, MaterialCard::name));
        List<BuyLine.Offcut> unused = new ArrayList<>();
        here.forEach((material, owned) -> owned.used().stream()
                .filter(offcut -> offcut.held() && !used.contains(offcut.id()))
                .map(offcut -> new BuyLine.Offcut(
                        offcut.id(), names.getOrDefault(material, "Material") + ", " + offcut.words(), true))
                .forEach(unused::add));
        unused.sort(Comparator.comparing(BuyLine.Offcut::words).thenComparing(BuyLine.Offcut::id));
        return unused;
    }

    /** Hardware, edge band and the like, by the supply lines of the formulas, for all pieces alike. */
    private Map<UUID, Quantity> supplies(
            UUID job, List<PartRows.Row> parts, List<MaterialCard> all, List<String> without) {
        Map<UUID, List<PartDetails>> byPiece = new HashMap<>();
        parts.forEach(row ->
                byPiece.computeIfAbsent(row.pieceId(), p -> new ArrayList<>()).add(row.details()));
        Map<UUID, Quantity> supplies = new HashMap<>();
        Map<String, Recipe> ofKind = new HashMap<>();
        Map<UUID, Map<String, String>> answers = desk.answeredOf(job);
        for (PieceFacts.Fact piece : pieces.ofJob(job)) {
            List<PartDetails> own = byPiece.get(piece.id());
            if (own != null) {
                Recipe recipe = ofKind.computeIfAbsent(
                        String.valueOf(piece.kindId()),
                        k -> recipes.of(piece.kindId()).recipe());
                Map<String, String> said = answers.getOrDefault(piece.id(), Map.of());
                Map<String, Amount> totals = PartQuantities.totals(piece, recipe, own, said);
                Map<String, UUID> chosen = TakeoffDesk.chosen(recipe, said, all);
                for (Recipe.Supply supply : recipe.supplies()) {
                    MaterialCard card = card(all, chosen.get(supply.slot()));
                    if (!counted(supply, card, totals, piece.count(), supplies)) {
                        without.add(supply.slot() + ", " + piece.name());
                    }
                }
            }
        }
        return supplies;
    }

    private static @Nullable MaterialCard card(List<MaterialCard> all, @Nullable UUID id) {
        return all.stream().filter(card -> card.id().equals(id)).findFirst().orElse(null);
    }

    private static boolean counted(
            Recipe.Supply supply,
            @Nullable MaterialCard card,
            Map<String, Amount> totals,
            int pieces,
            Map<UUID, Quantity> into) {
        try {
            Amount amount = supply.formula().value(totals);
            if (amount.signum() <= 0) {
                // Slides of another length, say: no matter whether the catalogue has them.
                return true;
            }
            if (card == null) {
                return false;
            }
            into.merge(card.id(), quantity(card, amount, pieces), Quantity::plus);
            return true;
        } catch (FormulaError | NotUnderstood cannot) {
            return false;
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
