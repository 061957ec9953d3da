package swapworth.swap;

import java.util.Optional;
import swapworth.listing.LevelOfTrade;
import swapworth.market.Figures;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * What to ask for a finished swap, how long it then stands, and below what not to go. Takers come as {@link Learning} takes them to come;
 * what the car would sell for is drawn, so that an ask may turn out too high.
 */
final class Selling {
    private static final int[] PERCENT = {-10, 0, 10, 20};
    private static final int[] DAYS = {30, 90, 180};
    private static final double LONGEST = 3_650;

    private final SwapValue value;
    private final Situation s;

    Selling(SwapValue value) {
        this.value = value;
        this.s = value.situation();
    }

    Table table() {
        // The ask at which this one car is asked for its worth.
        double[] price = value.drawsAt(LevelOfTrade.PRIVATE_ASKING);
        double middle = Quantiles.median(price);
        Table.Builder table = Table.titled("To sell it privately: what to ask, and how long it then stands").columns(
                Column.number("asked", ""), Column.number("against its middle", "%"), Column.number("half are taken within", "days"),
                Column.number("taken in " + DAYS[0] + " days", "%"), Column.number("taken in " + DAYS[1] + " days", "%"),
                Column.number("taken in " + DAYS[2] + " days", "%"));
        table.note("How many takers come rests on the assumptions swap_days_on_offer and swap_takers_left alone; the rest of the doubt is"
                + " that of the price of this one car. Begin as high as you can wait, and cut on a day that you set beforehand.");
        double paid = Quantiles.median(s.step(s.finishedAt(LevelOfTrade.PRIVATE_ASKING), s.finishedAt(LevelOfTrade.PRIVATE_SOLD)));
        table.note("About " + Cell.format(100 * paid, 0) + " % of the last ask are paid in the end, by the price model.");
        floor().ifPresent(table::note);
        for (int percent : PERCENT) {
            double ask = middle * (1 + percent / 100.0);
            table.row(Figures.money(ask), Cell.signed(percent, 0), half(ask, price).map(d -> Cell.number(d, 0))
                    .orElse(Cell.words("more than " + Cell.format(LONGEST, 0))), Cell.chance(taken(ask, price, DAYS[0])),
                    Cell.chance(taken(ask, price, DAYS[1])), Cell.chance(taken(ask, price, DAYS[2])));
        }
        return table.build();
    }

    private double taken(double ask, double[] price, double days) {
        double left = 0;
        for (double one : price) {
            left += StrictMath.exp(-Learning.takersADay(s, StrictMath.log(ask / one)) * days) / price.length;
        }
        return 1 - left;
    }

    private Optional<Double> half(double ask, double[] price) {
        double low = 0;
        double high = LONGEST;
        if (taken(ask, price, high) < 0.5) {
            return Optional.empty();
        }
        while (high - low > 0.1) {
            double days = (low + high) / 2;
            if (taken(ask, price, days) < 0.5) {
                low = days;
            } else {
                high = days;
            }
        }
        return Optional.of(high);
    }

    /** Below what no sale helps. */
    private Optional<String> floor() {
        Optional<String> apart = value.takenApartDraws().map(d -> "Taken apart it would bring " + Figures.rounded(Quantiles.median(d))
                + " in the middle, hours not counted" + Basis.soundParts(s.car) + ": a sale for less is worse than that.");
        Optional<String> refused = value.ownersValueAbove().map(amount -> "You refused " + Figures.rounded(amount) + ".");
        return apart.isEmpty() ? refused : apart.map(words -> words + refused.map(r -> " " + r).orElse(""));
    }
}
