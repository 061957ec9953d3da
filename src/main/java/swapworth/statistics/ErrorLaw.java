package swapworth.statistics;

/**
 * The law of the errors about the fitted line, in units of their scale: with a small chance a response is a gross error, such as
 * a price with a digit too many, which tells nothing; else its error follows Student's t or the normal law.
 *
 * <p>A gross error is as likely at any distance within {@value #REACH} scales on either side. A response far off is then more
 * likely to be one than to be a far error, and its pull on the line falls to nothing, where Student's t alone would
 * let it fall as the inverse of the distance. What is predicted of a new response is predicted of one that is no gross error.
 *
 * @param degreesOfFreedom degrees of freedom of Student's t, a whole number of at least 1; {@link #NORMAL} has none
 * @param grossShare the chance of a gross error, at least 0 and below 1
 */
public record ErrorLaw(int degreesOfFreedom, double grossShare) {

    /** Normal errors and no gross ones. */
    public static final ErrorLaw NORMAL = new ErrorLaw(Integer.MAX_VALUE, 0);

    private static final int REACH = 50;

    /** Checks the degrees of freedom and the share. */
    public ErrorLaw {
        if (degreesOfFreedom < 1) {
            throw new IllegalArgumentException("degrees of freedom must be at least 1, not " + degreesOfFreedom);
        }
        if (!(grossShare >= 0 && grossShare < 1)) {
            throw new IllegalArgumentException("a share of gross errors must be at least 0 and below 1, not " + grossShare);
        }
    }

    /**
     * Student's t: heavy tails, so that a price far from the others does not bend the line; no gross errors.
     *
     * @param degreesOfFreedom a whole number of at least 1
     * @return the law
     */
    public static ErrorLaw student(int degreesOfFreedom) {
        return new ErrorLaw(degreesOfFreedom, 0);
    }

    /**
     * The same law with a chance of gross errors.
     *
     * @param share the chance, at least 0 and below 1
     * @return a copy
     */
    public ErrorLaw withGrossErrors(double share) {
        return new ErrorLaw(degreesOfFreedom, share);
    }

    boolean isNormal() {
        return degreesOfFreedom == Integer.MAX_VALUE;
    }

    /**
     * The weight that a residual of z scales gets when the line is fitted by weighted least squares: that of the law without
     * gross errors, times the chance that it is none.
     */
    double weight(double z) {
        if (isNormal()) {
            return chanceOfNoGrossError(z);
        }
        // Rows are weighed more often than anything else is done: what takes a division is shared.
        double part = 1 / (degreesOfFreedom + z * z);
        double weight = (degreesOfFreedom + 1.0) * part;
        return grossShare == 0 ? weight : weight * chanceOfNoGrossError(densityOf(degreesOfFreedom * part), grossDensity());
    }

    /** The chance that a residual of z scales is no gross error. */
    double chanceOfNoGrossError(double z) {
        return grossShare == 0 ? 1 : chanceOfNoGrossError(density(z), grossDensity());
    }

    private double chanceOfNoGrossError(double density, double gross) {
        double usual = (1 - grossShare) * density;
        return usual / (usual + gross);
    }

    /** The density of gross errors, the same at any distance. */
    double grossDensity() {
        return grossShare * (0.5 / REACH);
    }

    /** The logarithm of the density at z of a response that may be a gross error. */
    double logLikelihood(double z) {
        return grossShare == 0 ? logDensity(z) : Math.log((1 - grossShare) * density(z) + grossDensity());
    }

    /** The chance that a response that may be a gross error lies above z: half of the gross errors lie above. */
    double above(double z) {
        return (1 - grossShare) * cumulative(-z) + grossShare / 2;
    }

    /** Fisher information of the location per squared scale: (nu + 1) / (nu + 3), 1 for normal errors. */
    double information() {
        return isNormal() ? 1 : (degreesOfFreedom + 1.0) / (degreesOfFreedom + 3.0);
    }

    /** The logarithm of the density at z of a response that is no gross error. */
    double logDensity(double z) {
        if (isNormal()) {
            return -0.5 * z * z - 0.5 * Math.log(2 * Math.PI);
        }
        double nu = degreesOfFreedom;
        return logConstant() - 0.5 * (nu + 1) * Math.log1p(z * z / nu);
    }

    /** The density at z. */
    double density(double z) {
        return isNormal() ? Normal.density(z) : densityOf(1 / (1 + z * z / degreesOfFreedom));
    }

    /** The density of Student's t, of nu degrees of freedom, at z, by the base nu / (nu + z^2) of its power. */
    private double densityOf(double base) {
        double power = degreesOfFreedom % 2 == 0 ? Math.sqrt(base) : 1;
        for (int k = (degreesOfFreedom + 1) / 2; k > 0; k--) {
            power *= base;
        }
        return StudentT.constant(degreesOfFreedom) * power;
    }

    private double logConstant() {
        return StudentT.logConstant(degreesOfFreedom);
    }

    /** The probability below z. */
    double cumulative(double z) {
        return isNormal() ? Normal.cumulative(z) : StudentT.cumulative(z, degreesOfFreedom);
    }
}
