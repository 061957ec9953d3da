package swapworth.swap;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import swapworth.assumptions.Assumption;
import swapworth.listing.LevelOfTrade;
import swapworth.market.Figures;
import swapworth.statistics.Draws;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Where to sell a finished swap: what each way leaves, draw by draw on the same states of the market, so that ways are held against each
 * other by what differs between them. What such a car brings at a level of trade is told by the listings; what a way keeps of it is
 * assumed.
 */
final class WaysToSell {
    private final SwapValue value;
    private final Situation s;

    WaysToSell(SwapValue value) {
        this.value = value;
        this.s = value.situation();
    }

    /**
     * A way to sell the car.
     *
     * @param brings draws of what is paid for it
     * @param keeps what others keep of that, in words
     * @param leaves draws of what is left for the owner
     * @param time how long it takes, in words
     */
    private record Way(String name, double[] brings, String keeps, double[] leaves, String time) {
    }

    Table table() {
        List<Way> ways = ways();
        Table.Builder table = Table.titled("Where to sell it: what each way leaves" + s.onDay()).columns(Column.words("way"),
                Column.number("brings", ""), Column.number("80 % range", ""), Column.words("kept by others, assumed"),
                Column.number("leaves", ""), Column.number("80 % range left", ""), Column.number("leaves most", "%"),
                Column.sentences("how long it takes"));
        table.note("What a way brings is what its last buyer pays, of a car that a dealer takes the dealer's customer. How prices of one"
                + " level of trade stand to those of another is told by your listings" + untold() + "; what others keep is an assumption"
                + " each: put the terms that you were offered into assumptions.csv. Own hours, and how the market moves meanwhile, are in"
                + " none of it.");
        table.note("Many dealers and auctions do not take a car with changed running gear: ask before you count on one. What dealers get"
                + " more is for cars that they stand behind, and the auctions are those of your listings: where these are of crashed cars,"
                + " they say little of a sound one. A reserve that is not met costs its fee and leaves you the car.");
        double[] most = Draws.shareHighest(ways.stream().map(Way::leaves).toList());
        for (int w = 0; w < most.length; w++) {
            Way way = ways.get(w);
            table.row(Cell.words(way.name), Figures.money(Quantiles.median(way.brings)), range(way.brings), Cell.words(way.keeps),
                    Figures.money(Quantiles.median(way.leaves)), range(way.leaves), Cell.chance(most[w]),
                    Cell.words(way.time));
        }
        return table.build();
    }

    /** The levels of trade at which nobody saw a price, in words that follow "told by your listings"; empty where there is none. */
    private String untold() {
        List<String> none = Stream.of(LevelOfTrade.PRIVATE_SOLD, LevelOfTrade.TRADE_SOLD, LevelOfTrade.AUCTION)
                .filter(level -> !s.model.hasPricesAt(level)).map(LevelOfTrade::words).toList();
        return none.isEmpty() ? "" : ", but for " + String.join(", ", none) + ": of that they hold no price, and it is assumed";
    }

    private static Cell range(double[] draws) {
        return Cell.words(Figures.range(SwapValue.range(Arrays.stream(draws).sorted().toArray(), 0.80)));
    }

    private List<Way> ways() {
        double half = s.assumption("swap_days_on_offer").middle();
        String asked = "half of such cars find a taker in " + Cell.stated(half).shown() + " days, asked at their value";
        List<Way> ways = new ArrayList<>(List.of(
                way("privately", LevelOfTrade.PRIVATE_SOLD, "sell_private_costs", asked),
                way("on commission with a dealer", LevelOfTrade.TRADE_SOLD, "sell_commission", asked + "; the dealer shows it"),
                way("to a dealer", LevelOfTrade.TRADE_SOLD, "sell_to_dealer", "at once"),
                way("at auction, without a reserve", LevelOfTrade.AUCTION, "sell_auction_fee", "until the day of the sale")));
        value.takenApartDraws().ifPresent(apart -> ways.add(new Way("taken apart, body and running gear", apart, "net of it already", apart,
                Cell.format(s.assumption("swap_take_apart_months").middle(), 0) + " months, and "
                + Cell.format(s.assumption("swap_take_apart_hours").middle(), 0) + " hours of work" + Basis.soundParts(s.car))));
        return ways;
    }

    private Way way(String name, LevelOfTrade level, String assumption, String time) {
        Assumption kept = s.assumption(assumption);
        double[] brings = value.drawsAt(level);
        double[] share = Situation.map(Draws.normal(s.count(), s.seedOf(assumption)),
                z -> Math.max(0, Math.min(100, kept.middle() + kept.spread() * z)) / 100);
        return new Way(name, brings, Cell.stated(kept.middle()).shown() + " %"
                + (kept.spread() == 0 ? "" : " give or take " + Cell.stated(kept.spread()).shown()),
                Situation.combined((amount, part) -> amount * (1 - part), brings, share), time);
    }
}
