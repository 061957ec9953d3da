package swapworth.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Joint draws of the coefficients of a model whose columns a {@link Border} parts: those of the bordering columns are made at once, those
 * of a block, such as a line's, when a contrast asks for them and each time anew from a seed of the block's own. So what is drawn of a
 * contrast does not depend on what was asked before, and of thousands of lines only those asked about cost anything.
 */
final class BorderedDraws {
    private final List<Mode> modes;
    private final Border border;
    /** Of each draw, the bordering coefficients from their mean, before they are scaled. */
    private final double[][] onBorder;
    private final long seed;

    /** One draw about each mode of a list. */
    BorderedDraws(List<Mode> modes, SplittableRandom random) {
        this.modes = modes;
        this.border = factor(0).border();
        this.onBorder = new double[modes.size()][];
        for (int i = 0; i < onBorder.length; i++) {
            onBorder[i] = factor(i).backSolveBorder(Noise.normals(border.shared().length, random));
        }
        this.seed = random.nextLong();
    }

    private BorderedFactor factor(int draw) {
        return (BorderedFactor) modes.get(draw).factor();
    }

    /** Draws of a contrast. */
    double[] of(SparseRow contrast) {
        double[] weights = contrast.writtenOut(border.columns());
        int[] shared = border.shared();
        double[] values = new double[onBorder.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = contrast.dot(modes.get(i).coefficients());
            for (int k = 0; k < shared.length; k++) {
                if (weights[shared[k]] != 0) {
                    values[i] += weights[shared[k]] * factor(i).scale(shared[k]) * onBorder[i][k];
                }
            }
        }
        for (int b = 0; b < border.blocks(); b++) {
            double[] part = Arrays.stream(border.block(b)).mapToDouble(c -> weights[c]).toArray();
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
            factor(i).backSolveBlock(block, onBorder[i], z);
            values[i] += Vectors.dot(weights, 0, z, 0, z.length);
        }
    }
}
