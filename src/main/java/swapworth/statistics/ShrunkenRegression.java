package swapworth.statistics;

/** Placeholder. */
public final class ShrunkenRegression {
    private ShrunkenRegression() {
    }
}
