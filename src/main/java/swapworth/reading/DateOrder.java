package swapworth.reading;

/** How dates that begin with the day or the month are written in the user's files. */
public enum DateOrder {
    /** {@code 03/04/2024} is the third of April. */
    DAY_FIRST("day first"),
    /** {@code 03/04/2024} is the fourth of March. */
    MONTH_FIRST("month first");

    private final String words;

    DateOrder(String words) {
        this.words = words;
    }

    /**
     * How it stands in {@code words.csv}.
     *
     * @return {@code day first} or {@code month first}
     */
    public String words() {
        return words;
    }
}
