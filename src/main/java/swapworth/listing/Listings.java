package swapworth.listing;

/** Placeholder. */
public final class Listings {
    private Listings() {
    }
}
