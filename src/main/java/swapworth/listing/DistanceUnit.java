package swapworth.listing;

import swapworth.reading.Quantity;

/** The unit in which a folder's mileages are written and shown; figures are kept in miles. */
public enum DistanceUnit {
    /** The international mile of 1.609344 km. */
    MI("mi", 1.0),
    /** The kilometre. */
    KM("km", 1.0 / Quantity.KM_PER_MILE);

    private final String symbol;
    private final double miles;

    DistanceUnit(String symbol, double miles) {
        this.symbol = symbol;
        this.miles = miles;
    }

    /**
     * The unit as it stands behind a number.
     *
     * @return {@code mi} or {@code km}
     */
    public String symbol() {
        return symbol;
    }

    /**
     * A distance in miles.
     *
     * @param distance in this unit
     * @return in miles
     */
    public double toMiles(double distance) {
        return distance * miles;
    }

    /**
     * A distance in this unit.
     *
     * @param distance in miles
     * @return in this unit
     */
    public double fromMiles(double distance) {
        return distance / miles;
    }
}
