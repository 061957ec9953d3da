package swapworth.market;

import java.util.List;
import swapworth.listing.Listing;
import swapworth.table.Table;

/**
 * The comparables behind a fair value, each adjusted toward the subject line by line, and two closing lines, so that the grid
 * multiplies out: geometric mean of the adjusted prices, times "all other listings", times "assumptions", is the value.
 *
 * <p>The comparables are the cars whose difference from the subject is least unsure: smallest variance of the contrast of the two,
 * plus what filling in a missing measure adds. Their logarithms, adjusted with the fitted terms, miss the fitted value by their residuals
 * only; that miss is closed by two lines. With e the residuals, a the weight that the fit gives to each car in the value and q the
 * pull of the prior means (zero where assumptions hold nothing), the assumptions' line is exp(-q), and all that remains is the line of
 * the other listings.
 *
 * @param rows the comparables, the least unsure first
 * @param groups the adjustments in words, in the order of {@link Comparable#factors()}
 * @param geometricMean geometric mean of the adjusted prices
 * @param otherListings the factor of all other listings
 * @param assumptions the factor of the assumptions
 * @param value the fair value
 * @param bracketing whether the subject's age and mileage lie between those of the comparables, in words
 */
public record Comparables(List<Comparable> rows, List<String> groups, double geometricMean, double otherListings, double assumptions,
        double value, List<String> bracketing) {

    /** Copies the lists in. */
    public Comparables {
        rows = List.copyOf(rows);
        groups = List.copyOf(groups);
        bracketing = List.copyOf(bracketing);
    }

    /**
     * The grid.
     *
     * @return one row a comparable, then the closing lines; amounts in the base currency
     */
    public Table table() {
        return ModelTables.comparables(this, FairValue.CURRENCY);
    }

    /**
     * One comparable.
     *
     * @param car name of the car
     * @param listing the sighting whose price is taken
     * @param factors what its price is multiplied by for each group, 1 for none
     * @param adjusted its price times all factors
     * @param netPercent the adjustments together, per cent of its price
     * @param grossPercent the adjustments without regard to their sign, per cent: how far it had to be moved
     */
    public record Comparable(String car, Listing listing, List<Double> factors, double adjusted, double netPercent,
            double grossPercent) {

        /** Copies the factors in. */
        public Comparable {
            factors = List.copyOf(factors);
        }
    }
}
