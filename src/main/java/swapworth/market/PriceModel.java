package swapworth.market;

/** Placeholder. */
public final class PriceModel {
    private PriceModel() {
    }
}
