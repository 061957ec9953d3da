package swapworth.donor;

/** The answer to "what is the most that I can bid": a bid, or why there is none. */
public sealed interface BidAnswer permits HighestBid, NoBid {
}
