package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import swapworth.assumptions.Assumptions;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowsRead;
import swapworth.reading.UnusableFileException;

/**
 * Where every cent is: what a file {@code ledger.csv} says, exact to the smallest coin of one base currency. A row needs {@code date},
 * {@code amount} and {@code note}; {@code car, item, category, direction, currency, status, due, low, likely, high, gross, fee, postage,
 * hours, charged, receipt} are understood too. An unnamed category is {@code unsorted} and still in every total.
 *
 * <p>An amount in another currency is taken at the rate of its day and rounded by itself (half to even), so that sums can be added again
 * by hand. Refunds are money in of the category that had been paid; parts sold count what was left of their gross price.
 *
 * @param entries the rows that are used, in file order
 * @param on the day up to which rows can be done
 * @param currency the base currency
 * @param read what became of every row
 */
public record Ledger(List<Entry> entries, LocalDate on, Currency currency, RowsRead read) {

    /** Copies the list in. */
    public Ledger {
        entries = List.copyOf(entries);
        requireNonNull(on, "on");
        requireNonNull(currency, "currency");
        requireNonNull(read, "read");
    }

    /**
     * Reads a ledger with nothing stated beyond the files of its folder.
     *
     * @param file the ledger
     * @return its rows
     * @throws UnusableFileException if the file as a whole cannot be used
     */
    public static Ledger read(Path file) {
        return withDefaults().read(file);
    }

    /**
     * The ways to read a ledger.
     *
     * @return nothing stated
     */
    public static Options withDefaults() {
        return new Options(Optional.empty(), Optional.empty(), Assumptions.defaults());
    }

    /**
     * How a ledger is read.
     *
     * @param on the day up to which rows can be done; unless stated the day of the last row that is done
     * @param baseCurrency the base currency; unless stated that of the conventions, else the one of most rows
     * @param assumptions what stands in where rows do not speak
     */
    public record Options(Optional<LocalDate> on, Optional<Currency> baseCurrency, Assumptions assumptions) {

        /**
         * The same, as of a day.
         *
         * @param day the day
         * @return a copy
         */
        public Options on(LocalDate day) {
            return new Options(Optional.of(day), baseCurrency, assumptions);
        }

        /**
         * The same, in a currency.
         *
         * @param currency the base currency
         * @return a copy
         */
        public Options in(Currency currency) {
            return new Options(on, Optional.of(currency), assumptions);
        }

        /**
         * The same by other assumptions.
         *
         * @param own the assumptions
         * @return a copy
         */
        public Options with(Assumptions own) {
            return new Options(on, baseCurrency, own);
        }

        /**
         * Reads a ledger.
         *
         * @param file the ledger; {@code words.csv} and {@code rates.csv} beside it are used
         * @return its rows
         * @throws UnusableFileException if the file as a whole cannot be used
         */
        public Ledger read(Path file) {
            Path folder = file.toAbsolutePath().getParent();
            FolderSettings settings = FolderSettings.of(folder == null ? Path.of("") : folder, Conventions.unstated());
            return new LedgerReader(file, settings, this).read();
        }
    }

    /**
     * What the ledger adds up to.
     *
     * @return sums by category, by car and by status
     */
    public LedgerSums sums() {
        return new LedgerSums(this);
    }
}
