package swapworth.project;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.market.Range;
import swapworth.statistics.AmountLaw;
import swapworth.statistics.Quantiles;
import swapworth.statistics.UncertainSum;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** Draws as figures: medians, ranges and chances, and the tables that hold them. */
public final class DrawFigures {
    /** What the value of the finished car is called where its draws are refused. */
    static final String VALUE = "the value of the finished car";

    private DrawFigures() {
    }

    /** A table of figures with their median and ranges. */
    static Table.Builder ranged(String title, String unit) {
        return Table.titled(title).columns(Column.words("figure"), Column.number("median", unit), Column.number("80 % from", unit),
                Column.number("80 % to", unit), Column.number("95 % from", unit), Column.number("95 % to", unit));
    }

    /** One figure with its median and ranges. */
    static void row(Table.Builder table, String name, double[] draws) {
        List<Cell> cells = new ArrayList<>(List.of(Cell.words(name)));
        cells.addAll(cells(draws));
        Range wide = Forecast.range(draws, 0.95);
        cells.addAll(List.of(Cell.number(wide.low(), 0), Cell.number(wide.high(), 0)));
        table.row(cells);
    }

    /**
     * A median with its 80 % range as cells.
     *
     * @param draws draws of an amount
     * @return the median and the ends of the range
     */
    public static List<Cell> cells(double[] draws) {
        Range near = Forecast.range(draws, 0.80);
        return List.of(Cell.number(Quantiles.median(draws), 0), Cell.number(near.low(), 0), Cell.number(near.high(), 0));
    }

    /** The same draws, which nobody else can write into. */
    static <K> Map<K, double[]> copied(Map<K, double[]> draws) {
        Map<K, double[]> copy = new LinkedHashMap<>();
        draws.forEach((name, its) -> copy.put(name, its.clone()));
        return Collections.unmodifiableMap(copy);
    }

    /** The share of draws above 0. */
    static double chance(double[] draws) {
        int above = 0;
        for (double draw : draws) {
            above += draw > 0 ? 1 : 0;
        }
        return above / (double) draws.length;
    }

    /** Draws of what money costs in a year, per cent: the same for one seed, whatever is reckoned with them. */
    static double[] costOfMoney(Assumptions assumptions, int count, long seed) {
        Assumption rate = assumptions.get("capital_rate");
        return AmountLaw.normal(rate.middle(), rate.spread()).draws(UncertainSum.normals(count, seed ^ 0x5ca1ab1eL));
    }

    /** Draws of a share that is assumed in per cent, as numbers from 0 to a stated most. */
    static double[] shares(Assumption share, double most, int count, long seed) {
        double[] shares = AmountLaw.normal(share.middle() / 100, share.spread() / 100).draws(UncertainSum.normals(count, seed));
        for (int i = 0; i < count; i++) {
            shares[i] = Math.max(0, Math.min(most, shares[i]));
        }
        return shares;
    }

    /** Draw by draw. */
    static double[] plus(double[] first, double[] second) {
        return minus(first, times(second, -1));
    }

    /** Refuses draws that are not as many as those beside them, and such as are no number. */
    static void asMany(int count, String what, double[] draws) {
        if (draws.length != count) {
            throw new IllegalArgumentException(what + ": " + draws.length + " draws beside " + count
                    + "; draw i of all must be one state of the market");
        }
        for (int i = 0; i < count; i++) {
            if (!Double.isFinite(draws[i])) {
                throw new IllegalArgumentException(what + ": draw " + i + " is " + draws[i] + ", not a finite number");
            }
        }
    }

    static double[] minus(double[] first, double[] second) {
        asMany(first.length, "what is taken off", second);
        double[] result = new double[first.length];
        for (int i = 0; i < result.length; i++) {
            result[i] = first[i] - second[i];
        }
        return result;
    }

    static double[] times(double[] draws, double factor) {
        double[] result = draws.clone();
        for (int i = 0; i < result.length; i++) {
            result[i] *= factor;
        }
        return result;
    }

    /** Factors of which a share is passed on: 0 lets nothing through, 1 all. */
    static double[] power(double[] factors, double share) {
        double[] result = factors.clone();
        for (int i = 0; i < result.length; i++) {
            result[i] = StrictMath.pow(result[i], share);
        }
        return result;
    }

    /**
     * A median with its 80 % range, in words.
     *
     * @param draws draws of an amount
     * @return for instance {@code 12,340 (80 % range 9,950 to 16,760)}
     */
    public static String withRange(double[] draws) {
        Range near = Forecast.range(draws, 0.80);
        return Cell.format(Quantiles.median(draws), 0) + " (80 % range " + Cell.format(near.low(), 0) + " to "
                + Cell.format(near.high(), 0) + ")";
    }
}
