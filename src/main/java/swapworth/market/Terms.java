package swapworth.market;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Days;
import swapworth.statistics.PriorBlock;
import swapworth.statistics.PriorBlock.Role;
import swapworth.statistics.Quantiles;
import swapworth.statistics.SparseRow;

/** The kinds of term that the price model is made of. */
final class Terms {

    private Terms() {
    }

    /**
     * What is assumed of a coefficient, or of how far several differ.
     *
     * @param mean what it is expected to be
     * @param sd how far it may lie from that, log points; of a group the scale of the spread of its levels
     * @param role whether its spread is one of the secondary ones
     */
    record Prior(double mean, double sd, Role role) {

        /** An assumption of per cent, in log points. */
        static Prior of(Assumptions assumptions, String name) {
            return new Prior(assumptions.logMiddle(name), assumptions.logSpread(name), Role.PRIMARY);
        }

        /** About 0, with one of the secondary spreads. */
        static Prior secondary(double spread) {
            return new Prior(0, spread, Role.SECONDARY);
        }

        /** The same of a unit that is so many times as large. */
        Prior times(double factor) {
            return new Prior(factor * mean, factor * sd, role);
        }
    }

    /** One coefficient on a measure, normal about a stated mean. */
    static final class Measure extends Term {
        private final ToDoubleBiFunction<Subject, Measures.Measured> measure;
        private final Prior prior;
        private final PriorBlock.Kind kind;
        private final double perUnit;
        private final String unit;

        /**
         * A coefficient.
         *
         * @param unit what a reader is shown it in; empty where it means nothing by itself
         */
        Measure(String name, Group group, String unit, Prior prior, ToDoubleBiFunction<Subject, Measures.Measured> measure) {
            this(name, group, unit, 1, prior, PriorBlock.Kind.STATED, measure);
        }

        private Measure(String name, Group group, String unit, double perUnit, Prior prior, PriorBlock.Kind kind,
                ToDoubleBiFunction<Subject, Measures.Measured> measure) {
            super(name, group);
            this.measure = measure;
            this.prior = prior;
            this.kind = kind;
            this.unit = unit;
            this.perUnit = perUnit;
        }

        /**
         * A coefficient about 0 of which nobody knows how far from it: the rows help to find its spread, so that one that counts is let go
         * and one that does not is held.
         *
         * @param scale scale of the half-normal prior of that spread
         */
        static Measure ofUnknownSize(String name, Group group, String unit, double perUnit, double scale,
                ToDoubleBiFunction<Subject, Measures.Measured> measure) {
            return new Measure(name, group, unit, perUnit, Prior.secondary(scale), PriorBlock.Kind.COMMON, measure);
        }

        @Override
        int count() {
            return 1;
        }

        @Override
        List<PriorBlock> priors() {
            return List.of(new PriorBlock(name(), from(), kind, prior.role, new double[] {prior.mean}, new double[] {prior.sd}));
        }

        @Override
        void encode(Subject subject, Measures.Measured measured, SparseRow.Writer row) {
            row.add(from(), measure.applyAsDouble(subject, measured));
        }

        @Override
        List<Effect> effects() {
            return unit.isEmpty() ? List.of() : List.of(Effect.of(name(), unit, from(), perUnit));
        }
    }

    /**
     * Steps against a base, each normal about its own stated mean. Steps of one flight are in order: each is the one below it and a
     * further step down, so that what the rows say of the lower step moves the higher one along, and the order is leaned toward
     * without being forced.
     */
    static final class Steps extends Term {
        /** The least share of a step's stated spread that is left to its part beyond the step below. */
        private static final double OWN = 0.5;

        private final List<Step> steps;
        private final Function<Subject, int[]> standing;
        private final int[] below;

        /**
         * One step.
         *
         * @param label what it is
         * @param mean its prior mean against the base, log points
         * @param sd its prior standard deviation
         * @param flight steps of the same flight stand one above the other; each has its own number where there is no order
         */
        record Step(String label, double mean, double sd, int flight) {
        }

        /**
         * Steps of a fact.
         *
         * @param steps the steps; in a flight the one nearest to the base first
         * @param standing the numbers of the steps that a subject stands on; none for the base
         */
        Steps(String name, Group group, List<Step> steps, Function<Subject, int[]> standing) {
            super(name, group);
            this.steps = steps;
            this.standing = standing;
            this.below = new int[steps.size()];
            for (int i = 0; i < below.length; i++) {
                below[i] = -1;
                for (int k = 0; k < i; k++) {
                    below[i] = steps.get(k).flight == steps.get(i).flight ? k : below[i];
                }
            }
        }

        /** The number of the step below in a flight; -1 for none. */
        int below(int step) {
            return below[step];
        }

        @Override
        int count() {
            return steps.size();
        }

