package swapworth.market;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** What the listings say of the market in time, as tables. */
public final class IndexTables {
    /** Windows over which drifts are shown, months. */
    private static final List<Integer> WINDOWS = List.of(3, 6, 12);
    /** Of so many lines the drift is shown: each costs work, and those with few cars all tell what all lines have in common. */
    private static final int MOST_LINES = 100;
    private static final int DRAWS = 4000;
    private static final long SEED = 20_260_104;

    private IndexTables() {
    }

    /**
     * All tables of an index: its months, its drift, its peak and its outlook.
     *
     * @param model the model
     * @param index its index
     * @return six tables
     */
    public static List<Table> all(PriceModel model, MarketIndex index) {
        return List.of(months(index), drift(index), lines(model, index), peak(index), outlook(model, index), comparison(index));
    }

    /**
     * The level of each month beside those of two plainer methods.
     *
     * @param index the index
     * @return one row a month
     */
    public static Table comparison(MarketIndex index) {
        Table.Builder table = Table.titled("The index beside plainer methods, " + index.base() + " = 100")
                .note("Each month alone: the median of its prices, adjusted by the model to one and the same car of the same age. Repeat"
                        + " listings: only the change of asks of cars seen in several months, ageing and cuts in it; dear cars are cut, so "
                        + "that it may fall faster than the market, or hardly at all where asks stay as they are. Neither is a better"
                        + " index: they show whether the model leads astray.")
                .columns(Column.words("month"), Column.number("cars", ""), Column.number("index", ""),
                        Column.number("each month alone", ""),
                        Column.number("repeat listings", ""));
        List<IndexMonth> months = index.holding(Held.AGE).months();
        List<MarketIndex.Comparison> plain = index.comparison();
        for (int k = 0; k < months.size(); k++) {
            table.row(Cell.words(months.get(k).month().toString()), Cell.whole(plain.get(k).cars()), level(months.get(k).index()),
                    level(plain.get(k).monthAlone()), level(plain.get(k).repeats()));
        }
        return table.build();
    }

    /**
     * The movement over the last year, or over all months seen where there are fewer, in a sentence or two: what is seen directly, one and
     * the same car, then cars of the same age.
     *
     * @param index the index
     * @return plain words, each figure with its range
     */
    public static String summary(MarketIndex index) {
        return movement(index).match(words -> words, no -> "Cannot tell how fast the market moves: " + no.reason() + ".");
    }

    /**
     * The movement in a sentence, where there is one to tell.
     *
     * @param index the index
     * @return plain words as in {@link #summary(MarketIndex)}, or why there is none
     */
    public static Answer<String> movement(MarketIndex index) {
        return index.holding(Held.MODEL_YEAR).drift(12).match(car -> {
            Drift market = index.holding(Held.AGE).drift(12).match(d -> d, no -> car);
            return new Answer.Told<>("From " + car.from() + " to " + car.to() + " one and the same car moved by " + moved(car)
                    + "; cars of the same age, ageing taken out, by " + moved(market) + assumed(market) + lately(index, market) + ".");
        }, Answer.NotTold::new);
    }

    /** Where the listings say little, how much of the movement they are. */
    private static String assumed(Drift market) {
        return market.isMostlyAssumed() ? " (" + Figures.share(market.weightOfAssumption()).shown()
                + " of this is the assumption market_drift and not the listings)" : "";
    }

    /**
     * What an outlook goes on from, and how much of that is assumed.
     *
     * @param outlook the outlook
     * @return a sentence
     */
    public static String goesOn(Outlook outlook) {
        return "The outlook goes on from the drift over all months seen and from the last month's move, which wears off; over "
                + Outlook.MOST_AHEAD + " months it follows what is assumed of the drift (market_drift) by "
                + Figures.share(outlook.weightOfAssumption()).shown()
                + (outlook.isMostlyAssumed() ? ", which so few rows hardly change" : "")
                + ", and the moves to come beyond it are assumed altogether (spread_market_month).";
    }

    /** Where the market turned within the year, the mean of the year hides it: then its second half is told too. */
    private static String lately(MarketIndex index, Drift year) {
        return index.holding(Held.AGE).drift(6).match(half -> {
            boolean hidden = year.range80().holds(0) || half.percentPerMonth() * year.percentPerMonth() < 0;
            return half.from().isAfter(year.from()) && hidden && !half.range80().holds(0)
                    ? "; these since " + half.from() + " alone by " + moved(half) : "";
        }, no -> "");
    }

