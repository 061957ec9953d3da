package swapworth.market;

import swapworth.reading.DistanceUnit;

/**
 * The effect of one term of the model on price.
 *
 * @param label what it is
 * @param unit its unit, for instance {@code % per year}
 * @param percent its middle
 * @param low80 lower end of its 80 % range
 * @param high80 upper end of its 80 % range
 * @param low95 lower end of its 95 % range
 * @param high95 upper end of its 95 % range
 * @param priorShare how much of what is unsure about it assumptions hold, between 0 and 1
 * @param rows prices in the fit that tell of it
 */
public record TermEffect(String label, String unit, double percent, double low80, double high80, double low95, double high95,
        double priorShare, int rows) {

    /** The unit of effects of mileage in a fit. */
    static final String PER_10000_MILES = "% per 10,000 mi";

    /**
     * The same effect where it is one of mileage, per 10,000 of another unit.
     *
     * @param unit the unit in which distances are shown
     * @return this effect for miles and for effects of anything else
     */
    public TermEffect in(DistanceUnit unit) {
        if (!this.unit.equals(PER_10000_MILES)) {
            return this;
        }
        double miles = unit.toMiles(1);
        return new TermEffect(label, "% per 10,000 " + unit.symbol(), scaled(percent, miles), scaled(low80, miles), scaled(high80, miles),
                scaled(low95, miles), scaled(high95, miles), priorShare, rows);
    }

    private static double scaled(double percent, double by) {
        return Figures.percent(by * Math.log1p(percent / 100));
    }
}
