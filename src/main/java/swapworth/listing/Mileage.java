package swapworth.listing;

import static java.util.Objects.requireNonNull;

/**
 * How far a thing has travelled, and where the figure comes from.
 *
 * @param miles in miles, at least 0
 * @param status read off the car, from papers, or unknown
 */
public record Mileage(double miles, MileageStatus status) {

    /** Checks the figure. */
    public Mileage {
        requireNonNull(status, "status");
        if (!(miles >= 0) || Double.isInfinite(miles)) {
            throw new IllegalArgumentException("a mileage must be a finite number of at least 0, not " + miles);
        }
    }
}
