package swapworth.statistics;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * The sum of amounts that are not known yet, by simulation. Lines of one group share a standard normal number: the numbers of two lines
 * with correlations r and s to their group have the correlation r s, so with one correlation c<sup>1/2</sup> any two of the group have c.
 * Draws are made in blocks, each with a generator of its own taken from the seed, and in strict arithmetic: the same seed gives the same
 * bits on every machine, however many processors it has.
 */
public final class UncertainSum {
    private static final int BLOCK = 1024;

    private final List<Line> lines;
    private final int groups;
    private final int bins;
    /** By what the own numbers of each line are drawn; empty where they follow each other in one stream. */
    private final long[] streams;

    /**
     * One amount of the sum.
     *
     * @param law what it may turn out to be
     * @param group its group, from 0
     * @param withGroup the correlation of its standard normal number with that of its group, 0 to 1
     * @param weight the factor with which it enters: -1 for money that comes in
     * @param chance how likely it is to happen at all, 0 to 1
     * @param bin the part of the sum to which it belongs, such as a month, from 0
     */
    public record Line(AmountLaw law, int group, double withGroup, double weight, double chance, int bin) {

        /** Checks the numbers. */
        public Line {
            if (group < 0 || bin < 0 || !(withGroup >= 0 && withGroup <= 1) || !(chance >= 0 && chance <= 1)
                    || !Double.isFinite(weight)) {
                throw new IllegalArgumentException("no line of a sum: group " + group + ", bin " + bin + ", correlation " + withGroup
                        + ", chance " + chance + ", weight " + weight);
            }
        }
    }

    /** The draws of a sum and of its parts; whoever asks for them gets a copy. */
    public static final class Drawn {
        private final double[] totals;
        private final double[][] bins;
        private final double[] covariances;

        private Drawn(double[] totals, double[][] bins, double[] covariances) {
            this.totals = totals;
            this.bins = bins;
            this.covariances = covariances;
        }

        /**
         * The sum.
         *
         * @return draw by draw
         */
        public double[] totals() {
            return totals.clone();
        }

        /**
         * A part of the sum.
         *
         * @param bin which, from 0
         * @return draw by draw
         */
        public double[] bin(int bin) {
            return bins[bin].clone();
        }

        /**
         * The covariance of each line with the sum.
         *
         * @return in the order of the lines; they add up to the variance of the sum
         */
        public double[] covariances() {
            return covariances.clone();
        }
    }

    private UncertainSum(List<Line> lines, int groups, int bins, long[] streams) {
        this.streams = streams;
        this.lines = lines;
        this.groups = groups;
        this.bins = bins;
    }

    /**
     * A sum.
     *
     * @param lines its amounts; their order is part of what the draws depend on
     * @return the sum
     */
    public static UncertainSum of(List<Line> lines) {
        return of(lines, new long[0]);
    }

    /**
     * A sum whose lines have names: the numbers by which a line and its group are drawn hang on the seed, its name and its group, and on no
     * other line. Whoever changes one line of it sees that change and no chance beside it.
     *
     * @param lines its amounts
     * @param names as many names, each another one
     * @return the sum
     */
    public static UncertainSum named(List<Line> lines, List<String> names) {
        if (names.size() != lines.size()) {
            throw new IllegalArgumentException(names.size() + " names do not go with " + lines.size() + " lines");
        }
        return of(lines, names.stream().mapToLong(name -> RandomNumbers.seed(0, name)).toArray());
    }

    private static UncertainSum of(List<Line> lines, long[] streams) {
        int groups = 1;
        int bins = 1;
        for (Line line : lines) {
            groups = Math.max(groups, line.group + 1);
            bins = Math.max(bins, line.bin + 1);
        }
        return new UncertainSum(List.copyOf(lines), groups, bins, streams);
    }

    /**
     * Draws of the sum alone.
     *
     * @param count how many
     * @param seed the seed
     * @return as many sums
     */
    public double[] totals(int count, long seed) {
        double[] totals = new double[count];
        eachBlock(count, seed, (block, values) -> {
            int size = Math.min(BLOCK, count - block * BLOCK);
            for (double[] line : values) {
                for (int i = 0; i < size; i++) {
                    totals[block * BLOCK + i] += line[i];
                }
            }
        });
        return totals;
    }

