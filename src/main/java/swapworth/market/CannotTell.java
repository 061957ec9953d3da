package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.util.function.Function;

/**
 * There is no answer that the listings would bear.
 *
 * @param reason why, in one sentence
 * @param carsOfLine other cars of the line behind it
 * @param carsInFile other cars in the file
 * @param needed what would help
 */
public record CannotTell(String reason, int carsOfLine, int carsInFile, String needed) implements Valuation {

    /** Checks that nothing is missing. */
    public CannotTell {
        requireNonNull(reason, "reason");
        requireNonNull(needed, "needed");
    }

    /**
     * What is missing beside the listings: no car of the files is behind the answer.
     *
     * @param reason why there is no answer
     * @param needed what would help
     * @return the reason
     */
    public static CannotTell without(String reason, String needed) {
        return new CannotTell(reason, 0, 0, needed);
    }

    /**
     * Why there is no answer and what would help.
     *
     * @return one sentence
     */
    public String sentence() {
        return "Cannot tell: " + reason + "; needed: " + needed + ".";
    }

    @Override
    public <T> T match(Function<FairValue, T> value, Function<CannotTell, T> cannotTell) {
        return cannotTell.apply(this);
    }
}
