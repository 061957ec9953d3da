package swapworth.bench;

import java.util.Arrays;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * Ridge regression whose first columns are not penalised; the penalty of the others is the one of 25 from 1e-3 to 1e4 with the
 * smallest sum of squares of left-out residuals, r / (1 - leverage). A row that alone tells a free column (leverage 1) has no
 * left-out residual and is passed over.
 */
final class ReferenceRidge {
    private final ReferenceSquares base;
    private final int freeColumns;
    private final double[][] freePart;
    private final double[] y;
    private final double[][] shrunken;
    private final double[] rest;
    private final double[][] u;
    private final RealMatrix v;
    private final double[] singular;

    /** Prepares the fit of y on x, of which so many columns from the left go free. */
    ReferenceRidge(double[][] x, int freeColumns, double[] y) {
        int n = x.length;
        int p = x[0].length - freeColumns;
        this.freeColumns = freeColumns;
        this.y = y.clone();
        this.freePart = new double[n][freeColumns];
        this.shrunken = new double[n][p];
        for (int i = 0; i < n; i++) {
            System.arraycopy(x[i], 0, freePart[i], 0, freeColumns);
            System.arraycopy(x[i], freeColumns, shrunken[i], 0, p);
        }
        this.base = ReferenceSquares.base(freePart);
        this.rest = y.clone();
        base.take(rest, new double[freeColumns]);
        double[][] beside = new double[n][Math.max(1, p)];
        for (int j = 0; j < p; j++) {
            double[] column = ReferenceSquares.column(shrunken, j);
            base.take(column, new double[freeColumns]);
            for (int i = 0; i < n; i++) {
                beside[i][j] = column[i];
            }
        }
        SingularValueDecomposition parts = new SingularValueDecomposition(MatrixUtils.createRealMatrix(beside));
        this.u = parts.getU().getData();
        this.v = parts.getV();
        this.singular = parts.getSingularValues();
    }

    /** The penalties tried. */
    static double[] penalties() {
        double[] grid = new double[25];
        for (int i = 0; i < grid.length; i++) {
            grid[i] = Math.pow(10, -3 + 7.0 * i / (grid.length - 1));
        }
        return grid;
    }

    /** The left-out residual of each row; not a number where there is none. */
    double[] leftOut(double penalty) {
        double[] along = along();
        double[] out = new double[y.length];
        for (int i = 0; i < out.length; i++) {
            double fitted = 0;
            double leverage = base.leverage(i);
            boolean told = leverage > 1 - 1e-9;
            for (int k = 0; k < singular.length; k++) {
                double kept = singular[k] * singular[k] / (singular[k] * singular[k] + penalty);
                fitted += kept * u[i][k] * along[k];
                leverage += kept * u[i][k] * u[i][k];
            }
            out[i] = told ? Double.NaN : (rest[i] - fitted) / (1 - leverage);
        }
        return out;
    }

    private double[] along() {
        double[] along = new double[singular.length];
        for (int k = 0; k < along.length; k++) {
            for (int i = 0; i < rest.length; i++) {
                along[k] += u[i][k] * rest[i];
            }
        }
        return along;
    }

    /** The penalty with the smallest sum of squares of left-out residuals. */
    double best() {
        double best = Double.NaN;
        double least = Double.POSITIVE_INFINITY;
        for (double penalty : penalties()) {
            double sum = 0;
            for (double residual : leftOut(penalty)) {
                sum += Double.isNaN(residual) ? 0 : residual * residual;
            }
            if (sum < least) {
                least = sum;
                best = penalty;
            }
        }
        return best;
    }

    /** The coefficients of all columns at a penalty. */
    double[] coefficients(double penalty) {
        double[] along = along();
        for (int k = 0; k < along.length; k++) {
            along[k] *= singular[k] / (singular[k] * singular[k] + penalty);
        }
        double[] further = v.operate(along);
        double[] left = y.clone();
        int p = shrunken[0].length;
        for (int i = 0; i < left.length; i++) {
            for (int j = 0; j < p; j++) {
                left[i] -= shrunken[i][j] * further[j];
            }
        }
        double[] b = Arrays.copyOf(base.solved(base.take(left, new double[freeColumns])), freeColumns + p);
        System.arraycopy(further, 0, b, freeColumns, p);
        return b;
    }
}
