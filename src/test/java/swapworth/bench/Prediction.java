package swapworth.bench;

/**
 * What a method says of one left-out car.
 *
 * @param value the predicted price
 * @param low80 not a number where the method gives no range; so the other ends
 * @param high80 upper end of the 80 % range
 * @param low95 lower end of the 95 % range
 * @param high95 upper end of the 95 % range
 * @param answer whether the value is the method's own
 */
record Prediction(double value, double low80, double high80, double low95, double high95, Answer answer) {

    /** Whether a method answered, or the median of the line stands in for it. */
    enum Answer { OWN, CANNOT_TELL }

    static Prediction point(double value) {
        return without(value, Answer.OWN);
    }

    static Prediction cannotTell(double standIn) {
        return without(standIn, Answer.CANNOT_TELL);
    }

    private static Prediction without(double value, Answer answer) {
        return new Prediction(value, Double.NaN, Double.NaN, Double.NaN, Double.NaN, answer);
    }
}
