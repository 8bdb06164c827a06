package org.tallywright.takeoff;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.catalog.MaterialCard;
import org.tallywright.catalog.Materials;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.Ids;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.ShopConventions;
import org.tallywright.shared.Stale;
import org.tallywright.takeoff.formula.Formula;
import org.tallywright.takeoff.formula.FormulaError;

/** Takes a piece off: works its formulas out and keeps the parts; parts listed by hand stay beside them. */
@Service
public class TakeoffDesk {
    /** Answers under this name choose a material: {@code material.case}. */
    public static final String MATERIAL = "material.";

    private static final int MOST_ROWS = 1_000;

    private final JobDesk jobs;
    private final PieceFacts pieces;
    private final RecipeBook recipes;
    private final Parts parts;
    private final PieceTakeoffs takeoffs;
    private final LeftOutParts leftOut;
    private final Materials materials;
    private final ShopConventions shop;
    private final JdbcClient jdbc;

    TakeoffDesk(
            JobDesk jobs,
            PieceFacts pieces,
            RecipeBook recipes,
            Parts parts,
            PieceTakeoffs takeoffs,
            LeftOutParts leftOut,
            Materials materials,
            ShopConventions shop,
            JdbcClient jdbc) {
        this.jobs = jobs;
        this.pieces = pieces;
        this.recipes = recipes;
        this.parts = parts;
        this.takeoffs = takeoffs;
        this.leftOut = leftOut;
        this.materials = materials;
        this.shop = shop;
        this.jdbc = jdbc;
    }

    /** @param version null where nothing was answered yet */
    public record Answered(
            Map<String, String> answers, @Nullable Integer version) {}

    @Transactional(readOnly = true)
    public Answered answered(UUID piece) {
        return jdbc.sql("select answers, version from piece_takeoff where id = ?")
                .param(piece)
                .query((row, n) -> new Answered(Answers.read(row.getString(1)), row.getInt(2)))
                .optional()
                .orElseGet(() -> new Answered(Map.of(), null));
    }

    /** What each piece of a job answers, by piece; one query, however many. */
    @Transactional(readOnly = true)
    public Map<UUID, Map<String, String>> answeredOf(UUID job) {
        Map<UUID, Map<String, String>> answers = new HashMap<>();
        jdbc.sql("select id, answers from piece_takeoff where job_id = ?")
                .param(job)
                .query(row -> {
                    answers.put(row.getObject(1, UUID.class), Answers.read(row.getString(2)));
                });
        return answers;
    }

    /** The formulas of a piece worked out with those answers; nothing is kept. */
    @Transactional(readOnly = true)
    public Worked worked(PieceFacts.Fact piece, Recipe recipe, Map<String, String> answers) {
        return worked(piece, recipe, answers, materials.all());
    }

    /** The same with the catalogue's materials at hand. */
    Worked worked(PieceFacts.Fact piece, Recipe recipe, Map<String, String> answers, List<MaterialCard> all) {
        Map<String, Formula> own = new HashMap<>();
        List<RecipeError> wrong = new ArrayList<>();
        for (Recipe.Setting setting : recipe.settings()) {
            String typed = answers.getOrDefault(setting.name(), "");
            if (!typed.isBlank()) {
                try {
                    own.put(setting.name(), Formula.parse(typed));
                } catch (FormulaError error) {
                    wrong.add(new RecipeError(0, setting.name(), error.sentence()));
                }
            }
        }
        Worked worked = Workings.of(
                recipe,
                Workings.sizes(piece.width(), piece.height(), piece.depth()),
                own,
                chosen(recipe, answers, all),
                shop.units());
        wrong.addAll(worked.problems());
        return new Worked(worked.settings(), worked.parts(), worked.rules(), wrong);
    }

    /** The material of each slot: the piece's own choice, else the catalogue's by code; one that is gone is missing. */
    @Transactional(readOnly = true)
    public Map<String, UUID> chosen(Recipe recipe, Map<String, String> answers) {
        return chosen(recipe, answers, materials.all());
    }

    static Map<String, UUID> chosen(Recipe recipe, Map<String, String> answers, List<MaterialCard> all) {
        Map<String, UUID> byCode = new HashMap<>();
        Map<String, UUID> byId = new HashMap<>();
        for (MaterialCard card : all) {
            byCode.put(card.code(), card.id());
            byId.put(card.id().toString(), card.id());
        }
        Map<String, UUID> chosen = new HashMap<>();
        for (Recipe.Slot slot : recipe.slots()) {
            UUID own = byId.get(answers.getOrDefault(MATERIAL + slot.name(), ""));
            UUID usual = byCode.get(slot.code());
            if (own != null || usual != null) {
                chosen.put(slot.name(), own == null ? java.util.Objects.requireNonNull(usual) : own);
            }
        }
        return chosen;
    }

    /**
     * Taken off, in lines of parts.
     *
     * @param changed by hand before, and left as they are
     * @param leftOut by hand before
     */
    public record Taken(int lines, int changed, int leftOut) {}

    /**
     * Keeps the answers and puts the parts of the formulas in place of those they gave before. What was changed or left out by
     * hand stays so.
     *
     * @throws Refused with the first problem of each setting, where nothing can be worked out
     */
    @Transactional
    public Taken takeOff(UUID job, UUID pieceId, @Nullable Integer version, Map<String, String> answers, UUID by) {
        jobs.holdOpen(job, by);
        PieceFacts.Fact piece = pieces.of(job, pieceId);
        Recipe recipe = recipes.of(piece.kindId()).recipe();
        Worked worked = worked(piece, recipe, answers);
        if (!worked.problems().isEmpty()) {
            RecipeError first = worked.problems().get(0);
            throw new Refused(
                    first.line() == 0 ? first.column() : "",
                    first.line() == 0 ? first.sentence() : first.column() + ": " + first.sentence());
        }
        keep(job, pieceId, version, Answers.write(answers));
        Set<String> changed = parts.changedRules(pieceId);
        Set<String> out = leftOut.of(pieceId);
        Map<String, PartDetails> wanted = ByFormulas.wanted(worked, changed::contains, out);
        replace(job, pieceId, wanted);
        changed.retainAll(worked.rules());
        out.retainAll(worked.rules());
        return new Taken(wanted.size(), changed.size(), out.size());
    }

