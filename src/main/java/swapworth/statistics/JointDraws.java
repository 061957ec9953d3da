package swapworth.statistics;

import java.util.SplittableRandom;
import java.util.function.Function;

/**
 * Joint draws from a posterior: draw i of every quantity belongs to the same state of the world, so that quantities that share rows
 * and assumptions are recombined draw by draw, never as if independent.
 */
public final class JointDraws {
    private final Function<SparseRow, double[]> contrasts;
    private final double[] scales;
    private final double[] growths;
    private final double[] walkScales;
    private final ErrorLaw law;

    /**
     * @param contrasts gives the draws of a contrast
     * @param scales of each draw, the error scale
     * @param growths of each draw, how fast the error scale grows
     * @param walkScales of each draw, the factor on the steps of a walk
     * @param law of the errors
     */
    JointDraws(Function<SparseRow, double[]> contrasts, double[] scales, double[] growths, double[] walkScales, ErrorLaw law) {
        this.contrasts = contrasts;
        this.scales = scales;
        this.growths = growths;
        this.walkScales = walkScales;
        this.law = law;
    }

    /**
     * The number of draws, m.
     *
     * @return at least 0
     */
    public int count() {
        return scales.length;
    }

    /**
     * Draws of a contrast: what is believed of it, no error of a single response added.
     *
     * @param contrast weights of the coefficients
     * @return m numbers
     */
    public double[] of(SparseRow contrast) {
        return contrasts.apply(contrast);
    }

    /**
     * Draws of how far a walk that tends to go on as it went moves in so many further steps.
     *
     * @param lastStep contrast of its last step
     * @param sd the stated middle of the standard deviation of its steps
     * @param correlation of one step with the next
     * @param steps number of further steps
     * @param seed seed of the steps: the same for further steps of the same walk
     * @return m sums of steps; those of fewer steps with the same seed are their first part
     */
    public double[] onward(SparseRow lastStep, double sd, double correlation, int steps, long seed) {
        double[] last = of(lastStep);
        double fresh = sd * Math.sqrt(1 - correlation * correlation);
        double[] sums = new double[last.length];
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < sums.length; i++) {
            SplittableRandom own = random.split();
            double step = last[i];
            for (int k = 0; k < steps; k++) {
                step = correlation * step + fresh * walkScales[i] * Noise.normal(own);
                sums[i] += step;
            }
        }
        return sums;
    }

    /**
     * Draws of one new response, each with an error of its own.
     *
     * @param row its row of the design
     * @param inflation the factor on its error scale
     * @param growth its measure along which the error scale grows
     * @param seed seed of the errors: another one for another response
     * @return m numbers
     */
    public double[] responses(SparseRow row, double inflation, double growth, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] values = of(row);
        for (int i = 0; i < values.length; i++) {
            values[i] += inflation * scales[i] * StrictMath.exp(growths[i] * growth) * Noise.of(law, random);
        }
        return values;
    }
}
