package swapworth.swap;

/** What a buyer of a finished swap asks to see. */
public enum Paper {
    /** A file of titles, bills, photographs and drawings. */
    DOCUMENTED("documentation file", "documented"),
    /** The inspection that the place asks for. */
    INSPECTED("inspection passed", "inspected"),
    /** The test of its emissions. */
    EMISSIONS("emissions test passed", "emissions"),
    /** The approval of the change of engine. */
    APPROVED("change approved and entered", "approved"),
    /** Whether it can be put back as it was. */
    RETURN_TO_STOCK("return to stock possible", "return_to_stock");

    private final String words;
    private final String column;

    Paper(String words, String column) {
        this.words = words;
        this.column = column;
    }

    /**
     * How it stands on a page.
     *
     * @return plain words
     */
    public String words() {
        return words;
    }

    /** Its column in {@code cars.csv}. */
    String column() {
        return column;
    }
}
