package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.util.Currency;
import java.util.List;
import swapworth.reading.DistanceUnit;
import swapworth.reading.RowProblem;

/**
 * What came out of reading listings: the rows that a model may use, the cars that they show, and an account of all the rest.
 *
 * @param counts what became of the rows
 * @param listings the used rows, in the order of the files
 * @param cars the cars that the used rows show, in the order of their first rows
 * @param setAside rows outside what a model may use, each with its reason
 * @param rejected rows that could not be read, each with its reason and question
 * @param oddities used rows about which something looks odd
 * @param questions what an answer would make worth more
 * @param unmatchedWords words that were not understood
 * @param columns how each column was understood
 * @param baseCurrency the currency in which {@link Price#amount} is counted
 * @param distanceUnit the unit in which most mileages are written
 * @param notes what was used beside the files and taken by default
 */
public record ListingsRead(
        Counts counts,
        List<Listing> listings,
        List<Car> cars,
        List<RowProblem> setAside,
        List<RowProblem> rejected,
        List<RowProblem> oddities,
        List<RowProblem> questions,
        List<UnmatchedWord> unmatchedWords,
        List<ColumnUnderstood> columns,
        Currency baseCurrency,
        DistanceUnit distanceUnit,
        List<String> notes) {

    /** Copies the lists in and checks that nothing is missing. */
    public ListingsRead {
        requireNonNull(counts, "counts");
        listings = KeptList.copyOf(listings);
        cars = KeptList.copyOf(cars);
        setAside = List.copyOf(setAside);
        rejected = List.copyOf(rejected);
        oddities = List.copyOf(oddities);
        questions = List.copyOf(questions);
        unmatchedWords = List.copyOf(unmatchedWords);
        columns = List.copyOf(columns);
        requireNonNull(baseCurrency, "baseCurrency");
        requireNonNull(distanceUnit, "distanceUnit");
        notes = List.copyOf(notes);
    }

    /**
     * For each listing the number of its car, without making either.
     *
     * @return as many numbers as there are listings, from 0; none where the two lists were not read together
     */
    public int[] carOfEach() {
        return cars instanceof StoredCars ofCars && listings instanceof StoredListings ofListings ? ofCars.carOfEach(ofListings)
                : new int[0];
    }

    /** How many rows there were and how many cars they tell of. */
    @Override
    public String toString() {
        return counts.sentence() + "; " + cars.size() + (cars.size() == 1 ? " car" : " cars");
    }
}
