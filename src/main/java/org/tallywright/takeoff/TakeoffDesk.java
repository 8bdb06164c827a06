package org.tallywright.takeoff;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
    private final Materials materials;
    private final ShopConventions shop;
    private final JdbcClient jdbc;

    TakeoffDesk(
            JobDesk jobs,
            PieceFacts pieces,
            RecipeBook recipes,
            Parts parts,
            PieceTakeoffs takeoffs,
            Materials materials,
            ShopConventions shop,
            JdbcClient jdbc) {
        this.jobs = jobs;
        this.pieces = pieces;
        this.recipes = recipes;
        this.parts = parts;
        this.takeoffs = takeoffs;
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
                chosen(recipe, answers),
                shop.units());
        wrong.addAll(worked.problems());
        return new Worked(worked.settings(), worked.parts(), wrong);
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
     * Keeps the answers and puts the parts of the formulas in place of those they gave before.
     *
     * @throws Refused with the first problem of each setting, where nothing can be worked out
     */
    @Transactional
    public int takeOff(UUID job, UUID pieceId, @Nullable Integer version, Map<String, String> answers, UUID by) {
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
        replace(job, pieceId, worked.parts());
        return worked.parts().size();
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

    private void replace(UUID job, UUID pieceId, List<PartDetails> wanted) {
        List<Part> before = parts.byFormulas(pieceId);
        if (before.stream().map(Part::details).toList().equals(wanted)) {
            return;
        }
        parts.deleteAll(before);
        parts.flush();
        guardRoom(job, wanted.size());
        int position = parts.lastPosition(pieceId);
        for (PartDetails part : wanted) {
            parts.save(new Part(Ids.next(), job, pieceId, ++position, part, false));
        }
    }

    private void guardRoom(UUID job, int more) {
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
            parts.save(new Part(id, job, pieceId, parts.lastPosition(pieceId) + 1, details, true));
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
                parts.save(new Part(id, job, pieceId, ++position, list.get(i), true));
            }
        }
    }

    /** Takes a part out; one that is gone is a repeat. */
    @Transactional
    public void remove(UUID job, UUID pieceId, UUID id, UUID by) {
        jobs.holdOpen(job, by);
        parts.findById(id).ifPresent(part -> {
            if (!part.isOf(job, pieceId)) {
                throw new NotHere("part");
            }
            parts.delete(part);
        });
    }
}
