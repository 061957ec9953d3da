package swapworth.statistics;

import java.util.List;
import java.util.stream.IntStream;

/**
 * That all coefficients of some blocks may be 0 at once: what they stand for tells nothing in these rows.
 *
 * @param chance of it, before any row speaks
 * @param blocks the names of their blocks
 */
record Absence(double chance, List<String> blocks) {
    /** Nothing may be absent. */
    static final Absence NONE = new Absence(0, List.of());
    /** An absent coefficient has this share of its stated spread, so that the columns of a fit stay the same. */
    private static final double NEXT_TO_NOTHING = 1e-4;
    /** What rows must say in favour of absence before it is weighed. */
    private static final double TWICE = 2;

    Absence {
        if (!(chance >= 0 && chance < 1)) {
            throw new IllegalArgumentException("a chance of " + chance + ", not from 0 to below 1");
        }
        blocks = List.copyOf(blocks);
    }

    private boolean concerns(PriorBlock block) {
        return blocks.contains(block.name());
    }

    /**
     * The same blocks with those that may be absent held at 0.
     *
     * @throws IllegalArgumentException if nothing is assumed of one of them: then no chance can be weighed
     */
    List<PriorBlock> without(List<PriorBlock> priors) {
        return priors.stream().map(b -> concerns(b) ? heldAtZero(b) : b).toList();
    }

    private static PriorBlock heldAtZero(PriorBlock block) {
        if (block.kind() == PriorBlock.Kind.FLAT || Double.isInfinite(block.spreadAt(0))) {
            throw new IllegalArgumentException("nothing is assumed of the block '" + block.name() + "', which may be absent");
        }
        double[] spread = IntStream.range(0, block.count()).mapToDouble(j -> NEXT_TO_NOTHING * block.spreadAt(j)).toArray();
        return new PriorBlock(block.name(), block.from(), PriorBlock.Kind.STATED, PriorBlock.Role.PRIMARY, new double[block.count()],
                spread);
    }

    /**
     * Whether the rows speak for absence, by the coefficients whose spreads are stated, at one mode: whether these are more than twice as
     * dense at 0 after the rows have spoken as before (the ratio of J. M. Dickey, Ann. Math. Statist. 42 (1971) 204-223, from memory).
     * Where they are not, what is assumed of the coefficients stands as it is stated.
     */
    boolean isSpokenFor(List<PriorBlock> priors, Mode mode) {
        int[] columns = priors.stream().filter(b -> concerns(b) && b.kind() == PriorBlock.Kind.STATED)
                .flatMapToInt(b -> IntStream.range(b.from(), b.from() + b.count())).toArray();
        if (chance == 0 || columns.length == 0) {
            return false;
        }
        int k = columns.length;
        double[] after = new double[k];
        double[] covariance = new double[k * k];
        double before = 0;
        for (int r = 0; r < k; r++) {
            double[] unit = new double[mode.design().columns()];
            unit[columns[r]] = 1;
            double[] column = mode.factor().solve(unit);
            after[r] = mode.coefficients()[columns[r]];
            for (int c = 0; c < k; c++) {
                covariance[r * k + c] = column[columns[c]];
            }
            double variance = mode.spreads().variance(SparseRow.of(new int[] {columns[r]}, new double[] {1}));
            double mean = mode.spreads().mean()[columns[r]];
            before += mean * mean / variance + Math.log(variance);
        }
        Cholesky factor = Cholesky.of(covariance, k);
        double[] solved = factor.solve(after);
        return IntStream.range(0, k).mapToDouble(r -> after[r] * solved[r]).sum() + factor.logDeterminant()
                < before - 2 * Math.log(TWICE);
    }

    /**
     * The log density of the common spreads of blocks that may be absent, where they are held, over that where it is largest: of fits
     * without these blocks nothing is held there.
     */
    double logDensityOfSpreads(List<PriorBlock> priors, Spreads at) {
        double sum = 0;
        for (int b = 0; b < priors.size(); b++) {
            PriorBlock block = priors.get(b);
            if (concerns(block) && block.learned()) {
                double t = at.common(b) / block.spreadAt(0);
                sum += Math.log(t) + (1 - t * t) / 2;
            }
        }
        return sum;
    }
}
