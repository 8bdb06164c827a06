package org.tallywright.calibration.engine;

import java.time.LocalDate;

/**
 * What came of material bought for a job.
 *
 * @param material key of the material
 * @param condition what it was bought in or for, such as a grade or "figured veneer match"; may be blank
 * @param job key of the job
 * @param bought quantity bought for the work, after returns
 * @param net quantity in the finished work, same unit
 * @param startingYield net/bought assumed before any data, above 0 and up to 1
 * @param date when it was known
 */
public record YieldObservation(
        String material,
        String condition,
        String job,
        double bought,
        double net,
        double startingYield,
        LocalDate date) {}
