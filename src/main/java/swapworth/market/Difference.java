package swapworth.market;

import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

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

    /**
     * The difference with its ranges and what holds it.
     *
     * @return one row a figure, per cent of the second car's price
     */
    public Table table() {
        return Table.titled("Middle price of the first car against that of the second")
                .columns(Column.words("figure"), Column.number("found", ""), Column.sentences("what it says"))
                .row(Cell.words("difference, %"), Cell.signed(percent, 1), Cell.words("by so much the first is worth more than the second"))
                .row(Cell.words("80 % range"), Cell.words(range(range80)), Cell.words("holds the difference of the middle prices eight"
                        + " times in ten; single cars differ by more"))
                .row(Cell.words("95 % range"), Cell.words(range(range95)), Cell.words("holds it nineteen times in twenty"))
                .row(Cell.words("held by assumptions"), Figures.share(priorShare), Cell.words("of what is unsure about it; most by '"
                        + largest.assumption() + "', " + Math.round(100 * largest.share()) + " %")).build();
    }

    private static String range(Range range) {
        return Cell.signed(range.low(), 1).shown() + " to " + Cell.signed(range.high(), 1).shown();
    }
}
