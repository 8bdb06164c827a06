package org.tallywright.catalog;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;
import org.tallywright.shared.Typed;
import org.tallywright.shared.jpa.SaveTurn;

/** Adds, renames, moves and sets aside stages. A stage never goes: jobs keep theirs. */
@Service
@Transactional
public class StageDesk {
    private static final int MOST = 24;

    private final StageRows rows;
    private final TaskKinds taskKinds;
    private final SaveTurn turn;

    StageDesk(StageRows rows, TaskKinds taskKinds, SaveTurn turn) {
        this.rows = rows;
        this.taskKinds = taskKinds;
        this.turn = turn;
    }

    public void save(SaveStage save) {
        turn.of(save.id());
        String name = name(save);
        Optional<Stage> kept = rows.findById(save.id());
        if (kept.isEmpty()) {
            add(save.id(), name);
        } else if (!kept.get().name().equals(name)) {
            rename(kept.get(), save, name);
        }
    }

    /** Swaps the stage with the one before it (or after it); at the end of the row nothing moves. */
    public void move(UUID id, boolean earlier) {
        List<Stage> all = rows.findAllByOrderByPosition();
        int at = IntStream.range(0, all.size())
                .filter(i -> all.get(i).id().equals(id))
                .findFirst()
                .orElseThrow(() -> new NotHere("stage"));
        int to = earlier ? at - 1 : at + 1;
        if (to >= 0 && to < all.size()) {
            int position = all.get(at).position();
            all.get(at).moveTo(all.get(to).position());
            all.get(to).moveTo(position);
        }
    }

    public void use(UUID id, boolean inUse) {
        Stage stage = rows.findById(id).orElseThrow(() -> new NotHere("stage"));
        long kinds = taskKinds.active().stream()
                .filter(kind -> kind.stageId().equals(id))
                .count();
        if (!inUse && kinds > 0) {
            throw new Refused("\"" + stage.name() + "\" still has " + kinds
                    + (kinds == 1 ? " task kind" : " task kinds") + " in use. Move them to another stage first.");
        }
        stage.use(inUse);
    }

    private String name(SaveStage save) {
        String name = Typed.requiredLine(save.name(), 40);
        if (rows.existsByNameIgnoreCaseAndIdNot(name, save.id())) {
            throw new Refused("name", "There is a stage of this name already.");
        }
        return name;
    }

    private void add(UUID id, String name) {
        List<Stage> all = rows.findAllByOrderByPosition();
        if (all.size() >= MOST) {
            throw new Refused("name", "There are " + MOST + " stages already; rename one instead.");
        }
        int last = all.isEmpty() ? 0 : all.get(all.size() - 1).position();
        rows.save(new Stage(id, name, last + 1));
    }

    private static void rename(Stage kept, SaveStage save, String name) {
        if (!Integer.valueOf(save.version() == null ? -1 : save.version()).equals(kept.version())) {
            throw new Stale("stage", List.of(new Stale.Row("Name", kept.name(), name)));
        }
        kept.rename(name);
    }
}
