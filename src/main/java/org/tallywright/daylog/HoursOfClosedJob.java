package org.tallywright.daylog;

import java.util.UUID;

/** Hours of a closed job were written, changed or taken away: a call-back, or a correction. Published in that transaction. */
public record HoursOfClosedJob(UUID jobId, String number) {}