        @Override
        List<PriorBlock> priors() {
            List<PriorBlock> blocks = new ArrayList<>();
            for (int i = 0; i < below.length; i++) {
                Step step = steps.get(i);
                double mean = step.mean;
                double sd = step.sd;
                if (below[i] >= 0) {
                    Step lower = steps.get(below[i]);
                    mean -= lower.mean;
                    sd = Math.sqrt(Math.max(step.sd * step.sd - lower.sd * lower.sd, OWN * OWN * step.sd * step.sd));
                }
                blocks.add(PriorBlock.stated(name() + ": " + step.label, from() + i, mean, sd));
            }
            return blocks;
        }

        @Override
        void encode(Subject subject, Measures.Measured measured, SparseRow.Writer row) {
            for (int standsOn : standing.apply(subject)) {
                for (int step = standsOn; step >= 0; step = below[step]) {
                    row.add(from() + step, 1);
                }
            }
        }

        @Override
        List<Effect> effects() {
            List<Effect> effects = new ArrayList<>();
            for (int i = 0; i < below.length; i++) {
                int[] columns = new int[below.length];
                int size = 0;
                for (int step = i; step >= 0; step = below[step]) {
                    columns[size++] = from() + step;
                }
                double[] ones = new double[size];
                Arrays.fill(ones, 1);
                int above = -1;
                for (int k = i + 1; k < below.length; k++) {
                    above = below[k] == i ? from() + k : above;
                }
                effects.add(new Effect(name() + ": " + steps.get(i).label, "%",
                        SparseRow.of(Arrays.copyOf(columns, size), ones), from() + i, above));
            }
            return effects;
        }
    }

    /**
     * Levels of a group about zero with a common spread, times a measure where one is given. One more level, which no row has, stands
     * for every level that the model has not seen: such a car gets the whole spread of the group.
     */
    static final class Levels extends Term {
        private final Map<String, Integer> number = new LinkedHashMap<>();
        private final Prior prior;
        private final Function<Subject, Optional<String>> key;
        private final ToDoubleBiFunction<Subject, Measures.Measured> times;

        Levels(String name, Group group, Prior prior, List<Subject> seen, Function<Subject, Optional<String>> key,
                ToDoubleBiFunction<Subject, Measures.Measured> times) {
            super(name, group);
            this.prior = prior;
            this.key = key;
            this.times = times;
            // By name, so that the order of the rows of a file moves no draw.
            seen.stream().flatMap(subject -> key.apply(subject).stream()).collect(Collectors.toCollection(TreeSet::new))
                    .forEach(level -> number.put(level, number.size()));
        }

        /** Whether the rows have more than one level, so that there is something to tell apart. */
        boolean varied() {
            return number.size() > 1;
        }

        /** The level on which a subject stands. */
        Optional<String> level(Subject subject) {
            return key.apply(subject);
        }

        Optional<Integer> coefficient(String level) {
            return Optional.ofNullable(number.get(level)).map(n -> from() + n);
        }

        /** The coefficient of every level not seen. */
        int unseen() {
            return from() + number.size();
        }

        @Override
        int count() {
            return number.size() + 1;
        }

        @Override
        List<PriorBlock> priors() {
            return List.of(PriorBlock.levels(name(), from(), number.size(), prior.sd, prior.role));
        }

        @Override
        void encode(Subject subject, Measures.Measured measured, SparseRow.Writer row) {
            Optional<String> level = key.apply(subject);
            if (level.isPresent()) {
                row.add(from() + number.getOrDefault(level.get(), number.size()), times.applyAsDouble(subject, measured));
            }
        }

        @Override
        List<Effect> effects() {
            return List.of();
        }
    }

    /**
     * A smooth departure from a straight line: an integrated random walk that leaves the middle in both directions with neither level
     * nor slope, so that the line's slope is the slope at the middle. It is carried by a few knots a side; the covariance of the walk
     * at distances s and t on one side is min(s, t)^2 (3 max(s, t) - min(s, t)) / 6. Source: G. Wahba, J. Roy. Statist. Soc. B 40
     * (1978) 364-372 (from memory).
     */
    static final class Curve extends Term {
        private static final int ROWS_PER_KNOT = 12;
        private static final int MOST_KNOTS = 4;

        private final double scale;
        private final double middle;
        private final double unit;
        private final ToDoubleBiFunction<Subject, Measures.Measured> measure;
        private final double[][] knots;
        private final double[][][] factor;

        /**
         * A curve.
         *
         * @param values the measure of all rows, in any order
         */
        Curve(String name, Group group, double scale, double middle, double unit, double[] values,
                ToDoubleBiFunction<Subject, Measures.Measured> measure) {
            super(name, group);
            this.scale = scale;
            this.middle = middle;
            this.unit = unit;
            this.measure = measure;
            this.knots = IntStream.of(-1, 1).parallel().mapToObj(side -> knots(values, side)).toArray(double[][]::new);
            this.factor = new double[][][] {factor(knots[0]), factor(knots[1])};
        }

