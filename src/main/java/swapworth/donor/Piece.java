package swapworth.donor;

import swapworth.assumptions.Assumptions;

/** What partout.csv says of one part of a car, with everything else that is known of it. */
final class Piece {
    final PartRow row;
    final PartState state;
    final String why;
    /** Draws of the logarithm of what it sells for; empty where it has no price. */
    final double[] logPrice;
    private final Price price;

    /**
     * What a part is worth.
     *
     * @param log draws of the logarithm of what it sells for; empty where it has no price
     * @param another the same of another one, as far run as those on offer: how far this car has run makes no other part cheaper
     * @param asked what is asked for it
     * @param from what the price rests on
     */
    record Price(double[] log, double[] another, double asked, String from) {
    }

    Piece(PartRow row, PartState state, String why, Price price) {
        this.row = row;
        this.state = state;
        this.why = why;
        this.price = price;
        this.logPrice = price.log;
    }

    /** Draws of the logarithm of what another one sells for. */
    double[] logAnother() {
        return price.another;
    }

    double asked() {
        return price.asked;
    }

    /** What its price rests on. */
    String priceFrom() {
        return price.from;
    }

    boolean priced() {
        return logPrice.length > 0;
    }

    /** Why a part that is for sale earns nothing; empty where it earns. */
    String earnsNothing() {
        return row.part().ruled() && !row.ruleMet() ? "the local rule is not stated to be met"
                : chanceless() ? "gone"
                : !priced() && row.price().isPresent() ? "its row states a price of 0"
                : !priced() ? "no price: no offer in parts.csv names it, and the row states none" : "";
    }

    /** The chance in each draw that one of it is good. */
    double[] chances(AssumptionDraws draws, int count) {
        return row.chanceGood().isPresent() ? SaleUnit.all(row.chanceGood().getAsDouble(), count)
                : state == PartState.GONE ? new double[count] : draws.share(state.chance());
    }

    private boolean chanceless() {
        return row.chanceGood().isPresent() ? row.chanceGood().getAsDouble() == 0 : state == PartState.GONE;
    }

    boolean onSale() {
        return forSale() && priced();
    }

    /** Whether it would be on sale if only it had a price. */
    boolean lacksPrice() {
        return forSale() && !priced() && row.price().isEmpty();
    }

    private boolean forSale() {
        return row.goesTo() == GoesTo.SELL && !row.part().isLeftOver() && !(row.part().ruled() && !row.ruleMet()) && !chanceless();
    }

    /** The chance that one of it is good by the middle of its assumption. */
    double chance(Assumptions assumptions) {
        return row.chanceGood().isPresent() ? row.chanceGood().getAsDouble()
                : state == PartState.GONE ? 0 : assumptions.get(state.chance()).middle() / 100;
    }

    /** The same part sold, whatever becomes of it here; what is scrap stays that. */
    Piece sold() {
        return row.goesTo() == GoesTo.SCRAP ? this : new Piece(row.sold(), state, why, price);
    }
}
