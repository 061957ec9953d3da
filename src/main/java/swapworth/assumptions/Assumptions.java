package swapworth.assumptions;

/** Placeholder that the assumptions room replaces. */
public final class Assumptions {
    private Assumptions() {
    }
}
