package swapworth.world;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;

/** The true level of the market: a trend and a season in the middle of each month, straight between them, in log points. */
final class TrueMarket {

    private final YearMonth firstMonth;
    private final double[] trend;
    private final double[] season;

    private TrueMarket(YearMonth firstMonth, double[] trend, double[] season) {
        this.firstMonth = firstMonth;
        this.trend = trend;
        this.season = season;
    }

    /** Rises for three to five months by about 1 % each, then cools by about 1.5 % a month with wobble; season of about 2 %. */
    static TrueMarket draw(WorldSettings settings, Chance chance) {
        int months = settings.months();
        double[] trend = new double[months];
        double[] season = new double[months];
        if (!settings.marketPath().isEmpty()) {
            for (int k = 0; k < months; k++) {
                trend[k] = settings.marketPath().get(k);
            }
            return new TrueMarket(settings.firstMonth(), trend, season);
        }
        int monthsOfRise = chance.whole(3, 5);
        double rise = chance.near(0.010, 0.003);
        double cooling = chance.near(-0.015, 0.003);
        double swing = chance.near(0.02, 0.004);
        for (int k = 0; k < months; k++) {
            double step = (k <= monthsOfRise ? rise : cooling) + 0.004 * chance.normal();
            trend[k] = k == 0 ? 0 : trend[k - 1] + step;
            int month = settings.firstMonth().plusMonths(k).getMonthValue();
            season[k] = swing * StrictMath.cos(2 * StrictMath.PI * (month - 7) / 12.0);
        }
        return new TrueMarket(settings.firstMonth(), trend, season);
    }

    int months() {
        return trend.length;
    }

    YearMonth month(int k) {
        return firstMonth.plusMonths(k);
    }

    double trend(int k) {
        return trend[k];
    }

    double season(int k) {
        return season[k];
    }

    double level(int k) {
        return trend[k] + season[k];
    }

    /** Flat before the first and after the last middle of a month. */
    double level(LocalDate on) {
        YearMonth month = YearMonth.from(on);
        double place = firstMonth.until(month, ChronoUnit.MONTHS) + (on.getDayOfMonth() - 0.5) / month.lengthOfMonth() - 0.5;
        double bounded = StrictMath.max(0, StrictMath.min(trend.length - 1, place));
        int left = StrictMath.min((int) bounded, StrictMath.max(0, trend.length - 2));
        double share = bounded - left;
        int right = StrictMath.min(left + 1, trend.length - 1);
        return level(left) + share * (level(right) - level(left));
    }

    /** The month in which the trend stands highest. */
    int peak() {
        int best = 0;
        for (int k = 1; k < trend.length; k++) {
            if (trend[k] > trend[best]) {
                best = k;
            }
        }
        return best;
    }

    /** Mean change of the trend a month over the last so many months. */
    double drift(int window) {
        int last = trend.length - 1;
        return (trend[last] - trend[last - window]) / window;
    }
}
