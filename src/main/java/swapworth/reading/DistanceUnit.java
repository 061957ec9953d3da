package swapworth.reading;

import java.util.Optional;

/** The unit in which a folder's mileages are written and shown; figures are kept in miles. */
public enum DistanceUnit {
    /** The international mile of 1.609344 km. */
    MI("mi", "mile", "miles", 1.0),
    /** The kilometre. */
    KM("km", "km", "km", 1.0 / 1.609344);

    /** What to ask where nothing states the unit of distances. */
    public static final String UNSTATED = "nothing states the unit of the distances: they are taken for miles. State it in words.csv:"
            + " *,mileage unit,km (or mi)";

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
     * The unit that a word names.
     *
     * @param word for instance {@code miles} or {@code Km}
     * @return the unit; nothing where the word names none
     */
    public static Optional<DistanceUnit> named(String word) {
        return switch (Spelling.key(word)) {
            case "mi", "mi.", "mile", "miles", "mls", "m" -> Optional.of(MI);
            case "km", "km.", "kms", "kilometre", "kilometres", "kilometer", "kilometers" -> Optional.of(KM);
            default -> Optional.empty();
        };
    }

    /**
     * The unit that the last word of a header names.
     *
     * @param header for instance {@code Laufleistung (km)}
     * @return the unit; nothing where the header names none
     */
    public static Optional<DistanceUnit> ofHeader(String header) {
        String words = Spelling.header(header);
        int space = words.lastIndexOf(' ');
        // In a header of any language a lone m is no mile.
        return space < 0 || words.endsWith(" m") ? Optional.empty() : named(words.substring(space + 1));
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
