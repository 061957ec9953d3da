package swapworth.report;

import java.util.ArrayList;
import java.util.List;
import swapworth.listing.CarsFile;
import swapworth.market.FairValue;
import swapworth.market.ModelTables;
import swapworth.market.Position;
import swapworth.market.Range;
import swapworth.market.Valued;
import swapworth.reading.RowsRead;
import swapworth.table.Cell;

/**
 * What a page says of the cars in play: what each is worth and why, and which rows of {@code cars.csv} need a look, for a word that was not
 * understood changes every answer about its car.
 */
public final class CarsSection {
    /** So many cars in play show their comparables: a file of hundreds is no list of cars that somebody means to buy. */
    private static final int MOST_GRIDS = 60;

    private CarsSection() {
    }

    /**
     * The rows to look at.
     *
     * @param cars the cars in play
     * @return one section with questions, words that were not understood, and rows that are not used; none where all is well
     */
    public static List<Section> toLookAt(CarsFile cars) {
        RowsRead rows = cars.read();
        return rows.problems().isEmpty() ? List.of() : List.of(Section.of("cars-read", "What was read of the cars in play",
                Part.prose("Each of these rows may change an answer about its car until it is settled. A fact whose word was not understood"
                        + " stays unknown, and the car is then valued as if the file did not speak of it: write one of the known words, or"
                        + " say in words.csv what yours means: column, word, means."),
                Part.rows(rows.table())));
    }

    /** What each car is worth, and on which facts, comparables and assumptions that rests. */
    static Section inPlay(Valued cars) {
        List<Part> parts = new ArrayList<>(List.of(Part.rows(cars.brief("#play-")), Part.bullets(cars.remarks())));
        int shown = 0;
        for (int c = 0; c < cars.cars().size() && shown < MOST_GRIDS; c++) {
            if (cars.cars().get(c).valuation() instanceof FairValue value) {
                parts.add(why("play-" + (c + 1), cars.cars().get(c), value, cars.currency().getCurrencyCode()));
                shown++;
            }
        }
        return new Section(ListingsPage.IN_PLAY, "Cars in play", parts);
    }

    private static Part why(String id, Valued.ValuedCar car, FairValue value, String currency) {
        String price = car.car().priceOrBid().map(p -> p.amount()).filter(p -> car.position() != Position.CANNOT_TELL)
                .map(p -> " Its price or bid of " + Cell.format(p, 0) + " is " + Cell.signed(100 * (p / value.median() - 1), 0).shown()
                        + " % against that; " + Math.round(value.percentile(p)) + " % of such cars are predicted to cost less.").orElse("");
        return Part.folded(id, "Why: the comparables of " + car.car().name() + ", " + car.car().facts().vehicle(),
                Part.prose(basis(value, "car") + price), Part.prose("The row says: " + car.car().facts().described()),
                Part.rows(ModelTables.comparables(value.comparables(), currency)));
    }

    /**
     * A value with what must stand beside it: ranges, level of trade, day, the cars behind it, and what assumptions hold.
     *
     * @param car what one of those is called: a car, or another one where its own is left out
     */
    static String basis(FairValue value, String car) {
        FairValue.HeldBy held = value.largestAssumption();
        return "Fair value " + Cell.format(value.median(), 0) + " (" + value.subject().level().words()
                + value.subject().on().map(d -> " on " + d).orElse("") + "), 80 % range " + ends(value.range(0.80)) + ", 95 % range "
                + ends(value.range(0.95)) + ", by " + value.carsOfLine() + " " + car + (value.carsOfLine() == 1 ? "" : "s")
                + " of this line and " + value.carsInFile() + " in all. Assumptions hold " + Math.round(100 * value.priorShare())
                + " % of what is unsure about its level, the largest part '" + held.assumption() + "' with "
                + Math.round(100 * held.share()) + " %; " + value.narrowedBy() + ".";
    }

    private static String ends(Range range) {
        return Cell.format(range.low(), 0) + " to " + Cell.format(range.high(), 0);
    }
}
