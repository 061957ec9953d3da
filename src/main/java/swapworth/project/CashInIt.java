package swapworth.project;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import swapworth.market.Range;
import swapworth.statistics.Quantiles;

/** How much is in the undertaking at the end of each month, past months exactly and those to come draw by draw, and when it is most. */
final class CashInIt {
    private final List<Forecast.MonthOfCash> months = new ArrayList<>();
    private final Forecast.Peak peak;
    private final double[] moneyMonths;

    /**
     * The months.
     *
     * @param ledger the ledger
     * @param net what is paid less what comes in, month by month from that of the ledger's day, draw by draw
     */
    CashInIt(Ledger ledger, double[][] net) {
        int count = net[0].length;
        moneyMonths = new double[count];
        Map<YearMonth, BigDecimal> past = ledger.sums().cashByMonth();
        YearMonth now = YearMonth.from(ledger.on());
        YearMonth until = until(ledger, now);
        double sum = 0;
        double most = 0;
        YearMonth mostIn = now;
        YearMonth first = past.keySet().stream().findFirst().orElse(now);
        for (YearMonth month = first; month.isBefore(now); month = month.plusMonths(1)) {
            sum += past.getOrDefault(month, BigDecimal.ZERO).doubleValue();
            months.add(new Forecast.MonthOfCash(month, sum, sum, sum, new Range(sum, sum)));
            mostIn = sum > most ? month : mostIn;
            most = Math.max(most, sum);
            double stands = month.isBefore(until) ? sum : 0;
            for (int i = 0; i < count; i++) {
                moneyMonths[i] += stands;
            }
        }
        double[] standing = new double[count];
        double[] highest = new double[count];
        int[] when = new int[count];
        Arrays.fill(standing, ledger.sums().total().net().doubleValue());
        Arrays.fill(highest, most);
        Arrays.fill(when, -1);
        for (int m = 0; m < net.length; m++) {
            boolean stands = now.plusMonths(m).isBefore(until);
            for (int i = 0; i < count; i++) {
                standing[i] += net[m][i];
                moneyMonths[i] += stands ? standing[i] : 0;
                if (standing[i] > highest[i]) {
                    highest[i] = standing[i];
                    when[i] = m;
                }
            }
            months.add(new Forecast.MonthOfCash(now.plusMonths(m), Quantiles.of(standing, Forecast.LOW), Quantiles.median(standing),
                    Quantiles.of(standing, Forecast.HIGH), Forecast.range(standing, 0.95)));
        }
        // What was sold after the last row stood in it until then.
        for (YearMonth month = now.plusMonths(net.length); month.isBefore(until); month = month.plusMonths(1)) {
            for (int i = 0; i < count; i++) {
                moneyMonths[i] += standing[i];
            }
        }
        int[] times = new int[net.length + 1];
        for (int m : when) {
            times[m + 1]++;
        }
        int best = 0;
        for (int m = 1; m < times.length; m++) {
            best = times[m] > times[best] ? m : best;
        }
        peak = new Forecast.Peak(highest, best == 0 ? mostIn : now.plusMonths(best - 1L), times[best] / (double) count);
    }

    /** The first month at whose end no money stands in the undertaking: that of the sale of the car, else the one after it is done. */
    private static YearMonth until(Ledger ledger, YearMonth now) {
        return ledger.carSold().map(sale -> YearMonth.from(sale.on())).orElseGet(() -> ledger.sums().doneIn()
                .filter(done -> done.isAfter(now)).orElse(now).plusMonths(1));
    }

    List<Forecast.MonthOfCash> months() {
        return List.copyOf(months);
    }

    Forecast.Peak peak() {
        return peak;
    }

    /** Draws of the sum of the cash in it at the end of each month until the car is done, or sold: what interest is reckoned on. */
    double[] moneyMonths() {
        return moneyMonths.clone();
    }
}
