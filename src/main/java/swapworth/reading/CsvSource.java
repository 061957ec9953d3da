package swapworth.reading;

/** Placeholder. */
public final class CsvSource {
    private CsvSource() {
    }
}