    private void keep(UUID job, UUID pieceId, @Nullable Integer version, String answers) {
        PieceTakeoff kept = takeoffs.findById(pieceId).orElse(null);
        if (kept == null) {
            if (version != null) {
                throw new Stale("takeoff");
            }
            takeoffs.save(new PieceTakeoff(pieceId, job, answers));
        } else if (!kept.answers().equals(answers)) {
            if (!kept.isAt(version)) {
                throw new Stale("takeoff", List.of(new Stale.Row("Answers", kept.answers(), answers)));
            }
            kept.answer(answers);
        }
    }

    private void replace(UUID job, UUID pieceId, Map<String, PartDetails> wanted) {
        List<Part> before = parts.byFormulas(pieceId);
        if (before.stream()
                .map(part -> Map.entry(part.rule(), part.details()))
                .toList()
                .equals(List.copyOf(wanted.entrySet()))) {
            return;
        }
        parts.deleteAll(before);
        parts.flush();
        guardRoom(job, wanted.size());
        int position = parts.lastPosition(pieceId);
        for (Map.Entry<String, PartDetails> part : wanted.entrySet()) {
            parts.save(Part.worked(Ids.next(), job, pieceId, ++position, part.getValue(), part.getKey()));
        }
    }

    void guardRoom(UUID job, int more) {
        if (parts.ofJob(job) + more > MOST_ROWS) {
            throw new Refused(
                    "A job has room for " + MOST_ROWS + " lines of parts; put parts that are alike into one.");
        }
    }

    /** Adds a part by hand, or changes one; a changed part is left alone by the formulas from then on. */
    @Transactional
    public void save(UUID job, UUID pieceId, UUID id, @Nullable Integer version, PartDetails details, UUID by) {
        jobs.holdOpen(job, by);
        pieces.of(job, pieceId);
        guardMaterial(details);
        Part kept = parts.findById(id).orElse(null);
        if (kept == null) {
            if (version != null) {
                throw new NotHere("part");
            }
            guardRoom(job, 1);
            parts.save(Part.listed(id, job, pieceId, parts.lastPosition(pieceId) + 1, details));
            return;
        }
        if (!kept.isOf(job, pieceId)) {
            throw new NotHere("part");
        }
        if (!kept.details().equals(details)) {
            if (!kept.isAt(version)) {
                throw new Stale("part");
            }
            kept.change(details);
        }
    }

    private void guardMaterial(PartDetails details) {
        UUID material = details.materialId();
        if (material != null && materials.find(material).isEmpty()) {
            throw new Refused("material", "Pick a material of the catalogue.");
        }
    }

    /** Adds a whole list; sent twice it is there once, as each line's id follows from the form's. */
    @Transactional
    public void addAll(UUID job, UUID pieceId, UUID form, List<PartDetails> list, UUID by) {
        jobs.holdOpen(job, by);
        pieces.of(job, pieceId);
        guardRoom(job, list.size());
        int position = parts.lastPosition(pieceId);
        for (int i = 0; i < list.size(); i++) {
            UUID id = UUID.nameUUIDFromBytes((form + "/" + i).getBytes(java.nio.charset.StandardCharsets.UTF_8));
            guardMaterial(list.get(i));
            if (!parts.existsById(id)) {
                parts.save(Part.listed(id, job, pieceId, ++position, list.get(i)));
            }
        }
    }

    /** Takes a part out, and its rule with it; one that is gone is a repeat. */
    @Transactional
    public void remove(UUID job, UUID pieceId, UUID id, UUID by) {
        jobs.holdOpen(job, by);
        parts.findById(id).ifPresent(part -> {
            if (!part.isOf(job, pieceId)) {
                throw new NotHere("part");
            }
            parts.delete(part);
            if (!part.rule().isEmpty()) {
                leftOut.add(job, pieceId, part.rule());
            }
        });
    }

    /** The rules left out of a piece, in the order of their names. */
    @Transactional(readOnly = true)
    public Set<String> leftOut(UUID piece) {
        return leftOut.of(piece);
    }

    /**
     * Brings a part that was left out back, as the formulas make it now; said again it is a repeat.
     *
     * @return whether the formulas still make it
     */
    @Transactional
    public boolean bringBack(UUID job, UUID pieceId, String rule, UUID by) {
        jobs.holdOpen(job, by);
        PieceFacts.Fact piece = pieces.of(job, pieceId);
        if (!leftOut.of(pieceId).contains(rule)) {
            return true;
        }
        leftOut.takeBack(pieceId, rule);
        Recipe recipe = recipes.of(piece.kindId()).recipe();
        PartDetails part =
                worked(piece, recipe, answered(pieceId).answers()).byRule().get(rule);
        if (part != null) {
            guardRoom(job, 1);
            parts.save(Part.worked(Ids.next(), job, pieceId, parts.lastPosition(pieceId) + 1, part, rule));
        }
        return part != null;
    }

    /** Whether what was taken off of a piece is no longer what its formulas come to. */
    public static boolean isStale(List<PartRows.Row> parts, Worked worked, Set<String> leftOut) {
        return ByFormulas.isStale(parts, worked, leftOut);
    }
}
