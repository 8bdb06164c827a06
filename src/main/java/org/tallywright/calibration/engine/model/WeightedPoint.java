package org.tallywright.calibration.engine.model;

/**
 * One of the values of theta over which a forecast is averaged.
 *
 * @param weight its share, all shares add up to 1
 * @param point the model there
 */
public record WeightedPoint(double weight, ModelPoint point) {}
