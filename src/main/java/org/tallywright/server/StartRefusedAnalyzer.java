package org.tallywright.server;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Hands the sentence of a {@link StartRefused} on, without its stack trace. */
class StartRefusedAnalyzer extends AbstractFailureAnalyzer<StartRefused> {
    @Override
    protected FailureAnalysis analyze(Throwable rootFailure, StartRefused refusal) {
        return new FailureAnalysis(String.valueOf(refusal.getMessage()), null, rootFailure);
    }
}
