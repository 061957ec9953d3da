package swapworth.statistics;

import java.util.Arrays;
import java.util.List;

/** The prior of all coefficients at stated spreads: its precision matrix, block by block. */
final class Spreads {
    /** However little the levels tell of their spread, its logarithm is not taken to be less sure than by this much information. */
    private static final double LEAST_INFORMATION = 3;

    private final List<PriorBlock> blocks;
    private final int p;
    private final double[] mean;
    private final double[] common;
    private final double[] widening;
    private final double secondaryScale;
    private final double walkScale;

    private Spreads(List<PriorBlock> blocks, int p, double[] common, double[] widening, double secondaryScale, double walkScale) {
        this.blocks = blocks;
        this.p = p;
        this.common = common;
        this.widening = widening;
        this.secondaryScale = secondaryScale;
        this.walkScale = walkScale;
        this.mean = new double[p];
        for (PriorBlock block : blocks) {
            for (int j = 0; j < block.count(); j++) {
                mean[block.from() + j] = block.meanAt(j);
            }
        }
    }

    /**
     * The prior at stated spreads, the secondary ones as they are.
     *
     * @param blocks the blocks
     * @param p number of coefficients
     * @param common the common standard deviation of each block that has one, by the number of the block
     */
    static Spreads of(List<PriorBlock> blocks, int p, double[] common) {
        double[] widening = new double[blocks.size()];
        Arrays.fill(widening, 1);
        return new Spreads(blocks, p, common, widening, 1, 1);
    }

    List<PriorBlock> blocks() {
        return blocks;
    }

    double[] mean() {
        return mean;
    }

    /** The number of the block of a name. */
    int number(String name) {
        for (int b = 0; b < blocks.size(); b++) {
            if (blocks.get(b).name().equals(name)) {
                return b;
            }
        }
        throw new IllegalArgumentException("there is no block '" + name + "'");
    }

    double common(int block) {
        return common[block];
    }

    Spreads withCommon(double[] changed) {
        return new Spreads(blocks, p, changed, widening, secondaryScale, walkScale);
    }

    /** With a common factor on the secondary spreads, and one on those of walks that tend to go on as they went. */
    Spreads withScales(double secondary, double walk) {
        return new Spreads(blocks, p, common, widening, secondary, walk);
    }

    /** The factor on the stated middle spread of walks that tend to go on as they went. */
    double walkScale() {
        return walkScale;
    }

    /**
     * The prior with levels not seen as wide as what is unsure of their common spread makes them: with s the standard deviation of
     * the logarithm of the spread, exp(s^2) times wider, the root of the mean square of a ln-normal law. The information on that
     * logarithm is 2 (q - 1) + 4 t^2 / a^2 for q levels that are known, less what is unsure of the levels themselves: the variance
     * of their sum of squares over t^4 (T. A. Louis, J. Roy. Statist. Soc. B 44 (1982) 226-233, from memory).
     */
    Spreads withUnseenWidened(double[] coefficients, Covariance covariance) {
        double[] wider = widening.clone();
        for (int b = 0; b < wider.length; b++) {
            PriorBlock block = blocks.get(b);
            if (block.kind() == PriorBlock.Kind.COMMON_AND_UNSEEN) {
                double sd = sd(b, 0);
                double unsure = varianceOfSquares(block, coefficients, covariance) / (sd * sd * sd * sd);
                double held = 4 * common[b] * common[b] / (block.spreadAt(0) * block.spreadAt(0));
                double information = Math.max(LEAST_INFORMATION, 2.0 * (block.seen() - 1) + held - unsure);
                wider[b] = Math.exp(1 / information);
            }
        }
        return new Spreads(blocks, p, common, wider, secondaryScale, walkScale);
    }

    private double varianceOfSquares(PriorBlock block, double[] coefficients, Covariance covariance) {
        double[] departure = new double[block.seen()];
        for (int j = 0; j < departure.length; j++) {
            departure[j] = coefficients[block.from() + j] - mean[block.from() + j];
        }
        return covariance.varianceOfSquares(block.from(), departure);
    }

