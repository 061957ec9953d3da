package swapworth.project;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.market.Range;
import swapworth.statistics.Quantiles;

/** How much is in the undertaking at the end of each month, past months exactly and those to come draw by draw, and when it is most. */
final class CashInIt {
    private final List<Forecast.MonthOfCash> months = new ArrayList<>();
    private final YearMonth now;
    /** The first month at whose end no money stands in it. */
    private final YearMonth until;
    private final Forecast.Peak peak;
    private final double[] moneyMonths;

    /**
     * The months.
     *
     * @param ledger the ledger
     * @param net what is paid less what comes in, month by month from that of the ledger's day, draw by draw
     */
    CashInIt(Ledger ledger, double[][] net) {
        now = YearMonth.from(ledger.on());
        until = until(ledger, now);
        moneyMonths = new double[net[0].length];
        addPast(ledger.sums().cashByMonth());
        double[] standing = new double[moneyMonths.length];
        Arrays.fill(standing, ledger.sums().total().net().doubleValue());
        peak = addToCome(net, standing);
        // What was sold after the last row stood in it until then.
        for (YearMonth month = now.plusMonths(net.length); month.isBefore(until); month = month.plusMonths(1)) {
            stands(standing);
        }
    }

    private void addPast(Map<YearMonth, BigDecimal> past) {
        double sum = 0;
        YearMonth first = past.keySet().stream().findFirst().orElse(now);
        for (YearMonth month = first; month.isBefore(now); month = month.plusMonths(1)) {
            sum += past.getOrDefault(month, BigDecimal.ZERO).doubleValue();
            months.add(new Forecast.MonthOfCash(month, sum, sum, sum, new Range(sum, sum)));
            double stands = month.isBefore(until) ? sum : 0;
            for (int i = 0; i < moneyMonths.length; i++) {
                moneyMonths[i] += stands;
            }
        }
    }

    /** Adds the months to come to what stands in it at first, and finds the peak of all months. */
    private Forecast.Peak addToCome(double[][] net, double[] standing) {
        Optional<Forecast.MonthOfCash> before = months.stream().filter(m -> m.middle() > 0)
                .max(Comparator.comparingDouble(Forecast.MonthOfCash::middle)
                        .thenComparing(Forecast.MonthOfCash::month, Comparator.reverseOrder()));
        double[] highest = new double[standing.length];
        int[] when = new int[standing.length];
        Arrays.fill(highest, before.map(Forecast.MonthOfCash::middle).orElse(0.0));
        Arrays.fill(when, -1);
        for (int m = 0; m < net.length; m++) {
            for (int i = 0; i < standing.length; i++) {
                standing[i] += net[m][i];
                if (standing[i] > highest[i]) {
                    highest[i] = standing[i];
                    when[i] = m;
                }
            }
            if (now.plusMonths(m).isBefore(until)) {
                stands(standing);
            }
            months.add(new Forecast.MonthOfCash(now.plusMonths(m), Quantiles.of(standing, Forecast.LOW), Quantiles.median(standing),
                    Quantiles.of(standing, Forecast.HIGH), Forecast.range(standing, 0.95)));
        }
        int[] times = new int[net.length + 1];
        for (int m : when) {
            times[m + 1]++;
        }
        int best = 0;
        for (int m = 1; m < times.length; m++) {
            best = times[m] > times[best] ? m : best;
        }
        YearMonth month = best == 0 ? before.map(Forecast.MonthOfCash::month).orElse(now) : now.plusMonths(best - 1L);
        return new Forecast.Peak(highest, month, times[best] / (double) standing.length);
    }

    /** Money stands in it at the end of one more month. */
    private void stands(double[] standing) {
        for (int i = 0; i < standing.length; i++) {
            moneyMonths[i] += standing[i];
        }
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
