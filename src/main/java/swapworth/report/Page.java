package swapworth.report;

/** Placeholder. */
public final class Page {
    private Page() {
    }
}
