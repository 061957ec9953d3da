package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import swapworth.assumptions.Assumptions;
import swapworth.money.Money;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;
import swapworth.reading.UnusableFileException;
import swapworth.swap.OwnOffer;
import swapworth.table.Cell;

/**
 * Where every cent is: what a file {@code ledger.csv} says, exact to the smallest coin of one base currency. A row needs {@code date},
 * {@code amount} and {@code note}; {@code car, item, category, direction, currency, status, due, low, likely, high, gross, fee, postage,
 * hours, charged, receipt, needed, adds} are understood too. An unnamed category is {@code unsorted} and still in every total.
 *
 * <p>An amount in another currency is taken at the rate of its day and rounded by itself (half to even), so that sums can be added again
 * by hand. Refunds are money in of the category that had been paid; parts sold count what was left of their gross price.
 *
 * <p>The sale of the finished car (category {@code car sold}) is in no sum and no forecast: what is left holds the value of the car
 * against the money in it, and counts what came in for the car in place of that value. Nor is what a customer pays a shop (category
 * {@code invoice}): the car is then the customer's, and {@link Job} holds what is paid for the work against what the work costs.
 *
 * @param entries the rows that are used, in file order, without those of the sale of the finished car and of invoices
 * @param carSales the rows of the sale of the finished car, in file order
 * @param invoices the rows of what a customer pays, in file order
 * @param on the day up to which rows can be done
 * @param currency the base currency
 * @param read what became of every row
 */