        /** Distances from the middle on one side, as many below each as below the next. */
        private double[] knots(double[] values, int side) {
            double[] distance = new double[values.length];
            int size = 0;
            for (double value : values) {
                double d = side * (value - middle) / unit;
                // A distance that stands on the limit but for rounding is none.
                if (d > 0.02 + 1e-9) {
                    distance[size++] = d;
                }
            }
            distance = Arrays.copyOf(distance, size);
            int count = Math.min(distinct(distance), size == 0 ? 0 : 1 + size / ROWS_PER_KNOT);
            double[] at = new double[count];
            int kept = 0;
            for (int k = 1; k <= count; k++) {
                int place = Math.min(size - 1, (int) Math.ceil(k * (double) size / count) - 1);
                // Puts the distances in order as far as that place, where the quantile just above it begins.
                Quantiles.ofPartlyOrdered(distance, Math.min(1, (place + 0.5) / (size - 1)));
                double knot = distance[place];
                if (kept == 0 || knot > at[kept - 1] * 1.05) {
                    at[kept++] = knot;
                }
            }
            return Arrays.copyOf(at, kept);
        }

        /** How many distances there are that differ, counted as far as there can be knots. */
        private static int distinct(double[] distance) {
            return (int) Arrays.stream(distance).distinct().limit(MOST_KNOTS).count();
        }

        private static double walk(double s, double t) {
            double least = Math.min(s, t);
            return least * least * (3 * Math.max(s, t) - least) / 6;
        }

        /** The lower Cholesky factor of the walk's covariance at the knots. */
        private static double[][] factor(double[] at) {
            double[][] lower = new double[at.length][at.length];
            for (int i = 0; i < at.length; i++) {
                for (int j = 0; j <= i; j++) {
                    double sum = walk(at[i], at[j]);
                    for (int k = 0; k < j; k++) {
                        sum -= lower[i][k] * lower[j][k];
                    }
                    lower[i][j] = i == j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / lower[j][j];
                }
            }
            return lower;
        }

        @Override
        int count() {
            return knots[0].length + knots[1].length;
        }

        @Override
        List<PriorBlock> priors() {
            return count() == 0 ? List.of() : List.of(PriorBlock.common(name(), from(), count(), scale, Role.SECONDARY));
        }

        @Override
        void encode(Subject subject, Measures.Measured measured, SparseRow.Writer row) {
            double distance = (measure.applyAsDouble(subject, measured) - middle) / unit;
            int side = distance < 0 ? 0 : 1;
            double[] at = knots[side];
            double[][] lower = factor[side];
            double[] basis = new double[at.length];
            for (int i = 0; i < at.length; i++) {
                double sum = walk(Math.abs(distance), at[i]);
                for (int k = 0; k < i; k++) {
                    sum -= lower[i][k] * basis[k];
                }
                basis[i] = sum / lower[i][i];
                row.add(from() + (side == 0 ? 0 : knots[0].length) + i, basis[i]);
            }
        }

        @Override
        List<Effect> effects() {
            return List.of();
        }
    }

    /**
     * The level of the market: a walk over months that tends to go on as it went, straight between their beginnings, that ends at zero on
     * the last day seen.
     * Before its first month it stays where it was, after the last day it stays at zero.
     */
    static final class Walk extends Term {
        private final double sd;
        private final double logSpread;
        private final double correlation;
        private final long endDay;
        private final int months;

        Walk(String name, Assumptions assumptions, LocalDate first, LocalDate end) {
            super(name, Group.TIME);
            this.sd = assumptions.get("spread_market_month").middle();
            this.logSpread = Math.max(1e-3, assumptions.get("spread_market_month").spread());
            this.correlation = Math.max(1e-3, Math.min(0.95, assumptions.get("correlation_market_months").middle()));
            this.endDay = end.toEpochDay();
            this.months = (int) Math.max(0, Math.ceil(monthsBefore(first)));
        }

        /** How many months a day lies before the end. */
        double monthsBefore(LocalDate day) {
            return (endDay - day.toEpochDay()) / Days.PER_MONTH;
        }

        int months() {
            return months;
        }

        double sd() {
            return sd;
        }

        /** How far the market may have moved from the first day to the end, with a drift that may be so large a month: one sd. */
        double change(double drift) {
            // So many steps, each correlated with the next: for many months the sum's variance is (1 + c) / (1 - c) times their number.
            return Math.hypot(drift * months, sd * Math.sqrt(months * (1 + correlation) / (1 - correlation)));
        }

        double correlation() {
            return correlation;
        }

        @Override
        int count() {
            return months;
        }

        @Override
        List<PriorBlock> priors() {
            return months == 0 ? List.of() : List.of(PriorBlock.trendWalk(name(), from(), months, sd, logSpread, correlation));
        }

        /** Coefficient k stands for the level {@code months - k} months before the end. */
        @Override
        void encode(Subject subject, Measures.Measured measured, SparseRow.Writer row) {
            if (subject.on().isPresent()) {
                double before = Math.max(0, Math.min(months, monthsBefore(subject.on().get())));
                int whole = (int) Math.floor(before);
                double part = before - whole;
                if (whole + 1 <= months) {
                    row.add(from() + months - whole - 1, part);
                }
                if (whole > 0) {
                    row.add(from() + months - whole, 1 - part);
                }
            }
        }

        @Override
        List<Effect> effects() {
            return List.of();
        }
    }
}
