package swapworth.chart;

/** Placeholder. */
public final class Charts {
    private Charts() {
    }
}
