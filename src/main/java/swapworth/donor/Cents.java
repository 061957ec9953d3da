package swapworth.donor;

import java.math.BigDecimal;
import java.math.RoundingMode;
import swapworth.table.Cell;

/** Exact amounts as they are shown and paid. */
final class Cents {

    private Cents() {
    }

    /** Half a cent goes up. */
    static BigDecimal rounded(BigDecimal amount) {
        return amount.setScale(2, RoundingMode.HALF_UP);
    }

    static Cell cell(BigDecimal amount) {
        return Cell.number(amount.doubleValue(), 2);
    }

    /** With cents always, for amounts that are held against each other. */
    static String exact(BigDecimal amount) {
        return Cell.format(amount.doubleValue(), 2);
    }

    /** With cents only where there are any. */
    static String text(BigDecimal amount) {
        boolean whole = amount.stripTrailingZeros().scale() <= 0;
        return Cell.format(amount.doubleValue(), whole ? 0 : 2);
    }
}
