package swapworth.market;

import static java.util.Objects.requireNonNull;

import swapworth.statistics.RatioStudy;

/**
 * How well values with the own car left out met the prices seen.
 *
 * @param ratios the ratio study, of the prices within a factor of {@value Flags#DIGIT} of their value
 * @param leftOut prices further off, such as a digit too many or too few makes them: they would drown the other ratios
 * @param medianMissPercent median distance of a price from its value, per cent of the value
 * @param in80 per cent of prices inside their 80 % range
 * @param in95 per cent of prices inside their 95 % range
 */
public record FitStudy(RatioStudy ratios, int leftOut, double medianMissPercent, double in80, double in95) {

    /** Checks that nothing is missing. */
    public FitStudy {
        requireNonNull(ratios, "ratios");
    }
}
