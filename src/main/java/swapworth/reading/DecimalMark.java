package swapworth.reading;

/** Which mark stands before the decimals in the user's files. */
public enum DecimalMark {
    /** {@code 12.5} is twelve and a half, {@code 12,500} is twelve thousand five hundred. */
    POINT("point"),
    /** {@code 12,5} is twelve and a half, {@code 12.500} is twelve thousand five hundred. */
    COMMA("comma");

    private final String words;

    DecimalMark(String words) {
        this.words = words;
    }

    /**
     * How it stands in {@code words.csv}.
     *
     * @return {@code point} or {@code comma}
     */
    public String words() {
        return words;
    }
}