    /** The standard deviation of coefficient {@code offset} of a block, or of its steps where it is a walk. */
    private double sd(int b, int offset) {
        PriorBlock block = blocks.get(b);
        double sd = block.learned() ? common[b] : block.spreadAt(offset);
        sd *= offset < block.seen() ? 1 : widening[b];
        sd *= block.kind() == PriorBlock.Kind.TREND_WALK ? walkScale : 1;
        return block.role() == PriorBlock.Role.SECONDARY ? sd * secondaryScale : sd;
    }

    /** What is new in step {@code offset} of a walk: its standard deviation, given the step before. */
    private double newSd(int b, int offset) {
        double correlation = blocks.get(b).correlation();
        return offset == 0 ? sd(b, 0) : sd(b, offset) * Math.sqrt(1 - correlation * correlation);
    }

    /** The weights by which what is new in step {@code offset} of a walk is made up of the coefficients before, at and after it. */
    private double[] newWeights(PriorBlock block, int offset) {
        double before = offset == 0 ? 0 : -block.correlation();
        return new double[] {before, 1 - before, offset + 1 < block.count() ? -1 : 0};
    }

    /** Adds the precision matrix to a matrix that is held with a border. */
    void addPrecision(double[] matrix, Border border) {
        for (int b = 0; b < blocks.size(); b++) {
            PriorBlock block = blocks.get(b);
            int from = block.from();
            for (int j = 0; j < block.count(); j++) {
                int own = from + j;
                switch (block.kind()) {
                    case FLAT -> { }
                    case STATED, COMMON, COMMON_AND_UNSEEN -> matrix[border.at(own, own)] += 1 / (sd(b, j) * sd(b, j));
                    case WALK, STATED_WALK, TREND_WALK -> addPrecisionOfStep(b, j, matrix, border);
                }
            }
        }
    }

    /** Adds what step {@code offset} of a walk adds to the precision of the coefficients before, at and after it. */
    private void addPrecisionOfStep(int b, int offset, double[] matrix, Border border) {
        double sd = newSd(b, offset);
        double[] weights = newWeights(blocks.get(b), offset);
        int before = blocks.get(b).from() + offset - 1;
        for (int r = 0; r < 3; r++) {
            for (int c = 0; c <= r; c++) {
                double product = weights[r] * weights[c];
                if (product != 0) {
                    matrix[border.at(before + r, before + c)] += product / (sd * sd);
                }
            }
        }
    }

    /** The precision matrix of one block times the block's part of a vector; added to {@code into}. */
    private void addBlockTimes(int b, double[] vector, double[] into) {
        PriorBlock block = blocks.get(b);
        int from = block.from();
        for (int j = 0; j < block.count(); j++) {
            int at = from + j;
            switch (block.kind()) {
                case FLAT -> { }
                case STATED, COMMON, COMMON_AND_UNSEEN -> into[at] += vector[at] / (sd(b, j) * sd(b, j));
                case WALK, STATED_WALK, TREND_WALK -> addStepTimes(b, j, vector, into);
            }
        }
    }

    /** The same of step {@code offset} of a walk. */
    private void addStepTimes(int b, int offset, double[] vector, double[] into) {
        double sd = newSd(b, offset);
        double[] weights = newWeights(blocks.get(b), offset);
        int before = blocks.get(b).from() + offset - 1;
        double sum = 0;
        for (int r = 0; r < 3; r++) {
            sum += weights[r] == 0 ? 0 : weights[r] * vector[before + r];
        }
        for (int r = 0; r < 3; r++) {
            if (weights[r] != 0) {
                into[before + r] += weights[r] * sum / (sd * sd);
            }
        }
    }

    /** The precision matrix times a vector. */
    double[] times(double[] vector) {
        double[] product = new double[p];
        for (int b = 0; b < blocks.size(); b++) {
            addBlockTimes(b, vector, product);
        }
        return product;
    }

