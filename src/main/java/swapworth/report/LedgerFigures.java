package swapworth.report;

import java.math.BigDecimal;
import swapworth.market.Range;
import swapworth.project.Equity;
import swapworth.project.Forecast;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;

/** Figures of money in sentences. */
final class LedgerFigures {

    private LedgerFigures() {
    }

    /** An exact amount. */
    static String amount(BigDecimal amount) {
        return Cell.format(amount.doubleValue(), amount.scale());
    }

    /** What is left in cash, when the car is done or sold. */
    static String left(Equity equity) {
        return withRange(equity.sale().isPresent() ? "Left in cash, the car being sold:" : "Left in cash when it is done:", equity.inCash(),
                equity.currency());
    }

    /** A sentence of a median with its 80 % range. */
    static String withRange(String words, double[] draws, String unit) {
        Range range = Forecast.range(draws, 0.80);
        return words + " " + unit + " " + Cell.format(Quantiles.of(draws, 0.5), 0) + " (80 % range " + Cell.format(range.low(), 0) + " to "
                + Cell.format(range.high(), 0) + ").";
    }
}
