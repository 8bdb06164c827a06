package org.tallywright.calibration.engine.model;

import org.ejml.data.DMatrixRMaj;

/**
 * The sums over observations that the model needs at every theta, computed once in O(n): A'WA, A'Wr, r'Wr, and for each
 * level of the absorbed factor its B_g, d_g and b_g. With no rows all of them are zero.
 */
final class CrossProducts {

    private final ModelData data;
    private final int[] offset;
    private final int columns;
    private final DMatrixRMaj cross;
    private final double[] response;
    private final int[] entryColumn;
    private final double[] entryValue;
    private double weight;
    private double square;

    /** Sums over all rows. */
    CrossProducts(ModelData data, int[] offset) {
        this(data, offset, -1);
    }

    /** Sums over the rows of one level of the absorbed factor, or over all rows if it is -1. */
    CrossProducts(ModelData data, int[] offset, int onlyGroup) {
        this.data = data;
        this.offset = offset;
        this.columns = offset[offset.length - 1];
        this.cross = new DMatrixRMaj(columns, columns);
        this.response = new double[columns];
        this.entryColumn = new int[columns];
        this.entryValue = new double[columns];
        for (int i = 0; i < data.rows(); i++) {
            if (onlyGroup < 0 || data.absorbed().level()[i] == onlyGroup) {
                add(i);
            }
        }
    }

    private void add(int row) {
        double w = data.weight()[row];
        double r = data.response()[row];
        int entries = entries(row);
        weight += w;
        square += w * r * r;
        for (int a = 0; a < entries; a++) {
            double wa = w * entryValue[a];
            int at = entryColumn[a] * columns;
            response[entryColumn[a]] += wa * r;
            for (int b = 0; b < entries; b++) {
                cross.data[at + entryColumn[b]] += wa * entryValue[b];
            }
        }
    }

    /** Fills the scratch arrays with the non-zero entries of row i of A and returns how many there are. */
    private int entries(int row) {
        int count = 0;
        for (int j = 0; j < data.fixed().length; j++) {
            entryColumn[count] = j;
            entryValue[count++] = data.fixed()[j][row];
        }
        for (int f = 0; f < data.factors().size(); f++) {
            Factor factor = data.factors().get(f);
            for (int e = factor.from()[row]; e < factor.from()[row + 1]; e++) {
                entryColumn[count] = offset[f] + factor.level()[e];
                entryValue[count++] = factor.share()[e];
            }
        }
        return count;
    }

    Group[] groups() {
        int[] level = data.absorbed().level();
        int levels = data.absorbed().levels();
        int[] start = new int[levels + 1];
        for (int i = 0; i < data.rows(); i++) {
            start[level[i] + 1]++;
        }
        for (int g = 0; g < levels; g++) {
            start[g + 1] += start[g];
        }
        int[] next = start.clone();
        int[] ordered = new int[data.rows()];
        for (int i = 0; i < data.rows(); i++) {
            ordered[next[level[i]]++] = i;
        }
        Group[] groups = new Group[levels];
        double[] sum = new double[columns];
        boolean[] met = new boolean[columns];
        int[] touched = new int[columns];
        for (int g = 0; g < levels; g++) {
            groups[g] = group(ordered, start[g], start[g + 1], sum, met, touched);
        }
        return groups;
    }

    private Group group(int[] ordered, int from, int to, double[] sum, boolean[] met, int[] touched) {
        int count = 0;
        double d = 0;
        double b = 0;
        for (int at = from; at < to; at++) {
            int row = ordered[at];
            double w = data.weight()[row];
            d += w;
            b += w * data.response()[row];
            int entries = entries(row);
            for (int e = 0; e < entries; e++) {
                int column = entryColumn[e];
                if (!met[column]) {
                    met[column] = true;
                    touched[count++] = column;
                }
                sum[column] += w * entryValue[e];
            }
        }
        int[] column = new int[count];
        double[] value = new double[count];
        for (int k = 0; k < count; k++) {
            column[k] = touched[k];
            value[k] = sum[touched[k]];
            sum[touched[k]] = 0;
            met[touched[k]] = false;
        }
        return new Group(column, value, d, b);
    }

    double weight() {
        return weight;
    }

    double square() {
        return square;
    }

    DMatrixRMaj cross() {
        return cross;
    }

    double[] response() {
        return response;
    }
}
