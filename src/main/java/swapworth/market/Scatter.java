package swapworth.market;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Facts;
import swapworth.market.Measures.Measured;
import swapworth.statistics.Posterior;
import swapworth.statistics.PriorBlock;
import swapworth.statistics.RangeStretch;

/**
 * By how much more the price of a car scatters about its value than that of an ordinary car of which all is stated: because its line
 * scatters more, because it is crashed, branded or dead, or because something that counts is not stated. A factor on the error scale;
 * immutable.
 */
final class Scatter {
    /** The factor of no line falls below this. */
    private static final double LEAST = 0.2;

    private final double errorScale;
    private final double ageSlope;
    private final double mileageSlope;
    private final List<Gap> gaps;
    /** For each gap how far the price may be off, log points. */
    private final double[] unsure;
    private final double assumedOfTroubled;
    private final double ofTroubled;
    private final Map<String, Double> ofLine;

    /**
     * Something that a row may leave open.
     *
     * @param block the name of the block of coefficients that tells how much it counts
     * @param size by how many units of a single coefficient cars differ in it, a standard deviation; 1 for the levels of a group
     * @param isOpen whether a car leaves it open
     * @param remark what to say of a car that leaves it open; empty where that is said elsewhere
     */
    record Gap(String block, double size, Predicate<Subject> isOpen, String remark) {
    }

    private Scatter(double errorScale, double ageSlope, double mileageSlope, List<Gap> gaps, double[] unsure, double assumedOfTroubled,
            double ofTroubled, Map<String, Double> ofLine) {
        this.errorScale = errorScale;
        this.ageSlope = ageSlope;
        this.mileageSlope = mileageSlope;
        this.gaps = gaps;
        this.unsure = unsure;
        this.assumedOfTroubled = assumedOfTroubled;
        this.ofTroubled = ofTroubled;
        this.ofLine = ofLine;
    }

    /** As assumed before any price has spoken: all lines scatter alike. */
    static Scatter assumed(Assumptions assumptions, List<Gap> gaps, List<PriorBlock> blocks) {
        double[] unsure = new double[gaps.size()];
        for (int g = 0; g < unsure.length; g++) {
            PriorBlock block = blocks.get(number(blocks, gaps.get(g).block));
            double coefficient = isGroup(block) ? block.spread()[0] : Math.hypot(block.mean()[0], block.spread()[0]);
            unsure[g] = gaps.get(g).size * coefficient;
        }
        double troubled = Math.exp(assumptions.logMiddle("scatter_of_troubled"));
        return new Scatter(assumptions.get("error_scale").middle(), assumptions.logMiddle("age_slope"),
                assumptions.logMiddle("mileage_slope"), List.copyOf(gaps), unsure, troubled, troubled, Map.of());
    }

    private static boolean isGroup(PriorBlock block) {
        return block.kind() == PriorBlock.Kind.COMMON_AND_UNSEEN;
    }

    private static int number(List<PriorBlock> blocks, String name) {
        for (int b = 0; b < blocks.size(); b++) {
            if (blocks.get(b).name().equals(name)) {
                return b;
            }
        }
        throw new IllegalArgumentException("no block is called '" + name + "'");
    }

    /** The same with error scale, slopes and spreads as a fit has found them. */
    Scatter foundBy(Posterior posterior, List<PriorBlock> blocks) {
        double[] mean = posterior.mean();
        double[] found = new double[unsure.length];
        for (int g = 0; g < found.length; g++) {
            int b = number(blocks, gaps.get(g).block);
            PriorBlock block = blocks.get(b);
            found[g] = gaps.get(g).size * (isGroup(block) ? posterior.commonSpread(b) : Math.abs(mean[block.from()]));
        }
        return new Scatter(posterior.errorScale(), mean[blocks.get(number(blocks, "age")).from()],
                mean[blocks.get(number(blocks, "mileage")).from()], gaps, found, assumedOfTroubled, ofTroubled, ofLine);
    }

