package swapworth.donor;

import java.util.function.Function;
import swapworth.market.Answer;

/** The answer to "what is the most that I can bid": a bid, or why there is none. */
public sealed interface BidAnswer permits HighestBid, NoBid {

    /**
     * One result from either case.
     *
     * @param <T> type of the result
     * @param bid what to do with a bid
     * @param none what to do with a reason why there is none
     * @return the result
     */
    <T> T match(Function<HighestBid, T> bid, Function<NoBid, T> none);

    /**
     * The same as an answer of the house, from which more can follow.
     *
     * @return the bid, or why there is none and what would help
     */
    default Answer<HighestBid> answer() {
        return match(Answer.Told::new, none -> new Answer.NotTold<>(none.cannotTell()));
    }
}
