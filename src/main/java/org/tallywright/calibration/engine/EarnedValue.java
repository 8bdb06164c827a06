package org.tallywright.calibration.engine;

import java.util.OptionalDouble;

/**
 * The plain earned-value figures of a running job, in one unit throughout: person-hours, or money.
 *
 * <pre>
 *   CV = EV - AC      SV = EV - PV      CPI = EV / AC      SPI = EV / PV
 *   EAC = AC + (BAC - EV)/CPI = BAC/CPI      at plan: AC + BAC - EV      by cost and schedule: AC + (BAC - EV)/(CPI x SPI)
 *   ETC = EAC - AC    VAC = BAC - EAC   TCPI = (BAC - EV)/(target - AC)
 * </pre>
 *
 * <p>Source: the earned value formulas of a public acquisition university's reference card (2013). Empty where a formula
 * divides by zero: with nothing logged there is no CPI, never 1 or infinity. With few finished tasks CPI is mostly noise
 * and must not be shown as the forecast; see {@link #cpiIsNoise}.
 *
 * @param budget BAC, budget at completion, above 0
 * @param planned PV, value of the work planned to be done by now
 * @param earned EV, value of the work done
 * @param actual AC, what the work done has taken
 */
public record EarnedValue(double budget, double planned, double earned, double actual) {

    private static final int FEW_TASKS = 5;
    private static final double FEW_PERCENT = 20;

    public double costVariance() {
        return earned - actual;
    }

    public double scheduleVariance() {
        return earned - planned;
    }

    public OptionalDouble costVariancePercent() {
        return ratio(100 * costVariance(), earned);
    }

    public OptionalDouble scheduleVariancePercent() {
        return ratio(100 * scheduleVariance(), planned);
    }

    public OptionalDouble costIndex() {
        return ratio(earned, actual);
    }

    public OptionalDouble scheduleIndex() {
        return ratio(earned, planned);
    }

    public OptionalDouble percentComplete() {
        return ratio(100 * earned, budget);
    }

    public OptionalDouble percentSpent() {
        return ratio(100 * actual, budget);
    }

    /** Estimate at completion if the rest goes like the work so far. */
    public OptionalDouble atCompletion() {
        return ratio(budget * actual, earned);
    }

    /** Estimate at completion if the rest goes as planned. */
    public double atCompletionAtPlan() {
        return actual + budget - earned;
    }

    /** Estimate at completion if cost and schedule both press on the rest. */
    public OptionalDouble atCompletionByCostAndSchedule() {
        return ratio((budget - earned) * actual * planned, earned * earned, actual);
    }

    /** Estimate at completion if only the schedule presses on the rest. */
    public OptionalDouble atCompletionBySchedule() {
        return ratio((budget - earned) * planned, earned, actual);
    }

    public OptionalDouble toComplete() {
        OptionalDouble end = atCompletion();
        return end.isPresent() ? OptionalDouble.of(end.getAsDouble() - actual) : end;
    }

    public OptionalDouble varianceAtCompletion() {
        OptionalDouble end = atCompletion();
        return end.isPresent() ? OptionalDouble.of(budget - end.getAsDouble()) : end;
    }

    /** How well the rest must go to end at a target, such as the budget; empty where the target is already spent. */
    public OptionalDouble toCompleteIndex(double target) {
        return target > actual ? ratio(budget - earned, target - actual) : OptionalDouble.empty();
    }

    /** Length of the job if the schedule index holds, in the unit of the planned length. */
    public OptionalDouble length(double plannedLength) {
        return ratio(plannedLength * planned, earned);
    }

    /** Too little finished for CPI to mean anything: fewer than 5 tasks or less than 20 % done (common practice, no source). */
    public boolean cpiIsNoise(int finishedTasks) {
        return finishedTasks < FEW_TASKS || percentComplete().orElse(0) < FEW_PERCENT;
    }

    private static OptionalDouble ratio(double above, double below) {
        return ratio(above, below, 0);
    }

    private static OptionalDouble ratio(double above, double below, double plus) {
        return below == 0 ? OptionalDouble.empty() : OptionalDouble.of(plus + above / below);
    }
}
