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
     * The logarithm of the scale is normal about the logarithm of its middle.
     *
     * @param middle above 0
     * @param logSpread standard deviation of the logarithm; infinite for "anything"
     */
    record Unsure(double middle, double logSpread) implements ErrorScale {
        /** Checks the figures. */
        public Unsure {
            if (!(middle > 0) || !(logSpread > 0)) {
                throw new IllegalArgumentException("an error scale of " + middle + " with log spread " + logSpread + " is none");
            }
        }
    }
}
