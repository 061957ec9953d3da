package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import swapworth.listing.Listing;
import swapworth.reading.Spelling;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * One judged listing by itself: what was asked, what such a car sells for, why, and what would tell more.
 *
 * @param judgement how its price stands
 * @param currency the base currency of the collection
 */
public record JudgedListing(Judgement judgement, Currency currency) {
    /** A price of more than twice the value is likelier a typing error than an offer. */
    private static final double MOST_GAP_PERCENT = 100;

    /** Checks that nothing is missing. */
    public JudgedListing {
        requireNonNull(judgement, "judgement");
        requireNonNull(currency, "currency");
    }

    /**
     * A car at its latest price.
     *
     * @param judged the judged listings
     * @param car the name of the car: the id of its advertisement, or the name under which the tables list it; case, spaces and hyphens
     *     make no other name
     * @return its latest sighting, judged
     * @throws IllegalArgumentException if no car has this name
     */
    public static JudgedListing of(Judged judged, String car) {
        requireNonNull(car, "car");
        return judged.latest().stream().filter(j -> j.car().equals(car))
                .findFirst().or(() -> judged.latest().stream().filter(j -> Spelling.name(j.car()).equals(Spelling.name(car))).findFirst())
                .map(j -> of(judged, j)).orElseThrow(() -> new IllegalArgumentException("no car is called '" + car + "'; the first of "
                        + judged.read().cars().size() + " is called '" + judged.latest().get(0).car() + "'"));
    }

    /**
     * Of the cars still on offer, as far as the rows know, the one whose latest price stands furthest above its value in per cent, but
     * for prices of more than twice the value, which are likelier typing errors.
     *
     * @param judged the judged listings, one at least
     * @return its latest sighting, judged; the last car where none on offer has a value
     */
    public static JudgedListing dearestOnOffer(Judged judged) {
        List<Judgement> latest = judged.latest();
        return of(judged, judged.stillOffered().stream().filter(j -> j.gapPercent() <= MOST_GAP_PERCENT)
                .max(Comparator.comparingDouble(Judgement::gapPercent)).orElse(latest.get(latest.size() - 1)));
    }

    private static JudgedListing of(Judged judged, Judgement judgement) {
        return new JudgedListing(judgement, judged.read().baseCurrency());
    }

    /**
     * How its price stands.
     *
     * @return one row a figure; remarks stand above the rows, and where there is no value the reason
     */
    public Table table() {
        Listing listing = judgement.listing();
        Table.Builder table = Table.titled(judgement.car() + ", " + listing.facts().words() + ": " + listing.level().words()
                + listing.seenOn().map(d -> ", seen on " + d).orElse("") + ", " + currency.getCurrencyCode())
                .columns(Column.words("figure"), Column.number("found", ""), Column.sentences("what it says"));
        judgement.remarks().forEach(r -> table.note(Figures.capital(r) + "."));
        row(table, "price", Figures.asSeen(listing.price().amount()), "line " + listing.origin().line() + " of " + listing.origin().file());
        return judgement.valuation().match(v -> rows(table, v), c -> row(table, "fair value", Cell.words(judgement.position().words()),
                c.reason() + "; needed: " + c.needed()).build());
    }

    private Table rows(Table.Builder table, FairValue value) {
        value.ranges(table);
        row(table, "position", Cell.words(judgement.position().words()), "where the price stands against the 80 % range");
        row(table, "gap", Figures.signedMoney(judgement.gap()), "price less fair value");
        row(table, "gap, %", Cell.signed(judgement.gapPercent(), 0), "the same against the fair value");
        row(table, "percentile", Cell.number(judgement.percentile(), 0), "so many of a hundred such cars cost less than this price");
        return value.held(table);
    }

    private static Table.Builder row(Table.Builder table, String figure, Cell found, String says) {
        return table.row(Cell.words(figure), found, Cell.words(says));
    }

    /**
     * The cars it is compared with, each adjusted toward it line by line.
     *
     * @return the grid, which multiplies out to the value; why there is none where there is no value
     */
    public Answer<Table> comparables() {
        return judgement.valuation().match(v -> new Answer.Told<>(ModelTables.comparables(v.comparables(), currency.getCurrencyCode())),
                Answer.NotTold::new);
    }

    /**
     * What would narrow the range most, and how much of it no listing can narrow.
     *
     * @return sentences
     */
    public String narrowedBy() {
        return judgement.valuation().match(v -> judgement.car() + ": " + v.narrowedBy()
                + ". How one such car differs from another makes up "
                + Math.round(100 * v.shareOfSingleCar()) + " % of what is unsure about its price.",
                c -> judgement.car() + ": " + c.reason() + "; needed: " + c.needed() + ".");
    }
}
