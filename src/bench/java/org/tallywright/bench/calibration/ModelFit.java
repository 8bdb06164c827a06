package org.tallywright.bench.calibration;

import java.util.List;
import org.tallywright.bench.Figures;
import org.tallywright.calibration.engine.CalibrationSettings;
import org.tallywright.calibration.engine.Calibrator;
import org.tallywright.calibration.engine.Limits;
import org.tallywright.calibration.engine.ModelFigures;
import org.tallywright.calibration.engine.Observation;
import org.tallywright.calibration.engine.Priors;

/** The base model's figures on the whole file, to be laid beside other programs' fits of the same rows (src/docs/calibration.md). */
final class ModelFit {

    private ModelFit() {}

    static Figures measure(PastTasks past) {
        List<Observation> all = PastTasks.observations(past.byKnown());
        CalibrationSettings weighted = CalibrationSettings.standard().withLimits(Limits.none());
        CalibrationSettings plain = weighted.withBase(weighted.base().withWeightExponent(0));
        return new Figures()
                .addAll(figures("model_weighted", all, weighted))
                .addAll(figures("model_unweighted", all, plain))
                .addAll(figures("model_flat", all, plain.withPriors(Priors.nearFlat())));
    }

    private static Figures figures(String name, List<Observation> all, CalibrationSettings settings) {
        ModelFigures fit = Calibrator.fit(all, settings).figures();
        return new Figures()
                .add(name + "_residual_sd", fit.residualSd(), "ln hours")
                .add(name + "_kind_sd", fit.kindSd(), "ln hours")
                .add(name + "_worker_sd", fit.workerSd(), "ln hours")
                .add(name + "_job_sd", fit.jobSd(), "ln hours")
                .add(name + "_level", fit.level(), "ln hours")
                .add(name + "_slope", fit.slope(), "per ln hours")
                .add(name + "_log_posterior", fit.logPosterior(), "nats");
    }
}
