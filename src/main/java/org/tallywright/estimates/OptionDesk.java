package org.tallywright.estimates;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.jobs.JobDesk;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.Refused;
import org.tallywright.shared.Stale;

/** Keeps the options of a job's working sum. A line goes where it was put last; in no option it is the bid itself. */
@Service
public class OptionDesk {
    private static final String WHAT = "option";
    private static final int MOST = 20;

    private final JobDesk jobs;
    private final EstimateOpener opener;
    private final EstimateOptions options;
    private final EstimatePricer pricer;
    private final OfferedWork work;
    private final JdbcClient jdbc;

    OptionDesk(
            JobDesk jobs,
            EstimateOpener opener,
            EstimateOptions options,
            EstimatePricer pricer,
            OfferedWork work,
            JdbcClient jdbc) {
        this.jobs = jobs;
        this.opener = opener;
        this.options = options;
        this.pricer = pricer;
        this.work = work;
        this.jdbc = jdbc;
    }

    /**
     * The same id with the same content is a repeat.
     *
     * @throws Refused for lines that are agreed or out already, and for an option that was decided
     * @throws Stale where somebody changed it since it was read
     */
    @Transactional
    public void save(UUID job, OptionDraft draft, UUID by) {
        jobs.holdOpen(job, by);
        opener.open(job);
        Set<OptionLine> lines = lines(job, draft.lines());
        EstimateOption option = options.findById(draft.id()).orElse(null);
        if (option == null) {
            add(job, draft, lines, by);
            return;
        }
        if (!option.isOf(job)) {
            throw new NotHere(WHAT);
        }
        if (!option.says(draft, lines)) {
            guardOpen(job, draft.id());
            if (!option.isAt(draft.version())) {
                throw new Stale(WHAT, beside(option, draft));
            }
            takeFromOthers(draft);
            Set<UUID> before = option.taskIds();
            option.say(draft, lines);
            before.removeAll(option.taskIds());
            work.takeBack(job, before, by);
            offer(job, option, by);
        }
    }

    private void add(UUID job, OptionDraft draft, Set<OptionLine> lines, UUID by) {
        if (draft.version() != null) {
            throw new NotHere(WHAT);
        }
        if (pricer.optionsOf(job).size() >= MOST) {
            throw new Refused("There is room for " + MOST + " options; more than a few confuse a client anyway.");
        }
        takeFromOthers(draft);
        EstimateOption fresh = new EstimateOption(draft.id(), job, options.lastPosition(job) + 1);
        fresh.say(draft, lines);
        options.saveAndFlush(fresh);
        offer(job, fresh, by);
    }

    private void offer(UUID job, EstimateOption option, UUID by) {
        work.offer(job, option.taskIds(), by, "in the option " + option.name());
    }

    private void takeFromOthers(OptionDraft draft) {
        if (!draft.lines().isEmpty()) {
            jdbc.sql("delete from estimate_option_line where id in (:lines) and option_id <> :option")
                    .param("lines", draft.lines())
                    .param("option", draft.id())
                    .update();
        }
    }

    private Set<OptionLine> lines(UUID job, Set<UUID> wanted) {
        EstimateSheet sheet = pricer.sheet(job);
        Set<OptionLine> lines = new HashSet<>();
        sheet.tasks().stream()
                .filter(t -> wanted.contains(t.id()) && t.lot().isFree())
                .forEach(t -> lines.add(new OptionLine(job, t.id(), null, null)));
        sheet.materials().stream()
                .filter(m -> wanted.contains(m.id()) && m.lot().isFree())
                .forEach(m -> lines.add(new OptionLine(job, null, m.id(), null)));
        sheet.others().stream()
                .filter(o -> wanted.contains(o.id()) && o.lot().isFree())
                .forEach(o -> lines.add(new OptionLine(job, null, null, o.id())));
        if (lines.size() < wanted.size()) {
            throw new Refused("lines", "Pick lines of this estimate that are not agreed or offered already.");
        }
        return lines;
    }

    private void guardOpen(UUID job, UUID id) {
        if (find(job, id).filter(OptionRow::isOpen).isEmpty()) {
            throw new Refused(
                    "The client has decided about this option. Make another one, or add lines to the estimate.");
        }
    }

    /** Takes the option away; its lines go back into the bid itself. */
    @Transactional
    public void remove(UUID job, UUID id, UUID by) {
        jobs.holdOpen(job, by);
        EstimateOption option = options.findById(id).orElseThrow(() -> new NotHere(WHAT));
        if (!option.isOf(job)) {
            throw new NotHere(WHAT);
        }
        guardOpen(job, id);
        work.takeBack(job, option.taskIds(), by);
        options.delete(option);
    }

    @Transactional(readOnly = true)
    public Optional<OptionRow> find(UUID job, UUID id) {
        return pricer.optionsOf(job).stream().filter(row -> row.id().equals(id)).findFirst();
    }

    private static List<Stale.Row> beside(EstimateOption theirs, OptionDraft yours) {
        return List.of(
                new Stale.Row("Name", theirs.name(), yours.name()),
                new Stale.Row("What the client reads", theirs.words(), yours.words()),
                new Stale.Row("One of", theirs.oneOf(), yours.oneOf()),
                new Stale.Row(
                        "Lines", count(theirs.count()), count(yours.lines().size())));
    }

    private static String count(int lines) {
        return String.valueOf(lines);
    }
}