    /**
     * The same with the factors of lines, and of crashed, branded and dead cars, as the prices of cars tell them that were predicted by the
     * others: each drawn toward what was assumed, for with few cars it says little.
     *
     * @param cars whose prices they are
     * @param z each price as a normal deviate of its own prediction by this scatter
     */
    Scatter toldBy(List<Facts> cars, double[] z, Assumptions assumptions) {
        double[] troubled = IntStream.range(0, z.length).filter(i -> cars.get(i).isTroubled()).mapToDouble(i -> z[i]).toArray();
        double more = new RangeStretch(ofTroubled / assumedOfTroubled, 0)
                .carriedOn(assumptions.logSpread("scatter_of_troubled"), Math.min(1, 1 / assumedOfTroubled), troubled).factor();
        return new Scatter(errorScale, ageSlope, mileageSlope, gaps, unsure, assumedOfTroubled, assumedOfTroubled * more,
                ofLines(cars, z, ofLine, assumptions));
    }

    /**
     * By how much more each line scatters than the middle car does, drawn toward 1 as unsure as that is beforehand; 1 for a line of one
     * price, which tells of no scatter.
     *
     * @param cars at least one of each line
     * @param z their prices as normal deviates of their predictions
     * @param before the factors in those predictions; none for 1
     * @return a factor for each line; none of one line alone
     */
    static Map<String, Double> ofLines(List<Facts> cars, double[] z, Map<String, Double> before, Assumptions assumptions) {
        Map<String, List<Double>> ofEachLine = new TreeMap<>();
        for (int i = 0; i < z.length; i++) {
            ofEachLine.computeIfAbsent(cars.get(i).vehicle(), line -> new ArrayList<>()).add(z[i]);
        }
        if (ofEachLine.size() <= 1) {
            return Map.of();
        }
        double spread = assumptions.get("spread_line_scatter").middle();
        Map<String, Double> factors = new HashMap<>();
        double sum = 0;
        double weight = 0;
        for (Map.Entry<String, List<Double>> line : ofEachLine.entrySet()) {
            double[] own = line.getValue().stream().mapToDouble(Double::doubleValue).toArray();
            double factor = new RangeStretch(before.getOrDefault(line.getKey(), 1.0), 0).carriedOn(spread, Double.MIN_NORMAL, own).factor();
            factors.put(line.getKey(), factor);
            sum += own.length * Math.log(factor);
            weight += own.length * RangeStretch.share(spread, own.length);
        }
        // What all lines have in common is no line's: it is taken off before each is drawn toward 1, or lines of few cars would be drawn
        // toward another middle than those of many. Cars then have the middle 1.
        double common = weight > 0 ? sum / weight : 0;
        factors.replaceAll((line, factor) -> Math.max(LEAST,
                factor * Math.exp(-common * RangeStretch.share(spread, ofEachLine.get(line).size()))));
        return factors;
    }

    /** By how much more crashed, branded and dead cars scatter. */
    double ofTroubled() {
        return ofTroubled;
    }

    /** By how much more each line scatters; empty where that is not asked. */
    Map<String, Double> ofLine() {
        return ofLine;
    }

    /** The factor of a car. */
    double of(Subject subject, Measured measured) {
        Facts car = subject.facts();
        double factor = (car.isTroubled() ? ofTroubled : 1) * (ofLine.isEmpty() ? 1 : ofLine.getOrDefault(car.vehicle(), 1.0));
        double open = open(subject, measured);
        return open > 0 ? factor * Math.sqrt(1 + open / square(errorScale * factor)) : factor;
    }

    /** How unsure the price of a car is by what is not stated of it: a variance, square log points. */
    double open(Subject subject, Measured measured) {
        // Where neither is stated the mileage is filled in from the age: both are off together, and the same way.
        double open = square(ageSlope * measured.unsureYears()
                + mileageSlope * measured.weightOfMile() * measured.unsureMiles() / 10_000);
        for (int g = 0; g < unsure.length; g++) {
            if (gaps.get(g).isOpen.test(subject)) {
                open += square(unsure[g]);
            }
        }
        return open;
    }

    private static double square(double x) {
        return x * x;
    }
}
