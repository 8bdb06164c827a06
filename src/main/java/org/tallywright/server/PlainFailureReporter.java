package org.tallywright.server;

import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.boot.diagnostics.FailureAnalysisReporter;

/** One line on the error stream in place of a framed block; the framed one is switched off by its log level. */
class PlainFailureReporter implements FailureAnalysisReporter {
    @Override
    public void report(FailureAnalysis analysis) {
        System.err.println("Tallywright did not start: " + analysis.getDescription());
        if (analysis.getAction() != null && !analysis.getAction().isBlank()) {
            System.err.println(analysis.getAction());
        }
    }
}
