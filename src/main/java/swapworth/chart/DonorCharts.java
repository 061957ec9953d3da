package swapworth.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import swapworth.donor.CostKind;
import swapworth.donor.Landed;
import swapworth.donor.LandedCost;
import swapworth.donor.PartOut;
import swapworth.donor.Recovery;
import swapworth.statistics.Quantiles;

/** The charts of donors and recipients. */
public final class DonorCharts {
    private static final int ROW = 28;
    /** Pieces of a bar differ in lightness, so that print in grey tells them apart. */
    private static final List<Ink.Manner> PIECES = List.of(Ink.Manner.BAR, Ink.Manner.HALF, Ink.Manner.FULL, Ink.Manner.AREA);
    private static final List<String> SHARES = List.of("bid or price", "fees of the sale", "tax and papers",
            "bringing it home and the rest");
    private static final int MOST_PARTS = 25;

    private DonorCharts() {
    }

    /**
     * The landed cost of each car as a stack: the bid, what the sale charges, tax and papers, and everything else.
     *
     * @param landed the costs
     * @return the chart, in the base currency, one bar a car
     */
    public static Chart landed(Landed landed) {
        List<LandedCost> costs = landed.costs();
        String currency = costs.isEmpty() ? "" : ", " + costs.get(0).currency().getCurrencyCode();
        String title = "Landed cost of each car" + currency;
        DrawnData data = new DrawnData(title, List.of("car"), SHARES);
        if (costs.isEmpty()) {
            return Charts.empty(title, data.table(), "no car has a price or a planned bid");
        }
        double most = 0;
        for (LandedCost cost : costs) {
            most = Math.max(most, cost.total().doubleValue());
        }
        Axis x = Axis.between(0, most * 1.03, 6);
        Axis y = Axis.rows(costs.size());
        Plot plot = new Plot(ROW * costs.size(), x, y, "landed cost" + currency, "");
        Places[] boxes = {new Places(), new Places(), new Places(), new Places()};
        StringBuilder alt = new StringBuilder("Landed cost of ").append(costs.size()).append(costs.size() == 1 ? " car" : " cars");
        for (int i = 0; i < costs.size(); i++) {
            LandedCost cost = costs.get(i);
            double[] shares = shares(cost);
            data.row(new String[] {cost.purchase().car()}, shares);
            plot.nameRow(cost.purchase().car());
            double height = costs.size() - 1.0 - i;
            double from = 0;
            for (int s = 0; s < shares.length; s++) {
                if (shares[s] > 0) {
                    boxes[s].bar(from, from + shares[s], height);
                    from += shares[s];
                }
            }
            alt.append(i == 0 ? ": " : "; ").append(cost.purchase().car()).append(' ').append(DrawnData.number(from))
                    .append(", of it the bid ")
                    .append(DrawnData.number(shares[0]));
        }
        for (int s = 0; s < boxes.length; s++) {
            Ink ink = new Ink(s + 1, PIECES.get(s));
            plot.add(new Layer(Layer.Form.POLYGON, ink, boxes[s].x(), boxes[s].y()));
            plot.explain(Layer.Form.POLYGON, ink, SHARES.get(s));
        }
        return plot.chart(title, alt.append('.').toString(), data.table(), Charts.PAINTER);
    }

    private static double[] shares(LandedCost cost) {
        double[] shares = new double[SHARES.size()];
        for (int l = 0; l < cost.lines().size(); l++) {
            LandedCost.Line line = cost.lines().get(l);
            CostKind kind = line.kind();
            int share = l == 0 ? 0 : kind == CostKind.FEE || kind == CostKind.BROKER || kind == CostKind.STORAGE ? 1
                    : kind == CostKind.TAX || kind == CostKind.PAPER ? 2 : 3;
            shares[share] += line.amount().doubleValue();
        }
        return shares;
    }

    /**
     * How the money of a car's parts comes in: the median so far at the end of each month, with its 80 % range.
     *
     * @param out the parts of the car
     * @param currency the base currency
     * @return the chart; empty where nothing of the car is sold
     */
    public static Chart recoveryByMonth(PartOut out, String currency) {
        double[][] byMonth = out.recovery().map(Recovery::netByMonth).orElse(new double[0][]);
        int months = byMonth.length == 0 ? 0 : byMonth[0].length;
        double[] at = new double[months];
        double[] middle = new double[months];
        double[] low = new double[months];
        double[] high = new double[months];
        for (int k = 0; k < months; k++) {
            double[] soFar = new double[byMonth.length];
            for (int i = 0; i < soFar.length; i++) {
                soFar[i] = byMonth[i][k];
            }
            Arrays.sort(soFar);
            at[k] = k + 1;
            middle[k] = Quantiles.ofSorted(soFar, 0.5);
            low[k] = Quantiles.ofSorted(soFar, 0.1);
            high[k] = Quantiles.ofSorted(soFar, 0.9);
        }
        return Charts.scatterWithBand("What the parts of " + out.car().name() + " bring over time", "months",
                "net recovery so far, " + currency,
                ValueScale.LINEAR, List.of(), new Curve("median", "80 % range", at, middle, low, high));
    }

    /**
     * The parts of a car by money per hour of work.
     *
     * @param out the parts of the car
     * @param currency the base currency
     * @return the chart, the best first, 25 parts at most; ranges hold that a part may never sell
     */
    public static Chart netPerHour(PartOut out, String currency) {
        List<RangeRow> rows = new ArrayList<>();
        for (Recovery.PartResult p : out.recovery().map(Recovery::parts).orElse(List.of())) {
            if (rows.size() < MOST_PARTS && Double.isFinite(p.perHour())) {
                rows.add(new RangeRow(p.name(), p.perHour(), p.perHour80().low(), p.perHour80().high(), p.perHour95().low(),
                        p.perHour95().high()));
            }
        }
        int sold = out.recovery().map(r -> r.parts().size()).orElse(0);
        return Charts.ranges("Parts of " + out.car().name() + " by net per hour" + (sold > rows.size() ? ", the best " + rows.size()
                + " of " + sold : ""), "net per hour, " + currency, "mean net by mean hours", rows, OptionalDouble.of(0));
    }
}
