package swapworth.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import swapworth.chart.AmountCharts.Step;
import swapworth.market.Comparables;
import swapworth.market.FairValue;
import swapworth.market.Judged;
import swapworth.market.JudgedListing;
import swapworth.market.Judgement;
import swapworth.market.LineCurve;
import swapworth.market.LineCurve.OfMileage;
import swapworth.market.Position;
import swapworth.market.TermEffect;
import swapworth.reading.DistanceUnit;
import swapworth.table.Cell;

/** The charts of judged listings, each made from results of the market. */
public final class MarketCharts {
    /** Where the dearest price is more than so many times the cheapest, a linear axis shows the cheap ones on its ground. */
    private static final double FAR_APART = 20;

    private MarketCharts() {
    }

    /**
     * How price runs with mileage in one line: every price adjusted to one stated car of the line, the fitted curve, and the 80 %
     * range of one car.
     *
     * @param judged the judged listings
     * @param line a line of their model
     * @return the chart, in the base currency and in the unit in which most mileages are written
     * @throws IllegalArgumentException if the model has no such line
     */
    public static Chart priceAgainstMileage(Judged judged, String line) {
        LineCurve curve = judged.model().curve(line);
        DistanceUnit unit = judged.read().distanceUnit();
        String title = curve.line() + ": price against mileage, for " + curve.car();
        if (!curve.points().isEmpty() && curve.points().stream().noneMatch(p -> p.mileage() == OfMileage.STATED)) {
            return Charts.empty(title, "no row of this line states a mileage");
        }
        List<Points> groups = new ArrayList<>();
        for (OfMileage mileage : OfMileage.values()) {
            List<LineCurve.Point> some = curve.points().stream().filter(p -> p.mileage() == mileage).toList();
            if (!some.isEmpty()) {
                groups.add(new Points(mileage == OfMileage.STATED ? "prices, adjusted to that car" : "the same, mileage filled in by age",
                        some.stream().mapToDouble(p -> unit.fromMiles(p.miles())).toArray(),
                        some.stream().mapToDouble(LineCurve.Point::adjusted).toArray(), some.stream().map(p -> p.car() + ": seen at "
                                + Cell.format(p.price(), 0) + ", adjusted " + Cell.format(p.adjusted(), 0)).toList()));
            }
        }
        double[] at = curve.miles();
        for (int k = 0; k < at.length; k++) {
            at[k] = unit.fromMiles(at[k]);
        }
        return Charts.scatterWithBand(title, "mileage, " + unit.symbol(), "price, " + currency(judged), scale(curve), groups,
                new Curve("fitted", "80 % range of one car", at, curve.middle(), curve.low(), curve.high()));
    }

    private static ValueScale scale(LineCurve curve) {
        double[] prices = curve.points().stream().mapToDouble(LineCurve.Point::adjusted).sorted().toArray();
        return prices.length > 0 && prices[prices.length - 1] > FAR_APART * prices[0] ? ValueScale.LOGARITHMIC : ValueScale.LINEAR;
    }

    /**
     * The latest price of each car against its fair value, its own car left out, with the 80 % range of each value.
     *
     * @param judged the judged listings
     * @return the chart, in the base currency; cars without a value are not in it
     */
    public static Chart askedAgainstValue(Judged judged) {
        List<Estimates> groups = new ArrayList<>();
        for (Position position : List.of(Position.INSIDE, Position.BELOW, Position.ABOVE)) {
            List<Judgement> of = judged.latest().stream().filter(j -> j.position() == position).toList();
            int n = of.size();
            double[][] figures = new double[4][n];
            List<String> labels = new ArrayList<>(n);
            for (int i = 0; i < n; i++) {
                FairValue value = (FairValue) of.get(i).valuation();
                figures[0][i] = of.get(i).listing().price().amount();
                figures[1][i] = value.median();
                figures[2][i] = value.range(0.80).low();
                figures[3][i] = value.range(0.80).high();
                labels.add(of.get(i).car());
            }
            if (n > 0) {
                groups.add(new Estimates(position.words() + " the range", figures[0], figures[1], figures[2], figures[3], labels));
            }
        }
        String title = "Latest price of each car against its fair value, its own car left out";
        if (groups.isEmpty()) {
            return Charts.empty(title, "no car has a value; its row says why");
        }
        return Charts.identity(title, "price seen, " + currency(judged),
                "fair value, " + currency(judged), "80 % range of one car", ValueScale.LOGARITHMIC, groups);
    }

    /**
     * The terms of the price model with their ranges.
     *
     * @param judged the judged listings
     * @return the chart, effects in per cent of price; slopes of single lines and effects of what is unknown are not in it
     */
    public static Chart terms(Judged judged) {
        List<RangeRow> rows = new ArrayList<>();
        for (TermEffect effect : judged.model().terms()) {
            TermEffect t = effect.in(judged.read().distanceUnit());
            if (!t.label().contains(", ") && !t.label().contains("unknown")) {
                String unit = t.unit().equals("%") ? "" : ", " + t.unit();
                rows.add(new RangeRow(t.label() + unit, t.percent(), t.low80(), t.high80(), t.low95(), t.high95()));
            }
        }
        String title = "Terms of the price model with 80 % and 95 % ranges";
        if (rows.isEmpty()) {
            return Charts.empty(title, "the rows differ in no fact that has a term");
        }
        return Charts.ranges(title, "effect on price, %", rows, OptionalDouble.of(0));
    }

    private static String currency(Judged judged) {
        return judged.read().baseCurrency().getCurrencyCode();
    }

    /**
     * How the price of the nearest comparable becomes the fair value of a listing, step by step: each adjustment in money as the steps
     * before it left the price.
     *
     * @param listing a judged listing
     * @return a waterfall; without steps where there is no value
     */
    public static Chart adjustments(JudgedListing listing) {
        String unit = "price, " + listing.currency().getCurrencyCode();
        String car = listing.judgement().car();
        return listing.judgement().valuation().match(value -> adjustments(car, value.comparables(), unit),
                no -> AmountCharts.waterfall("No fair value of " + car + ": " + no.reason(), unit, List.of()));
    }

    private static Chart adjustments(String car, Comparables grid, String unit) {
        if (grid.rows().isEmpty()) {
            return AmountCharts.waterfall("No comparable of " + car, unit, List.of());
        }
        Comparables.Comparable nearest = grid.rows().get(0);
        double price = nearest.listing().price().amount();
        List<Step> steps = new ArrayList<>(List.of(Step.change("price of " + nearest.car(), price)));
        for (int g = 0; g < grid.groups().size(); g++) {
            double factor = nearest.factors().get(g);
            if (factor != 1) {
                steps.add(Step.change(grid.groups().get(g), price * (factor - 1)));
                price *= factor;
            }
        }
        steps.add(Step.level("as it would cost"));
        steps.add(Step.change("the other cars and assumptions", grid.value() - price));
        steps.add(Step.level("fair value of " + car));
        return AmountCharts.waterfall("From the price of the nearest comparable to the fair value of " + car, unit, steps);
    }
}