    /**
     * Draws of the sum and of its parts.
     *
     * @param count how many
     * @param seed the seed; the sums are those of {@link #totals}
     * @return sums, parts and what drives them
     */
    public Drawn drawn(int count, long seed) {
        double[] totals = new double[count];
        double[][] parts = new double[bins][count];
        int blocks = (count + BLOCK - 1) / BLOCK;
        double[][] products = new double[blocks][lines.size()];
        double[][] sums = new double[blocks][lines.size()];
        eachBlock(count, seed, (block, values) -> {
            int from = block * BLOCK;
            int size = Math.min(BLOCK, count - from);
            for (int l = 0; l < values.length; l++) {
                double[] part = parts[lines.get(l).bin];
                for (int i = 0; i < size; i++) {
                    totals[from + i] += values[l][i];
                    part[from + i] += values[l][i];
                }
            }
            for (int l = 0; l < values.length; l++) {
                double centre = lines.get(l).weight * lines.get(l).law.mean();
                for (int i = 0; i < size; i++) {
                    products[block][l] += (values[l][i] - centre) * totals[from + i];
                    sums[block][l] += values[l][i] - centre;
                }
            }
        });
        double mean = 0;
        for (double total : totals) {
            mean += total / count;
        }
        double[] covariances = new double[lines.size()];
        for (int block = 0; block < blocks; block++) {
            for (int l = 0; l < covariances.length; l++) {
                covariances[l] += (products[block][l] - sums[block][l] * mean) / count;
            }
        }
        return new Drawn(totals, parts, covariances);
    }

    private interface BlockWork {
        void on(int block, double[][] values);
    }

    private void eachBlock(int count, long seed, BlockWork work) {
        int blocks = (count + BLOCK - 1) / BLOCK;
        SplittableRandom root = new SplittableRandom(seed);
        long[] seeds = new long[blocks];
        for (int b = 0; b < blocks; b++) {
            seeds[b] = root.nextLong();
        }
        int workers = Math.max(1, Math.min(blocks, Runtime.getRuntime().availableProcessors()));
        IntStream.range(0, workers).parallel().forEach(w -> {
            double[][] shared = new double[groups][BLOCK];
            double[][] values = new double[lines.size()][BLOCK];
            for (int block = w; block < blocks; block += workers) {
                fill(seeds[block], shared, values);
                work.on(block, values);
            }
        });
    }

    /** All draws of one block; a block is filled whole, so that fewer draws are the first of more. */
    private void fill(long seed, double[][] shared, double[][] values) {
        boolean named = streams.length > 0;
        SplittableRandom random = new SplittableRandom(seed);
        NormalSource normals = new NormalSource(random);
        for (int g = 0; g < shared.length; g++) {
            NormalSource source = named ? new NormalSource(new SplittableRandom(seed ^ RandomNumbers.seed(g, "group"))) : normals;
            for (int i = 0; i < BLOCK; i++) {
                shared[g][i] = source.next();
            }
        }
        for (int l = 0; l < values.length; l++) {
            Line line = lines.get(l);
            if (named) {
                random = new SplittableRandom(seed ^ streams[l]);
                normals = new NormalSource(random);
            }
            draw(line, shared[line.group], normals, values[l]);
            if (line.chance < 1) {
                for (int i = 0; i < BLOCK; i++) {
                    values[l][i] = random.nextDouble() < line.chance ? values[l][i] : 0;
                }
            }
        }
    }

    private static void draw(Line line, double[] group, NormalSource normals, double[] values) {
        double common = line.withGroup;
        double own = Math.sqrt(1 - common * common);
        AmountLaw law = line.law;
        double weight = line.weight;
        for (int i = 0; i < BLOCK; i++) {
            values[i] = weight * law.at(common * group[i] + own * normals.next());
        }
    }

    /**
     * Standard normal numbers.
     *
     * @param count how many
     * @param seed the seed
     * @return numbers of which fewer are the first of more
     */
    public static double[] normals(int count, long seed) {
        return of(List.of(new Line(AmountLaw.normal(0, 1), 0, 0, 1, 1, 0))).totals(count, seed);
    }
}
