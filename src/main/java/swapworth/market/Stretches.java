package swapworth.market;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Facts;
import swapworth.statistics.ErrorLaw;
import swapworth.statistics.ErrorTail;
import swapworth.statistics.RangeStretch;

/**
 * By how much ranges are to be stretched so that they hold what they promise: those of crashed, branded and dead cars, whose prices scatter
 * otherwise, by themselves; and how heavy the tails of single prices are, without which a range that holds eight prices in ten need not
 * hold nineteen in twenty.
 *
 * @param tail how heavy the tails are
 * @param sound of all other cars
 * @param troubled of these
 * @param lines by how much more those of a line; empty where the scatter of lines is in the fit
 */
record Stretches(ErrorTail tail, RangeStretch sound, RangeStretch troubled, Map<String, Double> lines) {
    /** The ranges of all cars are not narrowed further than to this part. */
    private static final double LEAST = 0.5;
    /** So many prices are enough for the tails, */
    private static final int MOST_FOR_TAIL = 4000;
    /** and so many of crashed cars. */
    private static final int MOST_TROUBLED = 2000;
    /** Left-out residuals of so many cars of a line are enough: its 80 % ranges then hold 77 to 83 %. */
    private static final int MOST_OF_LINE = 500;
    /**
     * Where fewer of each line would be left out for the tail they are taken of all lines together: of thousands of lines none or one of
     * each would be left, and of the only car of a line its miss is that of the line and tells no tail.
     */
    private static final int LEAST_OF_LINE = 10;

    /**
     * The prices of cars that are to be left out, of many some, evenly taken, which stand for all.
     *
     * @param forTail of sound cars, enough to tell how heavy tails are; as many of each line, as far as it has them, or evenly of all
     *     where lines are many
     * @param sound of sound cars, enough to tell how far each line scatters
     * @param troubled of crashed, branded and dead cars
     */
    record Chosen(int[] forTail, int[] sound, int[] troubled) {

        static Chosen of(EvidenceList evidence, Stock stock) {
            int[] first = evidence.firstPrices();
            int[] sound = IntStream.of(first).filter(i -> !evidence.isTroubled(i)).toArray();
            int[] troubled = IntStream.of(first).filter(evidence::isTroubled).toArray();
            int ofLine = MOST_FOR_TAIL / Math.max(1, stock.lines().size());
            return new Chosen(ofLine < LEAST_OF_LINE ? some(sound, MOST_FOR_TAIL) : ofEachLine(sound, stock, ofLine),
                    ofEachLine(sound, stock, Math.max(MOST_OF_LINE, ofLine)), some(troubled, MOST_TROUBLED));
        }

        private static int[] ofEachLine(int[] prices, Stock stock, int most) {
            int[] all = new int[stock.lines().size()];
            for (int price : prices) {
                all[stock.line(price)]++;
            }
            int[] seen = new int[all.length];
            IntStream.Builder taken = IntStream.builder();
            for (int price : prices) {
                int line = stock.line(price);
                if (isTaken(seen[line]++, all[line], most)) {
                    taken.add(price);
                }
            }
            return taken.build().toArray();
        }

        private static int[] some(int[] prices, int most) {
            return IntStream.range(0, prices.length).filter(k -> isTaken(k, prices.length, most)).map(k -> prices[k]).toArray();
        }

        /** Whether the k-th of so many is one of the most that are taken, which lie evenly among all. */
        private static boolean isTaken(int k, int all, int most) {
            long taken = Math.min(most, all);
            return (k + 1) * taken / all > k * taken / all;
        }
    }

    /**
     * As cars say that are left out.
     *
     * @param law the law of the errors in the fit
     */
    static Stretches by(LeftOut leftOut, ErrorLaw law, Chosen chosen, EvidenceList evidence, EncodedRows rows, Assumptions assumptions) {
        Deviates forTail = Deviates.of(chosen.forTail, leftOut, evidence, rows);
        boolean isInFit = PriceFit.isScatterLearned(evidence.size());
        // That one line scatters more than another, or all more than the fit has it, is no tail.
        ErrorTail ofFit = new ErrorTail(law.degreesOfFreedom(), 0);
        Stretches asFitted = isInFit ? afterFit(ofFit, forTail, Deviates.NONE) : learned(ofFit, forTail, Deviates.NONE, assumptions);
        ErrorTail tail = ErrorTail.of(law, forTail.over(asFitted::of));
        LeftOut tailed = leftOut.withTail(tail);
        Deviates sound = Deviates.of(chosen.sound, tailed, evidence, rows);
        Deviates troubled = Deviates.of(chosen.troubled, tailed, evidence, rows);
        return isInFit ? afterFit(tail, sound, troubled) : learned(tail, sound, troubled, assumptions);
    }

    /**
     * By how far the prices of cars miss what is predicted without them.
     *
     * @param z each as a normal deviate of its prediction
     */
    private record Deviates(List<Facts> cars, double[] z) {
        static final Deviates NONE = new Deviates(List.of(), new double[0]);

        static Deviates of(int[] prices, LeftOut leftOut, EvidenceList evidence, EncodedRows rows) {
            return new Deviates(IntStream.of(prices).<Facts>mapToObj(i -> evidence.subject(i).facts()).toList(),
                    leftOut.deviates(rows, prices));
        }

        /** The deviates, each over how far those of such a car scatter, for ranges are as much wider. */
        double[] over(ToDoubleFunction<Facts> factor) {
            return IntStream.range(0, z.length).mapToDouble(k -> z[k] / factor.applyAsDouble(cars.get(k))).toArray();
        }
    }

    /** Where the fit has learned how crashed cars and lines scatter. */
    private static Stretches afterFit(ErrorTail tail, Deviates sound, Deviates troubled) {
        return new Stretches(tail, RangeStretch.of(sound.z), RangeStretch.of(troubled.z), Map.of());
    }

    /** Where the fit has not learned it: the ranges do. */
    private static Stretches learned(ErrorTail tail, Deviates sound, Deviates troubled, Assumptions assumptions) {
        double all = RangeStretch.ofAtLeast(LEAST, sound.z).factor();
        Map<String, Double> lines = Scatter.ofLines(sound.cars, sound.over(car -> all), Map.of(), assumptions);
        // What is left for all lines is told by residuals that are alike; the one scale that the fit has for all of them may be too wide.
        RangeStretch ofSound = RangeStretch.ofAtLeast(LEAST, sound.over(car -> ofLine(lines, car)));
        double[] beside = troubled.over(car -> ofLine(lines, car));
        // At the least crashed ones scatter like others; that they scatter several times as far cannot be told at once.
        double least = Math.min(1, Math.exp(-assumptions.logMiddle("scatter_of_troubled")));
        RangeStretch ofTroubled = RangeStretch.NONE;
        for (int pass = 0; pass < PriceFit.PASSES; pass++) {
            double before = ofTroubled.factor();
            ofTroubled = ofTroubled.carriedOn(assumptions.logSpread("scatter_of_troubled"), least,
                    Arrays.stream(beside).map(deviate -> deviate / before).toArray());
        }
        return new Stretches(tail, ofSound, ofTroubled, lines);
    }

    private static double ofLine(Map<String, Double> lines, Facts car) {
        return lines.getOrDefault(car.vehicle(), 1.0);
    }

    double of(Facts car) {
        return (car.isTroubled() ? troubled : sound).factor() * ofLine(lines, car);
    }
}
