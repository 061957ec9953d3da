package swapworth.statistics;

/**
 * The law of the errors about the fitted line, in units of their scale.
 *
 * @param degreesOfFreedom degrees of freedom of Student's t, a whole number of at least 1; {@link #NORMAL} has none
 */
public record ErrorLaw(int degreesOfFreedom) {

    /** Normal errors. */
    public static final ErrorLaw NORMAL = new ErrorLaw(Integer.MAX_VALUE);

    /** Checks the degrees of freedom. */
    public ErrorLaw {
        if (degreesOfFreedom < 1) {
            throw new IllegalArgumentException("degrees of freedom must be at least 1, not " + degreesOfFreedom);
        }
    }

    /**
     * Student's t: heavy tails, so that a mistyped price does not bend the line.
     *
     * @param degreesOfFreedom a whole number of at least 1
     * @return the law
     */
    public static ErrorLaw student(int degreesOfFreedom) {
        return new ErrorLaw(degreesOfFreedom);
    }

    boolean isNormal() {
        return degreesOfFreedom == Integer.MAX_VALUE;
    }

    /** The weight that a residual of z scales gets when the line is fitted by weighted least squares: 1 at the mean of the law. */
    double weight(double z) {
        return isNormal() ? 1 : (degreesOfFreedom + 1.0) / (degreesOfFreedom + z * z);
    }

    /** Fisher information of the location per squared scale: (nu + 1) / (nu + 3), 1 for normal errors. */
    double information() {
        return isNormal() ? 1 : (degreesOfFreedom + 1.0) / (degreesOfFreedom + 3.0);
    }

    /** The logarithm of the density at z. */
    double logDensity(double z) {
        if (isNormal()) {
            return -0.5 * z * z - 0.5 * Math.log(2 * Math.PI);
        }
        double nu = degreesOfFreedom;
        return logConstant() - 0.5 * (nu + 1) * Math.log1p(z * z / nu);
    }

    /** The density at z. */
    double density(double z) {
        if (isNormal()) {
            return Normal.density(z);
        }
        double base = 1 / (1 + z * z / degreesOfFreedom);
        double power = degreesOfFreedom % 2 == 0 ? Math.sqrt(base) : 1;
        for (int k = (degreesOfFreedom + 1) / 2; k > 0; k--) {
            power *= base;
        }
        return Math.exp(logConstant()) * power;
    }

    private double logConstant() {
        return StudentT.logConstant(degreesOfFreedom);
    }

    /** The probability below z. */
    double cumulative(double z) {
        return isNormal() ? Normal.cumulative(z) : StudentT.cumulative(z, degreesOfFreedom);
    }
}
