package swapworth.chart;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import swapworth.chart.AmountCharts.Step;
import swapworth.chart.AmountCharts.Swing;
import swapworth.project.Alternative;
import swapworth.project.Alternatives;
import swapworth.project.Category;
import swapworth.project.Equity;
import swapworth.project.Forecast;
import swapworth.project.Ledger;
import swapworth.project.LedgerSums.Sum;
import swapworth.project.NowOrLater;
import swapworth.statistics.Quantiles;

/** The charts of an undertaking, each made from results of the project. */
public final class ProjectCharts {
    private static final int MOST_ROWS = 12;

    private ProjectCharts() {
    }

    /**
     * Money from purchase to what it will have cost: by category and by the likely amounts, then the step from these to the forecast.
     *
     * @param forecast the forecast
     * @return a waterfall: what is paid, what comes back, what is sold, the reserve and what such estimates overrun by; its last bar is
     *     the median of {@link Forecast#charged()}
     */
    public static Chart moneyWaterfall(Forecast forecast) {
        Ledger ledger = forecast.ledger();
        List<Step> steps = new ArrayList<>();
        for (Sum sum : ledger.sums().byCategory()) {
            if (!sum.name().equals(Category.SOLD.words()) && sum.atCompletion().signum() != 0) {
                steps.add(Step.change(sum.name(), sum.atCompletion().doubleValue()));
            }
        }
        steps.add(Step.level("paid and still to be paid"));
        for (Sum sum : ledger.sums().byCategory()) {
            if (sum.name().equals(Category.SOLD.words())) {
                steps.add(Step.change("sold so far", sum.net().doubleValue()));
                if (sum.committed().add(sum.estimated()).signum() != 0) {
                    steps.add(Step.change("still to be sold", sum.committed().add(sum.estimated()).doubleValue()));
                }
            }
        }
        BigDecimal kept = ledger.sums().keptAtCompletion();
        if (kept.signum() != 0) {
            steps.add(Step.change("tools kept", -kept.doubleValue()));
        }
        double likely = ledger.sums().total().atCompletion().subtract(kept).doubleValue();
        double more = Quantiles.median(forecast.charged()) - likely;
        if (Math.abs(more) < 0.005) {
            steps.add(Step.level("what it costs"));
        } else {
            boolean reserved = forecast.drivers().stream().anyMatch(driver -> driver.line() == 0);
            steps.add(Step.level("by likely amounts"));
            steps.add(Step.change(reserved ? "reserve and overrun" : "overrun of estimates", more));
            steps.add(Step.level("forecast, its median"));
        }
        return AmountCharts.waterfall("Money from purchase to completion, by the likely amounts and as forecast, as of " + ledger.on(),
                "amount, " + ledger.currency().getCurrencyCode(), steps);
    }

    /**
     * Cash in the undertaking at the end of each month.
     *
     * @param forecast the forecast
     * @return a line with its ranges; past months are exact
     */
    public static Chart cashByMonth(Forecast forecast) {
        int n = forecast.months().size();
        List<LocalDate> dates = new ArrayList<>(n);
        double[][] five = new double[5][n];
        for (int m = 0; m < n; m++) {
            Forecast.MonthOfCash month = forecast.months().get(m);
            dates.add(month.month().atEndOfMonth());
            five[0][m] = month.middle();
            five[1][m] = month.low();
            five[2][m] = month.high();
            five[3][m] = month.wide().low();
            five[4][m] = month.wide().high();
        }
        String unit = forecast.ledger().currency().getCurrencyCode();
        return Charts.bandLine("Cash in the undertaking at the end of each month", "cash in it, " + unit,
                new DatedBand("median", dates, five[0], five[1], five[2], five[3], five[4]), OptionalDouble.empty());
    }

    /**
     * What drives the spread of the forecast.
     *
     * @param forecast the forecast
     * @return the dozen estimates with the widest swing
     */
    public static Chart drivers(Forecast forecast) {
        List<Swing> swings = new ArrayList<>();
        for (Forecast.Driver driver : forecast.drivers()) {
            swings.add(new Swing(driver.name(), driver.low(), driver.middle(), driver.high()));
        }
        swings.sort((a, b) -> Double.compare(b.high() - b.low(), a.high() - a.low()));
        return AmountCharts.tornado("What drives the spread of the cost: each estimate from its 10 % to its 90 % quantile"
                + (swings.size() > MOST_ROWS ? ", the widest " + MOST_ROWS + " of " + swings.size() : ""),
                "change of the cost, " + forecast.ledger().currency().getCurrencyCode(), swings.subList(0, Math.min(MOST_ROWS,
                        swings.size())));
    }

    /**
     * What is left in cash: value less money in.
     *
     * @param equity the equity
     * @return its outcomes with their quantiles
     */
    public static Chart equity(Equity equity) {
        return AmountCharts.outcomes("What is left in cash: what the finished car sells for, less the money in it",
                "left in cash, " + equity.currency(), equity.inCash(), "nothing left");
    }

    /**
     * Alternatives side by side.
     *
     * @param alternatives the alternatives
     * @return the net cost of each with its ranges
     */
    public static Chart alternatives(Alternatives alternatives) {
        List<RangeRow> rows = new ArrayList<>();
        for (Alternative one : alternatives.all()) {
            rows.add(RangeRow.of(one.name() + (one.whole() ? "" : " (rows not counted)"), one.netCost()));
        }
        return Charts.ranges("Net cost of each alternative after " + alternatives.horizon() + " months",
                "net cost, " + alternatives.currency(), rows, OptionalDouble.empty());
    }

    /**
     * What waiting brings, by months.
     *
     * @param choice now or later
     * @return one row for each number of months
     */
    public static Chart nowOrLater(NowOrLater choice) {
        List<RangeRow> rows = new ArrayList<>();
        for (int h = 1; h <= choice.months(); h++) {
            rows.add(RangeRow.of(h == 1 ? "1 month" : h + " months", choice.gain(h)));
        }
        return Charts.ranges("What waiting brings before it costs anything", "waiting brings, " + choice.currency(), rows,
                OptionalDouble.of(0));
    }
}
