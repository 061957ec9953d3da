package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.nio.file.Path;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import swapworth.money.Rates;
import swapworth.reading.Conventions;
import swapworth.reading.UnusableFileException;

/**
 * Reads files of listings: which rows a model may use, which cars they show, and what became of every other row.
 *
 * <p>Needed are the columns {@code vehicle}, a price, and one of {@code age_years}, {@code model_year}, {@code first_registered},
 * {@code mileage}; synonyms are accepted, and every column that is not ours is kept in {@link CarFacts#further}. Files named
 * {@code words.csv}, {@code rates.csv} and {@code lines.csv} in the folder of a listings file are used, and the result says so.
 *
 * <p>A row is <em>rejected</em> if its price, mileage, day of sighting, model year, first registration or age stands there and
 * cannot be read. It is <em>set aside</em> if it was read but lies outside what a model may use: no vehicle, no price, a price
 * that is not above 0 or has no rate to the base currency, neither age nor mileage, a mileage below 0 or above a million miles, a
 * model year more than a year after the sighting, the second of two equal sightings. It is <em>kept and flagged</em> if it only
 * looks odd: a price far from those of its neighbours, a unit that contradicts its header, an end before a sighting on offer.
 */
public final class Listings {

    private static final Listings DEFAULTS = new Listings(Conventions.unstated(), Optional.empty(), Rates.none(), List.of(),
            Conventions.unstated());

    final Conventions conventions;
    final Optional<Currency> baseCurrency;
    final Rates rates;
    final List<Car> spelling;
    /** What counts where neither a file nor its folder says it. */
    final Conventions otherwise;

    private Listings(Conventions conventions, Optional<Currency> baseCurrency, Rates rates, List<Car> spelling, Conventions otherwise) {
        this.conventions = conventions;
        this.baseCurrency = baseCurrency;
        this.rates = rates;
        this.spelling = spelling;
        this.otherwise = otherwise;
    }

    /**
     * Reads one file with nothing stated beyond the files of its folder.
     *
     * @param file the file
     * @return what came out of it
     * @throws UnusableFileException if the file as a whole cannot be used
     */
    public static ListingsRead read(Path file) {
        return DEFAULTS.readFiles(file);
    }

    /**
     * Begins with nothing stated.
     *
     * @return a reader to be given options
     */
    public static Listings withDefaults() {
        return DEFAULTS;
    }

    /**
     * The same reader with stated conventions, which count before those of words.csv.
     *
     * @param stated how the user writes numbers, dates, distances and money
     * @return a copy
     */
    public Listings with(Conventions stated) {
        return new Listings(requireNonNull(stated, "stated"), baseCurrency, rates, spelling, otherwise);
    }

    /**
     * The same reader with a stated base currency; without one it is the currency of the conventions, else of most rows.
     *
     * @param currency the currency in which all prices are to be counted
     * @return a copy
     */
    public Listings withBaseCurrency(Currency currency) {
        return new Listings(conventions, Optional.of(currency), rates, spelling, otherwise);
    }

    /**
     * The same reader with exchange rates, used where the folder's rates.csv has none.
     *
     * @param stated the rates
     * @return a copy
     */
    public Listings with(Rates stated) {
        return new Listings(conventions, baseCurrency, requireNonNull(stated, "stated"), spelling, otherwise);
    }

    /**
     * The same reader, that spells each line, trim, body, running gear and region as cars that were read before do: for a file whose rows
     * are held against them.
     *
     * @param cars the cars
     * @return a copy
     */
    public Listings spelledAs(List<Car> cars) {
        return new Listings(conventions, baseCurrency, rates, KeptList.copyOf(cars), otherwise);
    }

    /**
     * The same reader with a currency for amounts of which neither the file nor {@code words.csv} says it, such as that of the listings
     * beside which a file lies.
     *
     * @param currency the currency that such amounts are in
     * @return a copy
     */
    public Listings otherwiseIn(Currency currency) {
        return new Listings(conventions, baseCurrency, rates, spelling, otherwise.with(currency));
    }

    /**
     * Reads one or several files into one collection.
     *
     * @param first a file
     * @param more further files
     * @return what came out of them
     * @throws UnusableFileException if one of the files as a whole cannot be used
     */
    public ListingsRead readFiles(Path first, Path... more) {
        Collected collected = new Collected(this);
        collected.take(first);
        for (Path file : more) {
            collected.take(file);
        }
        return collected.finished();
    }
}
