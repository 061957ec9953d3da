package swapworth.market;

/** The line of an adjustment grid and the part of a page that a term of the model belongs to. */
enum Group {
    LEVEL_OF_LINE("line and trim"),
    AGE("age"),
    MILEAGE("mileage"),
    TIME("date"),
    SEASON("season"),
    TRADE("level of trade, fees and tax"),
    TITLE("title"),
    RUNS("runs"),
    DAMAGE("damage"),
    CONDITION("condition"),
    REGION("region"),
    FURTHER("further columns");

    private final String words;

    Group(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }
}
