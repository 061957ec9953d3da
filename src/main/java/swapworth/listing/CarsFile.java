package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import swapworth.money.Conversion;
import swapworth.money.Money;
import swapworth.reading.CellReader;
import swapworth.reading.Conventions;
import swapworth.reading.CsvRow;
import swapworth.reading.CsvSource;
import swapworth.reading.Currencies;
import swapworth.reading.RowProblem;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;
import swapworth.reading.UnusableFileException;
import swapworth.reading.Vocabulary;

/**
 * The cars in play: what a file {@code cars.csv} says. Needed are the columns {@code name} and {@code vehicle}; {@code role} and
 * all columns of a listings file are understood, and {@code planned_bid}, which counts before the price asked. A price in another
 * currency is converted at the rate of {@code seen_on}, without it at the latest rate.
 *
 * @param file the name of the file, without its folder
 * @param currency the currency in which prices are counted
 * @param cars the usable rows, in file order
 * @param rejected rows that could not be read
 * @param setAside rows that were read and cannot be used: no name, no vehicle, a second row of one name, impossible values
 * @param oddities used rows about which something looks odd, words and columns that were not understood, and what to
 *        ask of the file as a whole
 * @param blank rows without any text
 */
public record CarsFile(String file, Currency currency, List<CandidateCar> cars, List<RowProblem> rejected, List<RowProblem> setAside,
        List<RowProblem> oddities, int blank) {

    private static final Vocabulary<CandidateCar.Role> ROLES = Vocabulary.<CandidateCar.Role>empty()
            .with(CandidateCar.Role.CANDIDATE, "candidate", "maybe", "option")
            .with(CandidateCar.Role.RECIPIENT, "recipient", "body", "receiver")
            .with(CandidateCar.Role.DONOR, "donor", "giver")
            .with(CandidateCar.Role.FACTORY_EQUIVALENT, "factory equivalent", "factory car")
            .with(CandidateCar.Role.FINISHED, "finished", "finished car", "finished swap", "done");

    /** The columns that only a finished car has. */
    private static final Set<String> OF_FINISHED = Set.of("built_by", "gear_line", "gear_year", "recipient", "donor", "documented",
            "inspected", "emissions", "approved", "return_to_stock", "options_kept", "options_lost", "cluster", "faults", "gear_value",
            "work_value", "removed_value", "obsolescence");

    /** Copies the lists in. */
    public CarsFile {
        requireNonNull(file, "file");
        requireNonNull(currency, "currency");
        cars = List.copyOf(cars);
        rejected = List.copyOf(rejected);
        setAside = List.copyOf(setAside);
        oddities = List.copyOf(oddities);
    }

    /**
     * Reads a file without listings, with nothing stated beyond the files of its folder. Prices are counted in the currency that words.csv
     * states, else in that of most of them, else in US dollars.
     *
     * @param file the file
     * @return the cars in play
     * @throws UnusableFileException if the file as a whole cannot be used
     */
    public static CarsFile read(Path file) {
        return read(file, Optional.empty(), Conventions.unstated(), new WordLists(), List.of());
    }

    /**
     * Reads a file with nothing stated beyond the files of its folder.
     *
     * @param file the file
     * @param baseCurrency the currency in which prices are counted
     * @return the cars in play
     * @throws UnusableFileException if the file as a whole cannot be used
     */
    public static CarsFile read(Path file, Currency baseCurrency) {
        return read(file, baseCurrency, Conventions.unstated());
    }

    /**
     * Reads a file beside listings: prices are counted in their currency, and a line, trim, body, running gear or region is spelled as
     * there, so that a car in play is of the line of the listings whichever way each was written.
     *
     * @param file the file
     * @param listings what was read of the listings
     * @return the cars in play
     * @throws UnusableFileException if the file as a whole cannot be used
     */
    public static CarsFile read(Path file, ListingsRead listings) {
        return read(file, Optional.of(listings.baseCurrency()), Conventions.unstated(), WordLists.spelledAs(listings.cars()),
                listings.columns().stream().filter(c -> c.meaning().isEmpty()).map(ColumnUnderstood::header).toList());
    }

    /**
     * Reads a file.
     *
     * @param file the file
     * @param baseCurrency the currency in which prices are counted; a price without a currency of its own is in the currency of
     *        the conventions, else in this one
     * @param stated how the user writes numbers, dates, distances and money; it counts before words.csv
     * @return the cars in play
     * @throws UnusableFileException if the file as a whole cannot be used
     */
    public static CarsFile read(Path file, Currency baseCurrency, Conventions stated) {
        return read(file, Optional.of(baseCurrency), stated, new WordLists(), List.of());
    }

    private static CarsFile read(Path file, Optional<Currency> base, Conventions stated, WordLists lists, List<String> further) {
        FolderFiles folder = new FolderFiles(FolderFiles.folderOf(file), stated);
        CsvSource source = CsvSource.readBeside(file, folder.words);
        if (source.isOfNothing()) {
            List<RowProblem> said = new ArrayList<>(folder.problems);
            said.addAll(source.oddities());
            return new CarsFile(source.file(), base.or(folder.conventions::currency).orElse(Currencies.USUAL), List.of(), List.of(),
                    List.of(), said, 0);
        }
        FileColumns columns = new FileColumns(source, FileColumns.Kind.CARS);
        columns.check(List.of(FileColumns.Need.NAME, FileColumns.Need.VEHICLE));
        Currency baseCurrency = base.or(folder.conventions::currency).orElseGet(() -> mostFrequent(source,
                reader(source, columns, folder.conventions, folder, new WordLists())));
        RowReader reader = reader(source, columns, folder.conventions.or(Conventions.unstated().with(baseCurrency)), folder, lists);
        Fates fates = new Fates(source, folder);
        for (CsvRow row : source.rows()) {
            fates.take(reader.read(row), columns, lists, baseCurrency);
        }
        List<RowProblem> oddities = fates.oddities;
        if (fates.unitUnknown) {
            columns.unitInQuestion(folder.conventions).ifPresent(oddities::add);
        }
        columns.rolesInQuestion().ifPresent(oddities::add);
        oddities.addAll(ColumnUnderstood.unused(columns.understood(), OF_FINISHED, further));
        for (UnmatchedWord word : lists.unmatchedWords()) {
            oddities.add(word.problem());
        }
        return new CarsFile(source.file(), baseCurrency, fates.cars, fates.rejected, fates.setAside, oddities, source.blankLines());
    }

    /** What becomes of the rows, one after the other. */
    private static final class Fates {
        private final FolderFiles folder;
        private final List<CandidateCar> cars = new ArrayList<>();
        private final List<RowProblem> rejected;
        private final List<RowProblem> setAside = new ArrayList<>();
        private final List<RowProblem> oddities;
        private final Set<String> names = new HashSet<>();
        /** Whether some distance has no unit in its cell. */
        private boolean unitUnknown;

        Fates(CsvSource source, FolderFiles folder) {
            this.folder = folder;
            this.rejected = new ArrayList<>(source.rejected());
            this.oddities = new ArrayList<>(folder.problems);
            oddities.addAll(source.oddities());
        }

        void take(Draft draft, FileColumns columns, WordLists lists, Currency base) {
            checkName(draft);
            Optional<Price> price = price(draft, base, folder);
            if (!draft.rejections.isEmpty()) {
                rejected.add(RowProblem.joined(draft.rejections));
            } else if (!draft.asides.isEmpty()) {
                setAside.add(RowProblem.joined(draft.asides));
            } else {
                Optional<CandidateCar.Role> role = ROLES.meaning(draft.role);
                if (role.isEmpty() && !Spelling.isBlank(draft.role)) {
                    lists.unmatched(ListingColumn.ROLE, columns.header(ListingColumn.ROLE), draft.role, ROLES, draft);
                }
                oddities.addAll(draft.oddities);
                unitUnknown |= draft.facts.mileage.isPresent() && !draft.unitInCell;
                cars.add(new CandidateCar(draft.name, role.orElse(CandidateCar.Role.UNKNOWN), draft.facts.build(), price, draft.origin()));
            }
        }

        private void checkName(Draft draft) {
            if (draft.name.isEmpty()) {
                draft.setAside("name", "", "the row does not name its car");
            } else if (Spelling.isTotal(draft.name)) {
                draft.setAside("name", draft.name, Spelling.IS_TOTAL);
            } else if (!names.add(Spelling.name(draft.name))) {
                draft.setAside("name", draft.name, "the name stands twice");
            }
        }
    }

    private static RowReader reader(CsvSource source, FileColumns columns, Conventions conventions, FolderFiles folder, WordLists lists) {
        return new RowReader(source, columns, new CellReader(conventions, source.separator()), folder.words, lists, folder.lines);
    }

    /** The currency that most prices state, of several the first. */
    private static Currency mostFrequent(CsvSource source, RowReader reader) {
        Map<Currency, Integer> counts = new LinkedHashMap<>();
        Currency most = Currencies.USUAL;
        for (CsvRow row : source.rows()) {
            Asked asked = reader.read(row).asked;
            if (!asked.currencyByDefault()) {
                asked.money().ifPresent(money -> counts.merge(money.currency(), 1, Integer::sum));
            }
        }
        for (Map.Entry<Currency, Integer> count : counts.entrySet()) {
            most = count.getValue() > counts.getOrDefault(most, 0) ? count.getKey() : most;
        }
        return most;
    }

    /**
     * The account of all rows, with the words that were not understood.
     *
     * @return counts and problems
     */
    public RowsRead read() {
        return new RowsRead(file, cars.size(), rejected, setAside, oddities, List.of(), blank);
    }

    /**
     * The cars that are no finished swaps: those that listings of whole cars can price.
     *
     * @return in file order
     */
    public List<CandidateCar> unfinished() {
        return cars.stream().filter(c -> c.role() != CandidateCar.Role.FINISHED).toList();
    }

    private static Optional<Price> price(Draft draft, Currency base, FolderFiles folder) {
        if (draft.asked.money().isEmpty()) {
            return Optional.empty();
        }
        Money typed = draft.asked.money().get();
        BigDecimal amount = typed.amount();
        if (!typed.currency().equals(base)) {
            Conversion conversion = folder.rates.convert(typed, base, draft.seenOn.orElse(LocalDate.MAX));
            if (conversion instanceof Conversion.NoRate none) {
                draft.odd("price", draft.asked.text(), none.reason() + "; the price is not used");
                return Optional.empty();
            }
            amount = ((Conversion.Converted) conversion).amount();
        }
        if (amount.signum() <= 0) {
            draft.odd("price", draft.asked.text(), "the price is not above 0 and is not used");
            return Optional.empty();
        }
        // What the row says of its price is not said of the bid planned beside it, and a bid at an auction holds neither fees nor tax.
        PriceIncludes includes = draft.planned && draft.facts.seller == Seller.AUCTION ? PriceIncludes.NEITHER : draft.includes;
        return Optional.of(new Price(typed, amount.doubleValue(), draft.kind, includes));
    }
}
