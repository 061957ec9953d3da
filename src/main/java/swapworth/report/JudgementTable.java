package swapworth.report;

import static java.util.Objects.requireNonNull;

import java.util.Currency;
import java.util.Locale;
import swapworth.listing.Listing;
import swapworth.market.FairValue;
import swapworth.market.Judgement;
import swapworth.market.Range;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** One judged listing by itself: what was asked, what such a car sells for, and how far to believe that. */
public final class JudgementTable {

    private JudgementTable() {
    }

    /**
     * A listing and how its price stands.
     *
     * @param judged the judgement
     * @param currency the base currency of the collection
     * @return one row a figure; remarks stand above the rows, and where there is no value the reason
     */
    public static Table of(Judgement judged, Currency currency) {
        requireNonNull(currency, "currency");
        Listing listing = judged.listing();
        String vehicle = listing.facts().vehicle() + listing.facts().trim().map(t -> " " + t).orElse("")
                + (listing.facts().modelYear().isPresent() ? " of " + listing.facts().modelYear().getAsInt() : "");
        Table.Builder table = Table.titled(judged.car() + ", " + vehicle + ": " + listing.level().words()
                + listing.seenOn().map(d -> ", seen on " + d).orElse("") + ", " + currency.getCurrencyCode())
                .columns(Column.words("figure"), Column.number("found", ""), Column.sentences("what it says"));
        judged.remarks().forEach(r -> table.note(r.substring(0, 1).toUpperCase(Locale.ROOT) + r.substring(1) + "."));
        row(table, "price", Cell.number(listing.price().amount(), 0), "line " + listing.origin().line() + " of " + listing.origin().file());
        judged.valuation().match(v -> rows(table, judged, v), c -> row(table, "fair value", Cell.words(judged.position().words()),
                c.reason() + "; needed: " + c.needed()));
        return table.build();
    }

    private static Table.Builder rows(Table.Builder table, Judgement judged, FairValue value) {
        FairValue.HeldBy held = value.largestAssumption();
        row(table, "fair value", Cell.number(value.median(), 0), "half of such cars cost less; by " + value.carsOfLine()
                + " other cars of the line and " + value.carsInFile() + " in all, its own car left out");
        row(table, "80 % range", range(value.range(0.80)), "holds the price of one such car eight times in ten");
        row(table, "95 % range", range(value.range(0.95)), "holds the price of one such car nineteen times in twenty");
        row(table, "position", Cell.words(judged.position().words()), "where the price stands against the 80 % range");
        row(table, "gap", Cell.signed(judged.gap(), 0), "price less fair value");
        row(table, "gap, %", Cell.signed(judged.gapPercent(), 0), "the same against the fair value");
        row(table, "percentile", Cell.number(judged.percentile(), 0), "so many of a hundred such cars cost less than this price");
        row(table, "held by assumptions", Cell.words(Math.round(100 * value.priorShare()) + " %"), "of what is unsure about the level of"
                + " such cars; most by '" + held.assumption() + "', " + Math.round(100 * held.share()) + " %");
        return row(table, "one car from another", Cell.words(Math.round(100 * value.shareOfSingleCar()) + " %"), "of what is unsure about"
                + " the price: " + value.narrowedBy());
    }

    private static Cell range(Range range) {
        return Cell.words(Cell.format(range.low(), 0) + " to " + Cell.format(range.high(), 0));
    }

    private static Table.Builder row(Table.Builder table, String figure, Cell found, String says) {
        return table.row(Cell.words(figure), found, Cell.words(says));
    }
}
