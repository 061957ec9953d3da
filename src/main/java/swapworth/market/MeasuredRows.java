package swapworth.market;

import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;
import swapworth.market.Measures.Measured;
import swapworth.statistics.Ranges;

/**
 * The age and mileage of every row as the model takes them, and how far those of each line reach.
 *
 * @param ages one of each row, years
 * @param miles one of each row
 * @param extents by line
 */
record MeasuredRows(double[] ages, double[] miles, Map<String, LineExtent> extents) {

    static MeasuredRows of(EvidenceList evidence, Stock stock, Measures measures) {
        MeasuredRows rows = new MeasuredRows(new double[stock.rows()], new double[stock.rows()], new HashMap<>());
        for (LineExtent[] some : Ranges.make(stock.rows(), (first, end) -> rows.measure(evidence, stock, measures, first, end))) {
            for (int line = 0; line < some.length; line++) {
                rows.extents.computeIfAbsent(stock.lines().get(line), l -> new LineExtent()).take(some[line]);
            }
        }
        return rows;
    }

    /** Writes the ages and mileages of some rows, and says how far they reach line by line. */
    private LineExtent[] measure(EvidenceList evidence, Stock stock, Measures measures, int first, int end) {
        LineExtent[] reached = Stream.generate(LineExtent::new).limit(stock.lines().size()).toArray(LineExtent[]::new);
        for (int i = first; i < end; i++) {
            int line = stock.line(i);
            Measured measured = measures.of(stock.lines().get(line), stock.age(i), stock.miles(i));
            ages[i] = measured.age();
            miles[i] = measured.miles();
            reached[line].take(measured, i == 0 || evidence.car(i) != evidence.car(i - 1));
        }
        return reached;
    }
}
