package org.tallywright.jobs;

import java.time.LocalDate;
import java.util.UUID;
import java.util.function.Consumer;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.tallywright.shared.NotHere;
import org.tallywright.shared.ShopClock;

/** Moves a job through the shop's stages. */
@Service
public class StageDesk {
    private final JobGate gate;
    private final JobStages stages;
    private final KindFacts kinds;
    private final JobHistory history;
    private final ShopClock clock;

    StageDesk(JobGate gate, JobStages stages, KindFacts kinds, JobHistory history, ShopClock clock) {
        this.gate = gate;
        this.stages = stages;
        this.kinds = kinds;
        this.history = history;
        this.clock = clock;
    }

    @Transactional
    public void enter(UUID jobId, UUID stageId, UUID by) {
        act(jobId, stageId, by, stage -> stage.enter(clock.today(), by));
    }

    @Transactional
    public void done(UUID jobId, UUID stageId, UUID by) {
        act(jobId, stageId, by, stage -> stage.done(clock.today(), by));
    }

    @Transactional
    public void skip(UUID jobId, UUID stageId, UUID by) {
        act(jobId, stageId, by, JobStage::skip);
    }

    /** Takes back an entry, a skip or a done that was a mistake. */
    @Transactional
    public void clear(UUID jobId, UUID stageId, UUID by) {
        act(jobId, stageId, by, JobStage::clear);
    }

    private void act(UUID jobId, UUID stageId, UUID by, Consumer<JobStage> act) {
        gate.holdOpen(jobId, by);
        if (!kinds.stageExists(stageId)) {
            throw new NotHere("stage");
        }
        record(find(jobId, stageId), clock.today(), by, act);
    }

    /** Work in a stage means that the job is in it. The caller holds the job. */
    void enterIfAhead(UUID jobId, UUID stageId, LocalDate on, UUID by) {
        JobStage stage = find(jobId, stageId);
        if (stage.state().equals("ahead") || stage.state().equals("skipped")) {
            record(stage, on, by, s -> s.enter(on, by));
        }
    }

    private void record(JobStage stage, LocalDate on, UUID by, Consumer<JobStage> act) {
        String from = stage.state();
        act.accept(stage);
        if (!stage.state().equals(from)) {
            history.stage(stage.id().jobId(), stage.id().stageId(), from, stage.state(), on, by);
        }
    }

    private JobStage find(UUID jobId, UUID stageId) {
        JobStageId id = new JobStageId(jobId, stageId);
        return stages.findById(id).orElseGet(() -> stages.save(new JobStage(jobId, stageId)));
    }
}
