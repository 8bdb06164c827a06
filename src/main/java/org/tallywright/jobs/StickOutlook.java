package org.tallywright.jobs;

import java.util.Optional;
import java.util.UUID;
import org.tallywright.web.stick.StickForecast;

/** Where a running job's hours will likely end, for its story stick; given by the module that learns from finished work. */
public interface StickOutlook {
    Optional<StickForecast> of(UUID jobId);
}
