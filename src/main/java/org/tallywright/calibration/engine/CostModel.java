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
 *   material = bought x price x exp(s z - s^2/2) + freight
 *   bought   = ceil( net / yield / step ) x step, or laid out:
 *              max(0, (likely + covered) x exp(w z) - covered), w = ln((safe + covered) / (likely + covered)) / 0.8416
 * </pre>
 *
 * <p>Hours are the draws of the job's forecast, yields those of {@link MaterialYields} (all lines of a material move together), s and z
 * those of {@link PriceScatter}. A layout of sheets or bars is bought as laid out (w = 0); boards of chance widths are
 * lognormal through the median and the four-in-five quantile of the lots drawn for them: their whole need, from which what is
 * covered is taken off draw by draw, for a difference is not lognormal. How far a shop buys beside its layouts
 * is not learnt. Prices move about the estimate's price and keep it in the mean. Hours, crew, prices and
 * yields move independently of each other; the prices of two materials do so as well. Amounts in the shop's currency, hours in
 * person-hours. The streams are named by person and material: an edit to one line leaves the draws of the others alone.
 */
public final class CostModel {

    /** The standard normal's quantile at 0.8. */
    private static final double Z80 = 0.8416212335729143;

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
     * @param price of one unit
     * @param scatter sd of ln(price paid / price)
     */
    public record Material(String material, Purchase purchase, double price, double scatter, double freight) {

        /** By its yield. */
        public Material(
                String material, double net, Draws yields, double step, double price, double scatter, double freight) {
            this(material, new ByYield(net, yields, step), price, scatter, freight);
        }
    }

    /** How much is bought of a material. */
    public sealed interface Purchase {}

    /**
     * @param net quantity in the finished work, above 0
     * @param yields draws of net/bought, above 0 and up to 1
     * @param step smallest quantity that can be bought, same unit
     */
    public record ByYield(double net, Draws yields, double step) implements Purchase {}

    /**
     * @param likely median, above 0
     * @param safe four times in five no more; the same where the layout is certain
     * @param covered of the need, by what is agreed or there already; likely and safe are beyond it
     */
    public record LaidOut(double likely, double safe, double covered) implements Purchase {
        private double spread() {
            return safe <= likely ? 0 : Math.log((safe + covered) / (likely + covered)) / Z80;
        }

        private double at(double spread, double z) {
            return spread == 0 ? likely : Math.max(0, (likely + covered) * Math.exp(spread * z) - covered);
        }
    }

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
            double[] bought = bought(line);
            double half = line.scatter() * line.scatter() / 2;
            for (int d = 0; d < total.length; d++) {
                total[d] += bought[d] * line.price() * Math.exp(line.scatter() * z[d] - half) + line.freight();
            }
        }
        return total;
    }

    private double[] bought(Material line) {
        double[] bought = new double[common.count()];
        if (line.purchase() instanceof ByYield by) {
            for (int d = 0; d < bought.length; d++) {
                bought[d] = Math.ceil(by.net() / by.yields().at(d) / by.step() - 1e-9) * by.step();
            }
        } else if (line.purchase() instanceof LaidOut laid) {
            double spread = laid.spread();
            double[] z = common.normals("laid out " + line.material());
            for (int d = 0; d < bought.length; d++) {
                bought[d] = laid.at(spread, z[d]);
            }
        }
        return bought;
    }
}
