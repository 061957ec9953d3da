package swapworth.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import swapworth.listing.Outcome;
import swapworth.market.Held;
import swapworth.market.IndexMonth;
import swapworth.market.MarketIndex;
import swapworth.market.TimeOnMarket;
import swapworth.market.TimeOnMarket.Asked;
import swapworth.market.TimeOnMarket.Vanished;
import swapworth.statistics.Survival;

/** The charts of the market in time, each made from results of the market. */
public final class TimeCharts {
    /** With fewer cars still on offer each step of a curve is the luck of one of them. */
    private static final int FEWEST_AT_RISK = 5;

    private TimeCharts() {
    }

    /**
     * The level of the market by month, with its ranges and the base.
     *
     * @param index the index
     * @return the chart
     */
    public static Chart index(MarketIndex index) {
        return Charts.bandLine("Level of the market, " + index.held().words(), "index, " + index.base() + " = 100",
                band("index", index.months()), OptionalDouble.of(100));
    }

    /**
     * The price of one and the same car as it grows older, beside the path of ageing alone: between the two lies what the market did.
     *
     * @param index the index
     * @return the chart
     */
    public static Chart againstDepreciation(MarketIndex index) {
        MarketIndex car = index.holding(Held.MODEL_YEAR);
        List<IndexMonth> months = car.months();
        return Charts.bandLine("One and the same car, and ageing alone", "level, " + index.base() + " = 100", band("one car", months),
                List.of(new Charts.NamedLine("ageing alone", dates(months), car.ageingAlone())));
    }

    private static DatedBand band(String name, List<IndexMonth> months) {
        return new DatedBand(name, dates(months), numbers(months, IndexMonth::index), numbers(months, m -> m.range80().low()),
                numbers(months, m -> m.range80().high()), numbers(months, m -> m.range95().low()),
                numbers(months, m -> m.range95().high()));
    }

    private static List<LocalDate> dates(List<IndexMonth> months) {
        return months.stream().map(m -> m.month().atDay(15)).toList();
    }

    private static double[] numbers(List<IndexMonth> months, ToDoubleFunction<IndexMonth> figure) {
        return months.stream().mapToDouble(figure).toArray();
    }

    /**
     * How far each ask has come down by the time it was last seen.
     *
     * @param time the time on market
     * @return the chart, a dot for each car that was seen on more than one day
     */
    public static Chart cuts(TimeOnMarket time) {
        List<Points> groups = new ArrayList<>();
        for (Outcome outcome : Outcome.values()) {
            List<TimeOnMarket.Offer> some = time.offers().stream().filter(o -> o.outcome() == outcome && o.days() > 0).toList();
            if (!some.isEmpty()) {
                groups.add(new Points(outcome.words(), some.stream().mapToDouble(TimeOnMarket.Offer::days).toArray(),
                        some.stream().mapToDouble(o -> 100 * (o.lastAsk() / o.firstAsk() - 1)).toArray(),
                        some.stream().map(o -> o.car() + ": " + o.cuts().size() + (o.cuts().size() == 1 ? " cut" : " cuts")).toList()));
            }
        }
        String title = "Cuts of the ask, by days on offer";
        if (groups.isEmpty()) {
            return Charts.empty(title, "no car was seen on two days");
        }
        return Charts.scatterWithBand(title, "days since first seen", "last ask against first, %",
                ValueScale.LINEAR, groups, Curve.none());
    }

    /**
     * The share of cars not yet sold by days on offer.
     *
     * @param time the time on market
     * @return the chart: all cars, vanished ones once not counted and once counted as sales, each line within its 95 % band and as far as
     *     five cars are left on offer
     */
    public static Chart untilSale(TimeOnMarket time) {
        List<Curve> lines = new ArrayList<>();
        for (Vanished vanished : Vanished.values()) {
            steps(vanished.words(), time.untilSale(vanished)).ifPresent(lines::add);
        }
        return untilSale(time, "Share of all cars not yet sold, by days on offer, while five cars or more are left", lines);
    }

    /**
     * The same by how the first ask stood, vanished cars not counted as sales.
     *
     * @param time the time on market
     * @return the chart: a line for each standing of which five cars or more were on offer and at least one was sold
     */
    public static Chart untilSaleByAsk(TimeOnMarket time) {
        List<Curve> lines = new ArrayList<>();
        for (Asked asked : List.of(Asked.BELOW, Asked.NEAR, Asked.ABOVE)) {
            steps(asked.words(), time.untilSale(asked, Vanished.NOT_SOLD)).ifPresent(lines::add);
        }
        return untilSale(time, "Share not yet sold by how the first ask stood, " + Vanished.NOT_SOLD.words(), lines);
    }

    private static Chart untilSale(TimeOnMarket time, String title, List<Curve> lines) {
        return lines.isEmpty() ? Charts.empty(title, "fewer than five cars, or none of them sold")
                : Charts.steps(title, time.clock().words(), "not yet sold, %", lines);
    }

    /** A curve as far as enough cars are left to speak for it; none where it has no length, or no sale is seen so far. */
    static Optional<Curve> steps(String name, Survival survival) {
        int end = survival.steps().size();
        while (end > 0 && survival.steps().get(end - 1).atRisk() < FEWEST_AT_RISK) {
            end--;
        }
        List<Survival.Step> told = survival.steps().subList(0, end);
        if (told.stream().noneMatch(s -> s.ended() > 0)) {
            return Optional.empty();
        }
        List<double[]> points = new ArrayList<>();
        if (told.get(0).time() > 0) {
            points.add(new double[] {0, 1, 1, 1});
        }
        told.forEach(s -> points.add(new double[] {s.time(), s.survival(), s.low95(), s.high95()}));
        return points.size() < 2 ? Optional.empty() : Optional.of(new Curve(name + " (" + survival.size() + ")", "95 % range",
                column(points, 0, 1), column(points, 1, 100), column(points, 2, 100), column(points, 3, 100)));
    }

    private static double[] column(List<double[]> points, int place, double unit) {
        return points.stream().mapToDouble(p -> unit * p[place]).toArray();
    }
}