    /** The prior variance of a contrast. */
    double variance(SparseRow contrast) {
        double[] x = new double[p];
        for (int e = 0; e < contrast.size(); e++) {
            x[contrast.index(e)] = contrast.value(e);
        }
        double sum = 0;
        for (int b = 0; b < blocks.size(); b++) {
            PriorBlock block = blocks.get(b);
            double walked = 0;
            double together = 0;
            for (int j = 0; j < block.count(); j++) {
                double weight = x[block.from() + j];
                // The step after coefficient j is shared by all coefficients up to j, and goes with the steps before it.
                together = block.correlation() * (together + walked);
                walked += weight;
                switch (block.kind()) {
                    case FLAT -> sum += weight == 0 ? 0 : Double.POSITIVE_INFINITY;
                    // A contrast names few of thousands of levels.
                    case STATED, COMMON, COMMON_AND_UNSEEN -> sum += weight == 0 ? 0 : weight * weight * sd(b, j) * sd(b, j);
                    case WALK, STATED_WALK, TREND_WALK -> sum += walked * (walked + 2 * together) * sd(b, j) * sd(b, j);
                }
            }
        }
        return sum;
    }

    /** For each block, the quadratic form of a vector with the block's precision matrix. */
    double[] quadraticByBlock(double[] vector) {
        double[] byBlock = new double[blocks.size()];
        double[] product = new double[p];
        for (int b = 0; b < byBlock.length; b++) {
            addBlockTimes(b, vector, product);
            PriorBlock block = blocks.get(b);
            for (int j = block.from(); j < block.from() + block.count(); j++) {
                byBlock[b] += vector[j] * product[j];
            }
        }
        return byBlock;
    }

    /** The logarithm of the prior density of the coefficients, the constants of flat blocks left out. */
    double logDensity(double[] coefficients) {
        double[] departure = coefficients.clone();
        for (int j = 0; j < p; j++) {
            departure[j] -= mean[j];
        }
        double sum = 0;
        double[] quadratic = quadraticByBlock(departure);
        for (int b = 0; b < blocks.size(); b++) {
            PriorBlock block = blocks.get(b);
            if (block.kind() != PriorBlock.Kind.FLAT) {
                sum -= 0.5 * quadratic[b];
                for (int j = 0; j < block.count(); j++) {
                    sum -= Math.log(block.walks() ? newSd(b, j) : sd(b, j)) + 0.5 * Math.log(2 * Math.PI);
                }
            }
        }
        return sum;
    }

    /** The trace of a covariance matrix times the precision matrix: how many coefficients the prior holds. */
    double trace(Covariance covariance) {
        double sum = 0;
        for (int b = 0; b < blocks.size(); b++) {
            PriorBlock block = blocks.get(b);
            for (int j = 0; j < block.count() && block.kind() != PriorBlock.Kind.FLAT; j++) {
                double sd = block.walks() ? newSd(b, j) : sd(b, j);
                sum += varianceOf(block, j, covariance) / (sd * sd);
            }
        }
        return sum;
    }

    /** The variance of a coefficient, or of what is new in its step to the next where the block is a walk. */
    private double varianceOf(PriorBlock block, int offset, Covariance covariance) {
        int at = block.from() + offset;
        if (!block.walks()) {
            return covariance.at(at, at);
        }
        double[] weights = newWeights(block, offset);
        double variance = 0;
        for (int r = 0; r < 3; r++) {
            for (int c = 0; c < 3; c++) {
                double product = weights[r] * weights[c];
                variance += product == 0 ? 0 : product * covariance.at(at - 1 + r, at - 1 + c);
            }
        }
        return variance;
    }

    /**
     * The expected sum of squares of the departures (or steps) of a block, per unit of the secondary scale: the departures at the
     * mode plus their posterior variances.
     */
    double expectedSquares(int b, double[] coefficients, Covariance covariance) {
        PriorBlock block = blocks.get(b);
        double sum = 0;
        for (int j = 0; j < block.seen(); j++) {
            int at = block.from() + j;
            double d = coefficients[at] - mean[at];
            if (block.walks() && j + 1 < block.count()) {
                d -= coefficients[at + 1] - mean[at + 1];
            }
            sum += d * d + varianceOf(block, j, covariance);
        }
        double scale = block.role() == PriorBlock.Role.SECONDARY ? secondaryScale : 1;
        return sum / (scale * scale);
    }
}
