package org.tallywright.server;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.boot.web.server.PortInUseException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;

/** Another program listens where we should. */
@Order(Ordered.HIGHEST_PRECEDENCE)
class PortTakenAnalyzer extends AbstractFailureAnalyzer<PortInUseException> {
    @Override
    protected FailureAnalysis analyze(Throwable rootFailure, PortInUseException taken) {
        return new FailureAnalysis(ListeningPort.taken(taken.getPort()), null, rootFailure);
    }
}
