package swapworth.market;

import java.util.List;
import swapworth.statistics.SparseRow;

/**
 * A subject in the numbers of the model.
 *
 * @param row its row of the design
 * @param termOfColumn for each column of the model, the number of the term that it belongs to
 * @param inflation the factor on its error scale: see {@link Scatter}
 * @param growth its measure along which the error scale grows
 * @param remarks what was filled in or lies outside what the model has seen
 */
record Encoded(SparseRow row, int[] termOfColumn, double inflation, double growth, List<String> remarks) {

    /** The same with another factor on its error scale. */
    Encoded with(double factor) {
        return new Encoded(row, termOfColumn, factor, growth, remarks);
    }

    /** The part of the fitted logarithm that each term holds. */
    double[] byTerm(double[] coefficients, int termCount) {
        double[] sums = new double[termCount];
        for (int e = 0; e < row.size(); e++) {
            sums[termOfColumn[row.index(e)]] += row.value(e) * coefficients[row.index(e)];
        }
        return sums;
    }
}
