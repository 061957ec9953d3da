package swapworth.statistics;

import java.util.Arrays;

/**
 * Rows left out by steps: from the closed form on until the weights of the other rows have settled. Every step is V times a sum of rows, so
 * only how much of each row has been taken is kept: with h the change of the fitted values and I the rows' information,
 * P V X' d = X' (d - I h).
 */
final class Settling {
    /** They have settled when a step moves the coefficients by a hundredth of their own uncertainty (squared). */
    static final double SETTLED = 1e-4;
    private static final int MOST_STEPS = 12;

    private final Component.WithoutRows without;
    private final int[] rows;
    private final Shape.OnRows on;
    /** How much of each row has been taken, and by how much its fitted value has moved with that. */
    private final double[] taken;
    private final double[] moved;
    /** The part of the first step that the mode with all rows was short of: 1 until it has been taken, then 0. */
    private double rest = 1;
    // Room for the numbers of one step.
    private final double[] fitted;
    private final double[] weight;
    private final double[] slope;
    private final double[] lost;
    private final double[] change;

    private Settling(Component.WithoutRows without, int[] rows) {
        this.without = without;
        this.rows = rows;
        this.on = without.shape.onRows();
        int n = on.fitted.length;
        this.taken = new double[n];
        this.moved = new double[n];
        this.fitted = new double[n];
        this.weight = new double[n];
        this.slope = new double[n];
        this.lost = new double[n];
        this.change = new double[n];
        for (int r = 0; r < rows.length; r++) {
            taken[rows[r]] = without.shift(r);
            on.add(without.shift(r), rows[r], moved);
        }
    }

    /** The same component without the same rows, by steps. */
    static Component of(Component.WithoutRows without, int[] rows) {
        Settling settling = new Settling(without, rows);
        for (int step = 0; step < MOST_STEPS; step++) {
            if (Math.abs(settling.step()) < SETTLED) {
                break;
            }
        }
        return without.settled(settling.taken, settling.ofRows(settling.moved));
    }

    /** One step; its size, in squared standard deviations. */
    private double step() {
        int n = taken.length;
        for (int i = 0; i < n; i++) {
            fitted[i] = on.fitted[i] + moved[i];
        }
        Mode mode = without.mode;
        mode.slopesAt(fitted, weight, slope);
        for (int row : rows) {
            slope[row] = 0;
        }
        Arrays.fill(change, 0);
        double size = rest * rest * on.restSize;
        for (int i = 0; i < n; i++) {
            lost[i] = slope[i] - mode.pull(i) - taken[i] + mode.information(i) * moved[i];
            taken[i] += lost[i];
        }
        on.add(lost, change);
        for (int i = 0; i < n; i++) {
            size += lost[i] * (2 * rest * on.rest[i] + change[i]);
            change[i] += rest * on.rest[i];
        }
        double[] projected = ofRows(change);
        double[] share = without.share(projected);
        for (int r = 0; r < rows.length; r++) {
            size += projected[r] * share[r];
            taken[rows[r]] += share[r];
            on.add(share[r], rows[r], change);
        }
        for (int i = 0; i < n; i++) {
            moved[i] += change[i];
        }
        rest = 0;
        return size;
    }

    /** Of numbers for all rows those for the rows left out. */
    private double[] ofRows(double[] ofAll) {
        double[] own = new double[rows.length];
        for (int r = 0; r < own.length; r++) {
            own[r] = ofAll[rows[r]];
        }
        return own;
    }
}
