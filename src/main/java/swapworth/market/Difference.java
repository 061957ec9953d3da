package swapworth.market;

/**
 * How the middle price of one kind of car stands to that of another, both by the same fit.
 *
 * @param percent by how much the first is worth more than the second, per cent of the second; the middle of what is believed
 * @param range80 80 % range, per cent
 * @param range95 95 % range, per cent
 * @param priorShare how much of what is unsure about it assumptions hold, between 0 and 1
 * @param largest the assumption that holds most of it
 */
public record Difference(double percent, Range range80, Range range95, double priorShare, FairValue.HeldBy largest) {
}
