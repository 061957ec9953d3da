package swapworth.market;

import java.util.List;
import swapworth.statistics.SparseRow;

/**
 * A subject in the numbers of the model.
 *
 * @param row its row of the design
 * @param terms for each entry of the row, the number of the term that it belongs to
 * @param inflation the factor on its error scale: above 1 where a measure had to be filled in
 * @param growth its measure along which the error scale grows
 * @param remarks what was filled in or lies outside what the model has seen
 */
record Encoded(SparseRow row, int[] terms, double inflation, double growth, List<String> remarks) {

    /** The part of the fitted logarithm that each term holds. */
    double[] byTerm(double[] coefficients, int termCount) {
        double[] sums = new double[termCount];
        for (int e = 0; e < terms.length; e++) {
            sums[terms[e]] += row.value(e) * coefficients[row.index(e)];
        }
        return sums;
    }
}