    /**
     * The movement in a sentence or two, or why there is none to tell.
     *
     * @param model the model
     * @return plain words
     */
    public static String summary(PriceModel model) {
        return model.index().match(IndexTables::summary,
                no -> "Cannot tell how the market moved: " + no.reason() + "; needed: " + no.needed() + ".");
    }

    private static String moved(Drift d) {
        String direction = d.range80().holds(0) ? "no direction can be told"
                : "the chance that it fell is " + Cell.chanceInWords(d.chanceOfFall());
        return Cell.signed(d.percentPerMonth(), 2).shown() + " % a month (80 % range " + Cell.signed(d.range80().low(), 2).shown() + " to "
                + Cell.signed(d.range80().high(), 2).shown() + "), " + direction;
    }

    /**
     * The level of each month, for cars of one age and for one and the same car.
     *
     * @param index the index
     * @return one row a month
     */
    public static Table months(MarketIndex index) {
        Table.Builder table = Table.titled("Level of the market" + index.line().map(l -> ", " + l).orElse("") + ", "
                + index.base() + " = 100")
                .note("Cars of the same age in each month, and beside it one and the same car, which grows older: the two differ by ageing."
                        + " Ageing is told from the difference between model years, as far as these are alike but for their age."
                        + season(index, " The season is in it; the tables of drift and peak are without it."))
                .columns(Column.words("month"), Column.number("cars", ""), Column.number("index", ""), Column.number("low 80", ""),
                        Column.number("high 80", ""), Column.number("low 95", ""), Column.number("high 95", ""),
                        Column.number("one car", ""), Column.number("one car low 80", ""), Column.number("one car high 80", ""),
                        Column.words("remark"));
        List<IndexMonth> market = index.holding(Held.AGE).months();
        List<IndexMonth> car = index.holding(Held.MODEL_YEAR).months();
        for (int k = 0; k < market.size(); k++) {
            IndexMonth m = market.get(k);
            IndexMonth c = car.get(k);
            table.row(Cell.words(m.month().toString()), Cell.whole(m.cars()), level(m.index()), level(m.range80().low()),
                    level(m.range80().high()), level(m.range95().low()), level(m.range95().high()), level(c.index()),
                    level(c.range80().low()), level(c.range80().high()), Cell.words(m.support().words()));
        }
        return table.build();
    }

    /** Words about the season, where the listings tell one. */
    private static String season(MarketIndex index, String words) {
        return index.hasSeason() ? words : "";
    }

    private static Cell level(double level) {
        return Cell.number(level, 1);
    }

    /**
     * How fast the level moved, over windows that end in the last month.
     *
     * @param index the index
     * @return one row a window and kind
     */
    public static Table drift(MarketIndex index) {
        Table.Builder table = Table.titled("Drift of the market" + index.line().map(l -> ", " + l).orElse(""))
                .note("The mean change a month over the window, compounded" + season(index, ", without the season")
                        + ". Spreads are standard deviations in per cent a month: where the one after the listings is hardly smaller than"
                        + " the one before, the assumption speaks and not the listings; the square of the one over the other is its"
                        + " weight in the drift. Held by assumptions is how much of what is still unsure they hold.")
                .columns(Column.words("what"), Column.words("from"), Column.words("to"), Column.number("drift", "% per month"),
                        Column.number("80 % range", ""), Column.number("95 % range", ""), Column.number("chance that it fell", ""),
                        Column.number("spread before", "%"), Column.number("spread after", "%"), Column.number("held by assumptions", ""));
        for (Held held : Held.values()) {
            YearMonth before = index.last();
            for (int window : WINDOWS) {
                Answer<Drift> answer = index.holding(held).drift(window);
                if (answer instanceof Answer.Told<Drift> told && !told.value().from().equals(before)) {
                    Drift d = told.value();
                    before = d.from();
                    table.row(Cell.words(held.words()), Cell.words(d.from().toString()), Cell.words(d.to().toString()),
                            Cell.signed(d.percentPerMonth(), 2), range(d.range80()), range(d.range95()), Figures.chance(d.chanceOfFall()),
                            Cell.number(100 * d.priorSpread(), 2), Cell.number(100 * d.spread(), 2), Figures.share(d.priorShare()));
                }
            }
        }
        return table.build();
    }

