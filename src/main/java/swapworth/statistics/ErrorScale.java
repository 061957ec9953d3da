package swapworth.statistics;

/** What is known of the scale of the errors before the rows speak. */
public sealed interface ErrorScale {

    /**
     * A scale that is as unsure as somebody says.
     *
     * @param middle above 0
     * @param logSpread standard deviation of its logarithm; 0 where it is known
     * @return the scale
     */
    static ErrorScale of(double middle, double logSpread) {
        return logSpread == 0 ? new Stated(middle) : new Unsure(middle, logSpread);
    }

    /**
     * A scale that most likely is about what somebody says, but may be another one altogether: the logarithm is of Student's t with 3
     * degrees of freedom. It is held near its middle while rows say little, and let go where they say that it is far off, as of cars whose
     * prices all but agree; never below a five hundredth of the middle, where rows follow from their facts and no error is left to tell.
     *
     * @param middle above 0
     * @param logSpread scale of the law of its logarithm; 0 where it is known
     * @return the scale
     */
    static ErrorScale guessed(double middle, double logSpread) {
        return logSpread == 0 ? new Stated(middle) : new Unsure(middle, logSpread, Unsure.HEAVY);
    }

    /**
     * The scale is known.
     *
     * @param scale above 0
     */
    record Stated(double scale) implements ErrorScale {
        /** Checks the scale. */
        public Stated {
            if (!(scale > 0)) {
                throw new IllegalArgumentException("an error scale must be above 0, not " + scale);
            }
        }
    }

    /**
     * The logarithm of the scale is normal, or of Student's t, about the logarithm of its middle.
     *
     * @param middle above 0
     * @param logSpread standard deviation of the logarithm, of Student's t its scale; infinite for "anything"
     * @param degreesOfFreedom of Student's t, at least 1; {@link Integer#MAX_VALUE} for a normal law
     */
    record Unsure(double middle, double logSpread, int degreesOfFreedom) implements ErrorScale {
        private static final int HEAVY = 3;
        private static final double LEAST_SHARE = 1.0 / 500;

        /** Checks the figures. */
        public Unsure {
            if (!(middle > 0) || !(logSpread > 0) || degreesOfFreedom < 1) {
                throw new IllegalArgumentException("an error scale of " + middle + " with log spread " + logSpread + " and "
                        + degreesOfFreedom + " degrees of freedom is none");
            }
        }

        /**
         * The logarithm is normal.
         *
         * @param middle above 0
         * @param logSpread standard deviation of the logarithm; infinite for "anything"
         */
        public Unsure(double middle, double logSpread) {
            this(middle, logSpread, Integer.MAX_VALUE);
        }

        private boolean isNormal() {
            return degreesOfFreedom == Integer.MAX_VALUE;
        }

        /** What the scale is never taken to be below; 0 where the law itself holds it up. */
        double least() {
            return isNormal() ? 0 : LEAST_SHARE * middle;
        }

        /** The logarithm of the density of a logarithm of the scale, but for a constant. */
        double logDensity(double logScale) {
            double z = (logScale - Math.log(middle)) / logSpread;
            return isNormal() ? -z * z / 2 : -(degreesOfFreedom + 1.0) / 2 * Math.log1p(z * z / degreesOfFreedom);
        }

        /** The precision of a normal law about the same middle that pulls a logarithm of the scale toward it as this one does. */
        double hold(double logScale) {
            double off = logScale - Math.log(middle);
            return isNormal() ? 1 / (logSpread * logSpread)
                    : (degreesOfFreedom + 1.0) / (degreesOfFreedom * logSpread * logSpread + off * off);
        }
    }
}