public record Ledger(List<Entry> entries, List<Entry> carSales, List<Entry> invoices, LocalDate on, Currency currency,
        RowsRead read) {

    /**
     * The sale of the finished car, when it is done.
     *
     * @param received what came in, net of fee and postage, less what went back to the buyer
     * @param on the day on which the last of it came in
     */
    public record CarSale(BigDecimal received, LocalDate on) {

        /** Checks that nothing is missing. */
        public CarSale {
            requireNonNull(received, "received");
            requireNonNull(on, "on");
        }
    }

    /** Copies the lists in. */
    public Ledger {
        entries = List.copyOf(entries);
        carSales = List.copyOf(carSales);
        invoices = List.copyOf(invoices);
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
        return new Options(Optional.empty(), Optional.empty(), Assumptions.defaults(), Set.of());
    }

    /**
     * How a ledger is read.
     *
     * @param on the day up to which rows can be done; unless stated the day of the last row that is done
     * @param baseCurrency the base currency, and that of amounts that state none where the conventions do not; unless stated that of the
     *     conventions, else the one of most rows
     * @param assumptions what stands in where rows do not speak
     * @param donors names under which the rows speak of the donor, beside {@code donor}
     */
    public record Options(Optional<LocalDate> on, Optional<Currency> baseCurrency, Assumptions assumptions, Set<String> donors) {

        /** Copies the names in. */
        public Options {
            donors = Set.copyOf(donors);
        }

        /**
         * The same, as of a day.
         *
         * @param day the day
         * @return a copy
         */
        public Options on(LocalDate day) {
            return new Options(Optional.of(day), baseCurrency, assumptions, donors);
        }

        /**
         * The same, in a currency.
         *
         * @param currency the base currency
         * @return a copy
         */
        public Options in(Currency currency) {
            return new Options(on, Optional.of(currency), assumptions, donors);
        }

        /**
         * The same by other assumptions.
         *
         * @param own the assumptions
         * @return a copy
         */
        public Options with(Assumptions own) {
            return new Options(on, baseCurrency, own, donors);
        }

        /**
         * The same, knowing names of donors: what is sold of them is not the finished car.
         *
         * @param names the names
         * @return a copy
         */
        public Options donors(Set<String> names) {
            return new Options(on, baseCurrency, assumptions, names);
        }

        /** Whether rows may speak of the donor by this name. */
        boolean isDonor(String car) {
            return car.equals(LedgerRow.DONOR) || donors.stream().anyMatch(donor -> Spelling.name(donor).equals(Spelling.name(car)));
        }

        /** The names under which rows may speak of a car: a donor has one of its own beside that of its role. */
        Stream<String> namesOf(String car) {
            Stream<String> others = car.equals(LedgerRow.DONOR) ? donors.stream() : isDonor(car) ? Stream.of(LedgerRow.DONOR)
                    : Stream.empty();
            return Stream.concat(Stream.of(car), others);
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
     * The sale of the finished car.
     *
     * @return nothing where none is in the ledger, money of it is agreed or expected and still to come, or all of it went back
     */
    public Optional<CarSale> carSold() {
        List<Entry> done = carSales.stream().filter(e -> e.status() == Entry.Status.ACTUAL).toList();
        BigDecimal received = done.stream().map(Entry::cash).reduce(BigDecimal.ZERO, BigDecimal::add).negate();
        boolean open = carSales.stream().anyMatch(e -> e.status() == Entry.Status.COMMITTED
                || e.status() == Entry.Status.ESTIMATE && e.direction() == Entry.Direction.IN);
        return done.stream().filter(e -> !open && received.signum() > 0 && e.direction() == Entry.Direction.IN).map(Entry::date)
                .max(Comparator.naturalOrder()).map(day -> new CarSale(received, day));
    }

    /** The same with a sale of the finished car that another file tells of; it counts where the ledger has no row of one. */
    Ledger sold(OwnOffer sale) {
        if (!carSales.isEmpty()) {
            return this;
        }
        LocalDate day = sale.on().orElse(on);
        BigDecimal price = BigDecimal.valueOf(sale.amount()).setScale(currency.getDefaultFractionDigits(), RoundingMode.HALF_EVEN);
        Entry entry = new Entry(0, day, day, "", Category.CAR_SOLD, Entry.Direction.IN, Entry.Status.ACTUAL, new Money(price, currency),
                price, Optional.empty(), BigDecimal.ZERO, List.of(), Optional.empty(), 0, "", "by swaps.csv",
                Optional.empty(), Optional.empty());
        return new Ledger(entries, List.of(entry), invoices, on, currency, read);
    }

    /**
     * Where the sale of the finished car stands.
     *
     * @return one or two sentences; empty where the ledger has no row of it
     */
    public String carSaleNote() {
        if (carSales.isEmpty()) {
            return "";
        }
        String rows = carSales.stream().map(e -> (e.line() == 0 ? e.note() : "line " + e.line()) + ", " + e.status().words() + ", "
                + (e.direction() == Entry.Direction.OUT ? "-" : "") + Cell.amount(e.amount()).shown())
                .collect(Collectors.joining("; "));
        String elsewhere = carSales.get(0).line() == 0 ? " Enter it as car sold in ledger.csv too, with its fee and all that came in." : "";
        String stands = "The sale of the finished car (" + rows + ") is not in these figures. ";
        if (isOfCustomersCar()) {
            return stands + "It counts nowhere, for with invoices the car is the customer's: what the customer paid for the work is an"
                    + " invoice, and the sale of a car of your own belongs in a folder without invoices.";
        }
        return stands + (carSold().isPresent()
                ? "What is left counts what came in for it in place of its value." + elsewhere : "It is not done: what is left counts the"
                + " value of the car, and not this sale beside it.");
    }

    /**
     * All rows that are used.
     *
     * @return those of what the car costs, of its sale, and of invoices
     */
    public Stream<Entry> all() {
        return Stream.of(entries, carSales, invoices).flatMap(List::stream);
    }

    /** No money, to the smallest coin. */
    BigDecimal nothing() {
        return BigDecimal.ZERO.setScale(Math.max(0, currency.getDefaultFractionDigits()));
    }

    /**
     * Where the rows stand that are in no sum: those of the sale of the finished car, and what a customer pays.
     *
     * @return a note of each that the ledger has
     */
    public List<String> notesOfWhatStandsApart() {
        String paid = "What the customer pays (" + invoices.size() + (invoices.size() == 1 ? " row" : " rows") + " of the category"
                + " invoice) is not in these figures: 'What the job leaves' counts it.";
        return Stream.of(carSaleNote(), isOfCustomersCar() ? paid : "").filter(note -> !note.isEmpty()).toList();
    }

    /**
     * Whether nothing in it is still to be paid, to be worked or to come in, though the finished car is not sold: either all is done, or
     * what is still to come has no row yet, and nobody can tell which.
     *
     * @return false too where the car is sold
     */
    public boolean hasNothingToCome() {
        return carSold().isEmpty() && entries.stream().allMatch(e -> e.status() == Entry.Status.ACTUAL);
    }

    /**
     * Whether a customer pays for the work: the car is then the customer's, and its value no money of whoever keeps the ledger.
     *
     * @return true where there is a row of the category invoice, whatever its status
     */
    public boolean isOfCustomersCar() {
        return !invoices.isEmpty();
    }

    /**
     * That all rows of the costs are done, in words: what a customer pays may still be to come.
     *
     * @return the beginning of a sentence
     */
    public String allDone() {
        return isOfCustomersCar() ? "Every row of what the work costs is done" : "Every row is done";
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
