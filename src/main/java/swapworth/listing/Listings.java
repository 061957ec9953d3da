package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Currency;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ForkJoinTask;
import java.util.function.Consumer;
import java.util.function.Function;
import swapworth.money.Conversion;
import swapworth.money.Money;
import swapworth.money.Rates;
import swapworth.reading.CellReader;
import swapworth.reading.Conventions;
import swapworth.reading.CsvRow;
import swapworth.reading.CsvSource;
import swapworth.reading.DistanceUnit;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;
import swapworth.reading.UnusableFileException;
import swapworth.reading.Words;

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

    private final Conventions conventions;
    private final Optional<Currency> baseCurrency;
    private final Rates rates;
    private final List<Car> spelling;
    /** What counts where neither a file nor its folder says it. */
    private final Conventions otherwise;

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
        Collected collected = new Collected();
        collected.take(first);
        for (Path file : more) {
            collected.take(file);
        }
        return collected.finished();
    }

    private final class Collected {
        private final Map<Path, FolderFiles> folders = new HashMap<>();
        private final WordLists lists = WordLists.spelledAs(spelling);
        /** Rows that a model may use, each price still in the currency in which it was typed. */
        private final ListingColumns kept = new ListingColumns();
        /** The price cells of the rows as long as they may be asked for, where they are not the plain amount. */
        private Texts priceTexts = new Texts(0);
        private final Values<Rates> ratesOf = new Values<>(rates);
        /** What is odd about a row, by its place among them. */
        private final Map<Integer, List<RowProblem>> odditiesOf = new HashMap<>();
        /** The rows of which it holds something: most hold nothing, and are not looked up. */
        private final BitSet odd = new BitSet();
        private int mileages;
        private int mileagesInKm;
        private final List<RowProblem> rejected = new ArrayList<>();
        private final List<RowProblem> setAside = new ArrayList<>();
        private final List<RowProblem> oddities = new ArrayList<>();
        private final List<RowProblem> questions = new ArrayList<>();
        private final List<ColumnUnderstood> columnsUnderstood = new ArrayList<>();
        private final Set<String> notes = new LinkedHashSet<>();
        private final Map<String, Integer> fileOrder = new LinkedHashMap<>();
        private Conventions statedInAll = conventions;
        private int rejectedRows;
        private int setAsideRows;
        private int blank;
        private int comments;

        void take(Path file) {
            Path path = FolderFiles.folderOf(file);
            FolderFiles folder = folders.get(path);
            if (folder == null) {
                folder = new FolderFiles(path, conventions);
                folders.put(path, folder);
                oddities.addAll(folder.problems);
                notes.addAll(folder.notes);
            }
            statedInAll = statedInAll.or(folder.conventions);
            Conventions stated = folder.conventions.or(otherwise);
            FolderFiles beside = folder;
            List<FileColumns> found = new ArrayList<>(1);
            List<Handover<?>> steps = new ArrayList<>(2);
            Tally tally = new Tally();
            CsvSource source = handingOver(steps, file, folder.words, begun -> {
                fileOrder.putIfAbsent(begun.file(), fileOrder.size());
                FileColumns columns = new FileColumns(begun, FileColumns.Kind.LISTINGS);
                found.add(columns);
                columns.check(List.of(FileColumns.Need.VEHICLE, FileColumns.Need.PRICE, FileColumns.Need.AGE));
                RowReader reader = new RowReader(begun, columns, new CellReader(stated, begun.separator()), beside.words, lists,
                        beside.lines);
                Handover<Draft> keeping = new Handover<>("rows kept", draft -> sort(draft, beside.rates, tally));
                Handover<CsvRow> understanding = new Handover<>("rows understood", row -> keeping.accept(reader.read(row)));
                steps.addAll(List.of(understanding, keeping));
                return row -> {
                    columns.count(row);
                    understanding.accept(row);
                };
            });
            steps.forEach(Handover::end);
            rejected.addAll(source.rejected());
            rejectedRows += source.rejected().size();
            blank += source.blankLines();
            comments += source.commentLines();
            columnsUnderstood.addAll(found.get(0).understood());
            ask(source, found.get(0), stated, tally);
        }

        private static CsvSource handingOver(List<Handover<?>> steps, Path file, Words words,
                Function<CsvSource, Consumer<CsvRow>> taker) {
            try {
                return CsvSource.read(file, words, taker);
            } catch (RuntimeException | Error e) {
                steps.forEach(Handover::giveUp);
                throw e;
            }
        }

        private void sort(Draft draft, Rates folderRates, Tally tally) {
            if (!draft.rejections.isEmpty()) {
                rejected.add(RowProblem.joined(draft.rejections));
                rejectedRows++;
                return;
            }
            CarFacts.Builder facts = draft.facts;
            FileCells.Asked asked = draft.asked;
            if (asked.money().isEmpty()) {
                draft.setAside("price", asked.text(), "the row has no price");
            } else if (asked.money().get().amount().signum() <= 0) {
                draft.setAside("price", asked.text(), "the price is not above 0");
            }
            if (draft.asides.isEmpty() && facts.mileage.isEmpty() && facts.modelYear.isEmpty() && facts.firstRegistered.isEmpty()
                    && facts.ageYears.isEmpty()) {
                draft.setAside("", "", "the row gives neither the age nor the mileage of the car");
            }
            if (!draft.asides.isEmpty()) {
                setAside.add(RowProblem.joined(draft.asides));
                setAsideRows++;
                return;
            }
            tally.count(draft);
            mileages += facts.mileage.isPresent() ? 1 : 0;
            mileagesInKm += facts.mileage.isPresent() && draft.unit == DistanceUnit.KM ? 1 : 0;
            if (!draft.oddities.isEmpty()) {
                odditiesOf.put(kept.size(), draft.oddities);
                odd.set(kept.size());
            }
            if (!asked.isPlain()) {
                priceTexts.set(kept.size(), Optional.of(asked.text()));
            }
            ratesOf.set(kept.size(), folderRates);
            kept.add(draft, asked.money().orElseThrow());
        }

        /** What an answer of the user would make worth more, once a file. */
        private void ask(CsvSource source, FileColumns columns, Conventions stated, Tally tally) {
            if (tally.used == 0) {
                return;
            }
            if (tally.auctionsInDoubt > 0) {
                questions.add(question(source, tally.firstAuctionInDoubt, "price_includes", tally.auctionsInDoubt
                        + (tally.auctionsInDoubt == 1 ? " auction result does" : " auction results do") + " not say whether"
                        + " fees or tax are in the price; fees can add a third: which is it?"));
            }
            for (String header : columns.doubled()) {
                questions.add(question(source, 0, header, "another column of the file means the same and is used instead: does this one"
                        + " say more? Put both into one column; a cell may carry its own unit"));
            }
            if (!tally.runningGearSeen) {
                questions.add(question(source, 0, "running_gear",
                        "no row names a running gear: which line carries the donor's gear? Fill"
                        + " body and running_gear where lines share them, here or in lines.csv"));
            }
            if (tally.unitOfCellUnknown) {
                columns.unitInQuestion(stated).ifPresent(questions::add);
            }
            if (columns.currency(ListingColumn.PRICE).isEmpty() && stated.currency().isEmpty() && !columns.has(ListingColumn.CURRENCY)
                    && tally.currencyOfCellUnknown) {
                questions.add(question(source, 0, columns.header(ListingColumn.PRICE),
                        "nothing states the currency of the prices: they"
                        + " are taken for US dollars. State it in words.csv: *,currency,EUR"));
            }
        }

        private RowProblem question(CsvSource source, int line, String column, String message) {
            return new RowProblem(source.file(), line, column, "", RowProblem.Kind.QUESTION, message);
        }

        ListingsRead finished() {
            lists.renamed().forEach(kept::rename);
            Currency base = baseCurrency.or(statedInAll::currency).orElseGet(kept::mostFrequentCurrency);
            int[] firsts = SameId.firsts(kept.id, kept.size());
            BitSet onSharedDay = onSharedDay(firsts);
            BitSet withoutRate = new BitSet();
            Map<Long, List<Integer>> sightingsOfDay = new HashMap<>();
            Optional<LocalDate> last = kept.lastDay();
            int[] leftOut = new int[0];
            int out = 0;
            for (int row = 0; row < kept.size(); row++) {
                boolean inBase = isInBase(row, base);
                withoutRate.set(row, !inBase);
                if (!inBase || isOfYearToCome(row, last)
                        || onSharedDay.get(row) && isSecondSighting(row, firsts[row], withoutRate, sightingsOfDay)) {
                    leftOut = out < leftOut.length ? leftOut : Arrays.copyOf(leftOut, 16 + 2 * out);
                    leftOut[out++] = row;
                } else if (odd.get(row)) {
                    oddities.addAll(odditiesOf.getOrDefault(row, List.of()));
                }
            }
            priceTexts = new Texts(0);
            StoredListings checked = StoredListings.without(Arrays.copyOf(leftOut, out), kept);
            // What is odd among them is looked for while they are joined into cars.
            ForkJoinTask<OddPrices> oddPrices = ForkJoinTask.adapt(() -> new OddPrices(checked)).fork();
            ForkJoinTask<List<RowProblem>> asked = ForkJoinTask.adapt(() -> questionsOf(checked)).fork();
            CarMatching.Result matched = CarMatching.match(checked, firsts);
            oddPrices.join().flag(oddities);
            questions.addAll(asked.join());
            oddities.addAll(lists.variants());
            if (spelling.isEmpty()) {
                folders.values().forEach(folder -> oddities.addAll(folder.lines.ofNoListing(kept)));
            }
            matched.oddities().forEach(p -> (p.kind() == RowProblem.Kind.QUESTION ? questions : oddities).add(p));
            for (List<RowProblem> problems : List.of(rejected, setAside, oddities, questions)) {
                if (problems.size() > 1) {
                    problems.sort(this::inOrderOfFiles);
                }
            }
            int used = checked.size();
            return new ListingsRead(new Counts(used, setAsideRows, rejectedRows, blank, comments), checked, matched.cars(),
                    setAside,
                    rejected, oddities, questions, lists.unmatchedWords(), columnsUnderstood, base, mostFrequentUnit(),
                    List.copyOf(notes));
        }

        private List<RowProblem> questionsOf(StoredListings checked) {
            List<RowProblem> asked = new ArrayList<>();
            FarDays.ask(checked, asked);
            LikeLines.of(kept, checked.rows()).forEach(pair -> asked.add(whetherOneLine(pair)));
            return asked;
        }

        private RowProblem whetherOneLine(LikeLines.Pair pair) {
            Origin origin = kept.origin(pair.row());
            String rare = Spelling.shortened(pair.rare(), 40);
            String usual = Spelling.shortened(pair.usual(), 40);
            return new RowProblem(origin.file(), origin.line(), "vehicle", pair.rare(), RowProblem.Kind.QUESTION,
                    "this is a letter away from '" + usual + "' (" + pair.rowsOfUsual()
                            + " rows), and is taken for a line of its own: is it mistyped? If so mend it, or state in words.csv: vehicle,"
                            + rare + "," + usual);
        }

        private int inOrderOfFiles(RowProblem a, RowProblem b) {
            int byFile = Integer.compare(fileOrder.getOrDefault(a.file(), -1), fileOrder.getOrDefault(b.file(), -1));
            return byFile != 0 ? byFile : Integer.compare(a.line(), b.line());
        }

        /** Puts the price of a row into the base currency; the row is set aside where there is no rate. */
        private boolean isInBase(int row, Currency base) {
            if (kept.currency(row).equals(base)) {
                return true;
            }
            Money typed = kept.price(row).typed();
            Conversion conversion = inBase(typed, base, kept.seenOn(row), ratesOf.get(row));
            if (conversion instanceof Conversion.Converted converted) {
                kept.setAmount(row, converted.amount().doubleValue());
                return true;
            }
            setAside(row, "price", priceTexts.get(row).orElse(typed.amount().toPlainString()), ((Conversion.NoRate) conversion).reason());
            return false;
        }

        private void setAside(int row, String column, String text, String reason) {
            Origin origin = kept.origin(row);
            setAside.add(new RowProblem(origin.file(), origin.line(), column, text, RowProblem.Kind.SET_ASIDE, reason));
            setAsideRows++;
        }

        private Conversion inBase(Money typed, Currency base, Optional<LocalDate> day, Rates folderRates) {
            if (day.isEmpty()) {
                return new Conversion.NoRate("the price is in " + typed.currency().getCurrencyCode()
                        + " and the row has no day (seen_on) at which to convert it to " + base.getCurrencyCode());
            }
            Conversion conversion = folderRates.convert(typed, base, day.get());
            Conversion stated = rates.convert(typed, base, day.get());
            return conversion instanceof Conversion.NoRate && stated instanceof Conversion.Converted ? stated : conversion;
        }

        /** A row without a day was seen on one of the days of the others; its car is set aside where it is of a year after them. */
        private boolean isOfYearToCome(int row, Optional<LocalDate> last) {
            if (last.isEmpty() || kept.isDated(row)) {
                return false;
            }
            if (kept.modelYear(row) > last.get().getYear() + 1) {
                setAside(row, "model_year", Integer.toString(kept.modelYear(row)),
                        "the model year lies more than a year after the last day seen, " + last.get());
                return true;
            }
            if (kept.yearRegistered(row) > last.get().getYear()) {
                setAside(row, "first_registered", Integer.toString(kept.yearRegistered(row)),
                        "the first registration lies after the last day seen, " + last.get());
                return true;
            }
            return false;
        }

        /**
         * The rows that share their id and day with another, and a few that only seem to: whatever falls on one bit is looked at closely,
         * and that is little.
         */
        private BitSet onSharedDay(int[] firsts) {
            BitSet repeated = new BitSet();
            for (int row = 0; row < firsts.length; row++) {
                if (firsts[row] != row) {
                    repeated.set(row);
                    repeated.set(firsts[row]);
                }
            }
            int bits = 16 * Integer.highestOneBit(1 + repeated.cardinality());
            BitSet once = new BitSet(bits);
            BitSet twice = new BitSet(bits);
            for (int row = repeated.nextSetBit(0); row >= 0; row = repeated.nextSetBit(row + 1)) {
                int bit = bitOfDay(firsts[row], row) & bits - 1;
                (once.get(bit) ? twice : once).set(bit);
            }
            BitSet shared = new BitSet();
            for (int row = repeated.nextSetBit(0); row >= 0; row = repeated.nextSetBit(row + 1)) {
                shared.set(row, twice.get(bitOfDay(firsts[row], row) & bits - 1));
            }
            return shared;
        }

        private int bitOfDay(int first, int row) {
            return (int) (ofDay(first, row) * 0x9E3779B97F4A7C15L >>> 32);
        }

        /** The same advertisement, seen twice on one day at the same price, is one sighting. */
        private boolean isSecondSighting(int row, int first, BitSet withoutRate, Map<Long, List<Integer>> sightingsOfDay) {
            if (first == row || !kept.isDated(row)) {
                return false;
            }
            if (kept.isDated(first) && !withoutRate.get(first)) {
                sightingsOfDay.computeIfAbsent(ofDay(first, first), day -> new ArrayList<>(List.of(first)));
            }
            List<Integer> seen = sightingsOfDay.computeIfAbsent(ofDay(first, row), day -> new ArrayList<>());
            List<Integer> same = seen.stream()
                    .filter(other -> kept.vehicle.code(other) == kept.vehicle.code(row)).toList();
            Price price = kept.price(row);
            for (int other : same) {
                if (kept.price(other).sameAsTyped(price) && kept.price(other).kind() == price.kind()) {
                    setAside(row, "id", kept.id.get(row).orElseThrow(),
                            "the same advertisement was seen on the same day at the same price in " + kept.origin(other)
                                    + ": one sighting");
                    return true;
                }
            }
            if (!same.isEmpty()) {
                Origin origin = kept.origin(row);
                oddities.add(new RowProblem(origin.file(), origin.line(), "price", price.typed().toString(), RowProblem.Kind.ODD,
                        "on the same day the advertisement stands at " + kept.price(same.get(0)).typed() + " in "
                                + kept.origin(same.get(0)) + "; both are kept"));
            }
            seen.add(row);
            return false;
        }

        /** The id, by the first row that has it, and the day of a row. */
        private long ofDay(int first, int row) {
            return (long) first << 32 | kept.day(row) & 0xffff_ffffL;
        }

        private DistanceUnit mostFrequentUnit() {
            return mileages == 0 ? statedInAll.mileageUnit().orElse(DistanceUnit.MI)
                    : 2 * mileagesInKm > mileages ? DistanceUnit.KM : DistanceUnit.MI;
        }
    }

    /** What the used rows of one file leave open. */
    private static final class Tally {
        private int used;
        private int auctionsInDoubt;
        private int firstAuctionInDoubt;
        private boolean runningGearSeen;
        private boolean unitOfCellUnknown;
        private boolean currencyOfCellUnknown;

        void count(Draft draft) {
            used++;
            runningGearSeen |= draft.facts.runningGear.isPresent();
            unitOfCellUnknown |= draft.facts.mileage.isPresent() && !draft.unitInCell;
            currencyOfCellUnknown |= draft.asked.currencyByDefault();
            if (draft.facts.seller == Seller.AUCTION && draft.includes == PriceIncludes.UNKNOWN) {
                firstAuctionInDoubt = auctionsInDoubt == 0 ? draft.line : firstAuctionInDoubt;
                auctionsInDoubt++;
            }
        }
    }
}
