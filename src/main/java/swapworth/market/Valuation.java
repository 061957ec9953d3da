package swapworth.market;

import java.util.function.Function;

/** The answer to "what is it worth": a fair value, or a reason why the listings cannot tell. */
public sealed interface Valuation permits FairValue, CannotTell {

    /**
     * One result from either case.
     *
     * @param <T> type of the result
     * @param value what to do with a fair value
     * @param cannotTell what to do with a reason
     * @return the result
     */
    <T> T match(Function<FairValue, T> value, Function<CannotTell, T> cannotTell);
}
