package swapworth.statistics;

import java.util.SplittableRandom;

/**
 * Joint draws from a posterior: draw i of every quantity belongs to the same state of the world, so that quantities that share rows
 * and assumptions are recombined draw by draw, never as if independent.
 */
public final class JointDraws {
    private final double[][] coefficients;
    private final double[] scales;
    private final double[] growths;
    private final ErrorLaw law;

    JointDraws(double[][] coefficients, double[] scales, double[] growths, ErrorLaw law) {
        this.coefficients = coefficients;
        this.scales = scales;
        this.growths = growths;
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
        double[] values = new double[count()];
        for (int i = 0; i < values.length; i++) {
            values[i] = contrast.dot(coefficients[i]);
        }
        return values;
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
