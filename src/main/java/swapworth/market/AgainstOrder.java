package swapworth.market;

import swapworth.table.Cell;

/**
 * Two neighbouring steps of one fact that stand against the usual order by these prices, such as a salvage title above a rebuilt one. It
 * may be so, by chance or because such cars differ in something that no column tells.
 *
 * @param worse what usually costs a car more, as in the table of terms
 * @param better what usually costs it less
 * @param percent how far the worse stands above the better, per cent of price: the median
 * @param low80 lower end of its 80 % range
 * @param high80 upper end of its 80 % range
 * @param chance that the worse stands above, between 0 and 1
 * @param pricesOfWorse prices in the fit that tell of it
 * @param pricesOfBetter prices in the fit that tell of it
 */
public record AgainstOrder(String worse, String better, double percent, double low80, double high80, double chance, int pricesOfWorse,
        int pricesOfBetter) {

    /**
     * The finding in words.
     *
     * @return one sentence without its full stop
     */
    public String sentence() {
        return "'" + worse + "' stands " + Cell.format(percent, 1) + " % above '" + better + "' by these prices (80 % range "
                + Cell.signed(low80, 1).shown() + " to " + Cell.signed(high80, 1).shown() + "; " + pricesOfWorse + " and " + pricesOfBetter
                + " prices tell of them), against the usual order: look for what else sets such cars apart";
    }
}
