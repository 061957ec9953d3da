package swapworth.project;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Amounts shared out to the smallest coin: rounded down, and the coins left over go to the largest remainders, the first of equals first.
 */
final class Apportioned {

    private Apportioned() {
    }

    /** The parts of an amount by weights; they add up to it. The amount has no digits beyond its smallest coin. */
    static List<BigDecimal> of(BigDecimal amount, List<BigDecimal> weights) {
        BigDecimal all = weights.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
        List<BigDecimal> parts = new ArrayList<>();
        List<Integer> byRemainder = new ArrayList<>();
        List<BigDecimal> remainders = new ArrayList<>();
        BigDecimal left = amount;
        for (int i = 0; i < weights.size(); i++) {
            BigDecimal product = amount.multiply(weights.get(i));
            BigDecimal part = product.divide(all, amount.scale(), RoundingMode.DOWN);
            parts.add(part);
            remainders.add(product.subtract(part.multiply(all)));
            byRemainder.add(i);
            left = left.subtract(part);
        }
        byRemainder.sort(Comparator.comparing((Integer i) -> remainders.get(i)).reversed());
        BigDecimal coin = BigDecimal.ONE.movePointLeft(amount.scale());
        for (int k = 0; left.signum() > 0; k++) {
            int i = byRemainder.get(k);
            parts.set(i, parts.get(i).add(coin));
            left = left.subtract(coin);
        }
        return parts;
    }
}
