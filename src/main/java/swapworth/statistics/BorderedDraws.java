package swapworth.statistics;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Joint draws about the mode of a model whose columns a {@link Border} parts: those of the bordering columns are made at once, those of a
 * block, such as a line's, when a contrast asks for them and each time anew from a seed of the block's own. So what is drawn of a contrast
 * does not depend on what was asked before, and of thousands of lines only those asked about cost anything.
 */
final class BorderedDraws {
    private final Mode mode;
    private final BorderedFactor factor;
    private final Border border;
    /** Of each draw, the bordering coefficients from their mode, before they are scaled. */
    private final double[][] onBorder;
    private final long seed;

    BorderedDraws(Mode mode, BorderedFactor factor, int count, SplittableRandom random) {
        this.mode = mode;
        this.factor = factor;
        this.border = factor.border();
        this.onBorder = new double[count][];
        for (int i = 0; i < count; i++) {
            onBorder[i] = factor.backSolveBorder(Noise.normals(border.shared().length, random));
        }
        this.seed = random.nextLong();
    }

    /** Draws of a contrast. */
    double[] of(SparseRow contrast) {
        double[] weights = contrast.writtenOut(border.columns());
        double[] shared = Arrays.stream(border.shared()).mapToDouble(c -> weights[c] * factor.scale(c)).toArray();
        double[] values = new double[onBorder.length];
        Arrays.fill(values, contrast.dot(mode.coefficients()));
        for (int i = 0; i < values.length; i++) {
            values[i] += Vectors.dot(shared, 0, onBorder[i], 0, shared.length);
        }
        for (int b = 0; b < border.blocks(); b++) {
            double[] part = BorderedFactor.gathered(border.block(b), weights);
            if (Arrays.stream(part).anyMatch(w -> w != 0)) {
                addBlock(b, part, values);
            }
        }
        return values;
    }

    private void addBlock(int block, double[] weights, double[] values) {
        SplittableRandom random = new SplittableRandom(RandomNumbers.seed(seed, "block " + block));
        for (int i = 0; i < values.length; i++) {
            double[] z = Noise.normals(weights.length, random);
            factor.backSolveBlock(block, onBorder[i], z);
            values[i] += Vectors.dot(weights, 0, z, 0, z.length);
        }
    }
}
