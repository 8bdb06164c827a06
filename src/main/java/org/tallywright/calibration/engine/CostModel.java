package org.tallywright.calibration.engine;

import java.util.Arrays;
import java.util.List;
import org.tallywright.calibration.engine.model.CommonDraws;

/**
 * Draws of what a whole job costs the shop.
 *
 * <pre>
 *   cost     = hours x (rate + overhead) + sum of materials + other
 *   rate     = sum of share_i x rate_i,  shares of {@link CrewScatter}, scaled to the planned rate in the mean
 *   material = ceil( net / yield / step ) x step x price x exp(s z - s^2/2) + freight
 * </pre>
 *
 * <p>Hours are the draws of the job's forecast, yields those of {@link MaterialYields} (all lines of a material move together), s and z
 * those of {@link PriceScatter}. Prices move about the estimate's price and keep it in the mean. Hours, crew, prices and
 * yields move independently of each other; the prices of two materials do so as well. Amounts in the shop's currency, hours in
 * person-hours. The streams are named by person and material: an edit to one line leaves the draws of the others alone.
 */
public final class CostModel {

    private final CommonDraws common;

    public CostModel(TotalSettings settings) {
        this.common = new CommonDraws(settings.draws(), settings.seed());
    }

    /** @param share planned, a pure number; rates are for one hour */
    public record Worker(String person, double share, double rate) {}

    /**
     * What an hour costs.
     *
     * @param rate planned
     * @param crew who it is made of; empty where it was given by hand
     * @param spread of {@link CrewScatter}
     */
    public record Hour(double rate, List<Worker> crew, double spread, double overhead) {}

    /**
     * One line of material.
     *
     * @param net quantity in the finished work, above 0
     * @param yields draws of net/bought, above 0 and up to 1
     * @param step smallest quantity that can be bought, same unit
     * @param price of one unit
     * @param scatter sd of ln(price paid / price)
     */
    public record Material(
            String material, double net, Draws yields, double step, double price, double scatter, double freight) {}

    /** The cost of each draw, and the materials alone. */
    public record Cost(Draws total, Draws materials) {}

    /** @param other costs that stand as they are */
    public Cost draws(Draws hours, Hour hour, List<Material> lines, double other) {
        double[] material = materials(lines);
        double[] rates = rates(hour);
        double[] total = new double[material.length];
        for (int d = 0; d < total.length; d++) {
            total[d] = hours.at(d) * (rates[d] + hour.overhead()) + material[d] + other;
        }
        return new Cost(Draws.of(total), Draws.of(material));
    }

    /** What an hour costs in each draw; its mean is the planned rate. */
    double[] rates(Hour hour) {
        double[] rates = new double[common.count()];
        if (hour.crew().stream().mapToDouble(Worker::rate).distinct().count() < 2) {
            Arrays.fill(rates, hour.rate());
            return rates;
        }
        double[] all = new double[rates.length];
        for (Worker worker : hour.crew()) {
            double[] z = common.normals("crew " + worker.person());
            for (int d = 0; d < z.length; d++) {
                double part = worker.share() * Math.exp(hour.spread() * z[d]);
                rates[d] += part * worker.rate();
                all[d] += part;
            }
        }
        double mean = 0;
        for (int d = 0; d < rates.length; d++) {
            rates[d] /= all[d];
            mean += rates[d] / rates.length;
        }
        for (int d = 0; d < rates.length; d++) {
            rates[d] *= hour.rate() / mean;
        }
        return rates;
    }

    private double[] materials(List<Material> lines) {
        double[] total = new double[common.count()];
        for (Material line : lines) {
            double[] z = common.normals("price " + line.material());
            double half = line.scatter() * line.scatter() / 2;
            for (int d = 0; d < total.length; d++) {
                double bought = Math.ceil(line.net() / line.yields().at(d) / line.step() - 1e-9) * line.step();
                total[d] += bought * line.price() * Math.exp(line.scatter() * z[d] - half) + line.freight();
            }
        }
        return total;
    }
}
