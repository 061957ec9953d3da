package swapworth.listing;

import static java.util.Objects.requireNonNull;

import swapworth.reading.DistanceUnit;
import swapworth.table.Cell;

/**
 * How far a thing has travelled, where the figure comes from, and in which unit its owner counts.
 *
 * @param miles in miles, at least 0
 * @param status read off the car, from papers, or unknown
 * @param unit the unit in which it was written, and in which it is shown
 */
public record Mileage(double miles, MileageStatus status, DistanceUnit unit) {

    /** Checks the figure. */
    public Mileage {
        requireNonNull(status, "status");
        requireNonNull(unit, "unit");
        if (!(miles >= 0) || Double.isInfinite(miles)) {
            throw new IllegalArgumentException("a mileage must be a finite number of at least 0, not " + miles);
        }
    }

    /**
     * A figure of somebody who counts in miles.
     *
     * @param miles in miles, at least 0
     * @param status where the figure comes from
     */
    public Mileage(double miles, MileageStatus status) {
        this(miles, status, DistanceUnit.MI);
    }

    /**
     * The figure as it was written.
     *
     * @return in {@link #unit()}
     */
    public double typed() {
        return unit.fromMiles(miles);
    }

    /**
     * The figure as it was written, with its unit.
     *
     * @return for instance {@code 92,000 km}
     */
    public String words() {
        return Cell.format(typed(), 0) + " " + unit.symbol();
    }

    /** The figure and where it comes from, as a reader expects it. */
    @Override
    public String toString() {
        return words() + ", " + (status == MileageStatus.UNKNOWN ? "status unknown" : status.words());
    }
}
