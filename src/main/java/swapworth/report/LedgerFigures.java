package swapworth.report;

import java.math.BigDecimal;
import swapworth.project.DrawFigures;
import swapworth.project.Equity;
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
        return (equity.sale().isPresent() ? "Left in cash, the car being sold: " : "Left in cash when it is done: ") + equity.currency() + " "
                + DrawFigures.withRange(equity.inCash()) + ".";
    }
}