    /**
     * How fast the level of each line moved over the last year, or over all months seen where there are fewer.
     *
     * @param model the model
     * @param index its index
     * @return one row a line, the one with most cars first; of many lines those with most cars
     */
    public static Table lines(PriceModel model, MarketIndex index) {
        List<String> seen = model.lines().stream().filter(index::sees).toList();
        boolean all = seen.size() <= MOST_LINES;
        Table.Builder table = Table.titled("Drift of each line, " + index.held().words())
                .note(season(index, "Without the season. ") + "Lines share one market; how far a line departs from it is drawn"
                        + " toward zero, and a line with few cars departs little. A line that moves fast by itself is shown too near to"
                        + " the others, and its ranges hold the truth too seldom: where you expect such a line, widen the assumption"
                        + " spread_line_drifts."
                        + (all ? "" : " Shown are the " + MOST_LINES + " lines with most cars, of " + seen.size() + " with a date; 'index"
                        + " --line LINE' tells of any one."))
                .columns(Column.words("line"), Column.words("from"), Column.words("to"), Column.number("drift", "% per month"),
                        Column.number("80 % range", ""), Column.number("95 % range", ""), Column.number("chance that it fell", ""));
        for (String line : all ? seen : seen.subList(0, MOST_LINES)) {
            if (index.ofLine(line).drift(12) instanceof Answer.Told<Drift> told) {
                Drift d = told.value();
                table.row(Cell.words(line), Cell.words(d.from().toString()), Cell.words(d.to().toString()),
                        Cell.signed(d.percentPerMonth(), 2),
                        range(d.range80()), range(d.range95()), Figures.chance(d.chanceOfFall()));
            }
        }
        return table.build();
    }

    private static Cell range(Range range) {
        return Cell.words(Cell.signed(range.low(), 2).shown() + " to " + Cell.signed(range.high(), 2).shown());
    }

    /**
     * In which month the level stood highest.
     *
     * @param index the index
     * @return one row for each of the months that together hold the peak with 95 %
     */
    public static Table peak(MarketIndex index) {
        Peak peak = index.peak();
        Table.Builder table = Table.titled("Month in which the level stood highest")
                .note("The months that together hold the peak with a probability of 95 %" + season(index, ", without the season")
                        + ". A first or last month means: not seen to have turned.")
                .columns(Column.words("month"), Column.number("probability", ""));
        for (YearMonth month : peak.within(0.95)) {
            table.row(Cell.words(month.toString()), Figures.chance(peak.chances()[peak.months().indexOf(month)]));
        }
        return table.build();
    }

    /**
     * Where the level may stand in months to come.
     *
     * @param model the model
     * @param index its index
     * @return one row a horizon; a note instead where the listings are too few
     */
    public static Table outlook(PriceModel model, MarketIndex index) {
        Table.Builder table = Table.titled("Level in months to come, last day seen = 100").columns(Column.number("months ahead", ""),
                Column.number("middle", ""), Column.number("80 % range", ""), Column.number("95 % range", ""),
                Column.number("chance that it stands lower", ""));
        return index.outlook().match(outlook -> {
            table.note("Drawn from the fitted drift and walk for cars of the same age: ageing comes on top"
                    + season(index, ", the season is in it") + ". What moves a market from "
                    + "outside is not in it. The further ahead, the less the listings tell: ranges widen, and the chance to stand lower "
                    + "need not grow. " + goesOn(outlook));
            ValueDraws draws = model.draws(DRAWS, SEED);
            for (int months : List.of(1, 3, 6, 9, 12)) {
                double[] factors = outlook.factors(draws, index.line().orElse(""), months);
                double lower = Arrays.stream(factors).filter(f -> f < 1).count() / (double) factors.length;
                Arrays.sort(factors);
                List<Cell> row = new ArrayList<>(List.of(Cell.whole(months), level(100 * Quantiles.ofSorted(factors, 0.5))));
                row.add(span(factors, 0.8));
                row.add(span(factors, 0.95));
                row.add(Figures.chance(lower));
                table.row(row);
            }
            return table.build();
        }, no -> table.note(no.sentence()).build());
    }

    private static Cell span(double[] sorted, double share) {
        return Cell.words(Cell.format(100 * Quantiles.ofSorted(sorted, (1 - share) / 2), 1) + " to "
                + Cell.format(100 * Quantiles.ofSorted(sorted, (1 + share) / 2), 1));
    }
}
