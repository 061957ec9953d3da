package swapworth.market;

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
}
