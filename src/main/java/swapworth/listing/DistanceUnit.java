package swapworth.listing;

import swapworth.reading.Quantity;

/** The unit in which a folder's mileages are written and shown; figures are kept in miles. */
public enum DistanceUnit {
    /** The international mile of 1.609344 km. */
    MI("mi", "mile", "miles", 1.0),
    /** The kilometre. */
    KM("km", "km", "km", 1.0 / Quantity.KM_PER_MILE);

    private final String symbol;
    private final String one;
    private final String many;
    private final double miles;

    DistanceUnit(String symbol, String one, String many, double miles) {
        this.symbol = symbol;
        this.one = one;
        this.many = many;
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
     * The unit as it stands in a sentence behind {@code a}.
     *
     * @return {@code mile} or {@code km}
     */
    public String one() {
        return one;
    }

    /**
     * The unit as it stands in a sentence behind a number.
     *
     * @return {@code miles} or {@code km}
     */
    public String many() {
        return many;
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
