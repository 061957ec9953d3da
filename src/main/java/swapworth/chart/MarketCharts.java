package swapworth.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import swapworth.listing.DistanceUnit;
import swapworth.market.FairValue;
import swapworth.market.Judged;
import swapworth.market.Judgement;
import swapworth.market.LineCurve;
import swapworth.market.Position;
import swapworth.market.TermEffect;
import swapworth.table.Cell;

/** The charts of judged listings, each made from results of the market. */
public final class MarketCharts {

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
        int n = curve.points().size();
        double[] x = new double[n];
        double[] y = new double[n];
        List<String> labels = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            LineCurve.Point p = curve.points().get(i);
            x[i] = unit.fromMiles(p.miles());
            y[i] = p.adjusted();
            labels.add(p.car() + ": seen at " + Cell.format(p.price(), 0) + ", adjusted " + Cell.format(p.adjusted(), 0));
        }
        double[] at = curve.miles();
        for (int k = 0; k < at.length; k++) {
            at[k] = unit.fromMiles(at[k]);
        }
        return Charts.scatterWithBand(curve.line() + ": price against mileage, for " + curve.car(),
                "mileage, " + unit.symbol(), "price, " + currency(judged), ValueScale.LINEAR,
                List.of(new Points("prices, adjusted to that car", x, y, labels)),
                new Curve("fitted", "80 % range of one car", at, curve.middle(), curve.low(), curve.high()));
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
        return Charts.identity("Latest price of each car against its fair value, its own car left out", "price seen, " + currency(judged),
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
        return Charts.ranges("Terms of the price model with 80 % and 95 % ranges", "effect on price, %", rows, OptionalDouble.of(0));
    }

    private static String currency(Judged judged) {
        return judged.read().baseCurrency().getCurrencyCode();
    }
}
