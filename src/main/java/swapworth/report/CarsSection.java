package swapworth.report;

import java.util.List;
import swapworth.listing.CarsFile;
import swapworth.reading.RowsRead;

/** What a page says of the rows of {@code cars.csv} that need a look: a word that was not understood changes every answer about its car. */
public final class CarsSection {

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
}
