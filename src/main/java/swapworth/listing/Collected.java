package swapworth.listing;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Currency;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ForkJoinTask;
import java.util.function.Consumer;
import java.util.function.Function;
import swapworth.money.Rates;
import swapworth.reading.CellReader;
import swapworth.reading.Conventions;
import swapworth.reading.CsvRow;
import swapworth.reading.CsvSource;
import swapworth.reading.DistanceUnit;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;
import swapworth.reading.Words;

/**
 * Files of listings taken into one collection, one after the other: each row is rejected, set aside or kept by what it says itself, and at
 * the end by what the others say; those that are left are joined into cars.
 */
final class Collected {
    private final Listings options;
    private final Map<Path, FolderFiles> folders = new HashMap<>();
    private final WordLists lists;
    private final Findings findings = new Findings();
    private final KeptRows kept;
    private final List<ColumnUnderstood> columnsUnderstood = new ArrayList<>();
    private final Set<String> notes = new LinkedHashSet<>();
    private Conventions statedInAll;
    private int blank;
    private int comments;

    /** Begins without a file. */
    Collected(Listings options) {
        this.options = options;
        this.lists = WordLists.spelledAs(options.spelling);
        this.kept = new KeptRows(options.rates, findings);
        this.statedInAll = options.conventions;
    }

    /** Takes in the rows of a file. */
    void take(Path file) {
        FolderFiles folder = folder(FolderFiles.folderOf(file));
        statedInAll = statedInAll.or(folder.conventions);
        Conventions stated = folder.conventions.or(options.otherwise);
        List<FileColumns> found = new ArrayList<>(1);
        List<Handover<?>> steps = new ArrayList<>(2);
        FileQuestions open = new FileQuestions();
        CsvSource source = handingOver(steps, file, folder.words, begun -> {
            findings.begin(begun.file());
            FileColumns columns = new FileColumns(begun, FileColumns.Kind.LISTINGS);
            found.add(columns);
            columns.check(List.of(FileColumns.Need.VEHICLE, FileColumns.Need.PRICE, FileColumns.Need.AGE));
            RowReader reader = new RowReader(begun, columns, new CellReader(stated, begun.separator()), folder.words, lists, folder.lines);
            Handover<Draft> keeping = new Handover<>("rows kept", draft -> sort(draft, folder.rates, open));
            Handover<CsvRow> understanding = new Handover<>("rows understood", row -> keeping.accept(reader.read(row)));
            steps.addAll(List.of(understanding, keeping));
            return row -> {
                columns.count(row);
                understanding.accept(row);
            };
        });
        steps.forEach(Handover::end);
        findings.rejected.addAll(source.rejected());
        blank += source.blankLines();
        comments += source.commentLines();
        columnsUnderstood.addAll(found.get(0).understood());
        findings.questions.addAll(open.of(source, found.get(0), stated));
    }

    private FolderFiles folder(Path path) {
        FolderFiles known = folders.get(path);
        if (known != null) {
            return known;
        }
        FolderFiles folder = new FolderFiles(path, options.conventions);
        folders.put(path, folder);
        findings.oddities.addAll(folder.problems);
        notes.addAll(folder.notes);
        return folder;
    }

    private static CsvSource handingOver(List<Handover<?>> steps, Path file, Words words, Function<CsvSource, Consumer<CsvRow>> taker) {
        try {
            return CsvSource.read(file, words, taker);
        } catch (RuntimeException | Error e) {
            steps.forEach(Handover::giveUp);
            throw e;
        }
    }

    /** Where a row goes by what it says itself. */
    private void sort(Draft draft, Rates ofFolder, FileQuestions open) {
        if (!draft.rejections.isEmpty()) {
            findings.rejected.add(RowProblem.joined(draft.rejections));
            return;
        }
        CarFacts.Builder facts = draft.facts;
        Asked asked = draft.asked;
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
            findings.setAside.add(RowProblem.joined(draft.asides));
            return;
        }
        open.count(draft);
        kept.keep(draft, ofFolder);
    }

    /** What came out of all files. */
    ListingsRead finished() {
        ListingColumns columns = kept.columns;
        lists.renamed().forEach(columns::rename);
        Currency base = options.baseCurrency.or(statedInAll::currency).orElseGet(columns::mostFrequentCurrency);
        int[] firsts = SameId.firsts(columns.id, columns.size());
        StoredListings checked = StoredListings.without(leftOut(base, firsts), columns);
        kept.letGoOfPriceTexts();
        // What is odd among them is looked for while they are joined into cars.
        ForkJoinTask<OddPrices> oddPrices = ForkJoinTask.adapt(() -> new OddPrices(checked)).fork();
        ForkJoinTask<List<RowProblem>> asked = ForkJoinTask.adapt(() -> questionsOf(checked)).fork();
        CarMatching.Result matched = CarMatching.match(checked, firsts);
        oddPrices.join().flag(findings.oddities);
        findings.questions.addAll(asked.join());
        findings.oddities.addAll(lists.variants());
        if (options.spelling.isEmpty()) {
            folders.values().forEach(folder -> findings.oddities.addAll(folder.lines.ofNoListing(columns)));
        }
        findings.takeAll(matched.oddities());
        findings.sort();
        Counts counts = new Counts(checked.size(), findings.setAside.size(), findings.rejected.size(), blank, comments);
        DistanceUnit unit = kept.mostFrequentUnit().or(statedInAll::mileageUnit).orElse(DistanceUnit.MI);
        return new ListingsRead(counts, checked, matched.cars(), findings.setAside, findings.rejected, findings.oddities,
                findings.questions, lists.unmatchedWords(), columnsUnderstood, base, unit, List.copyOf(notes));
    }

    /** The rows that are set aside by what the others say, in ascending order; what is odd about the rest is told. */
    private int[] leftOut(Currency base, int[] firsts) {
        SecondSightings second = new SecondSightings(kept.columns, firsts, findings);
        BitSet withoutRate = new BitSet();
        Optional<LocalDate> last = kept.columns.lastDay();
        int[] leftOut = new int[0];
        int out = 0;
        for (int row = 0; row < kept.size(); row++) {
            boolean inBase = kept.isInBase(row, base);
            withoutRate.set(row, !inBase);
            if (!inBase || kept.isOfYearToCome(row, last) || second.isOne(row, withoutRate)) {
                leftOut = out < leftOut.length ? leftOut : Arrays.copyOf(leftOut, 16 + 2 * out);
                leftOut[out++] = row;
            } else {
                kept.tellOddities(row);
            }
        }
        return Arrays.copyOf(leftOut, out);
    }

    private List<RowProblem> questionsOf(StoredListings checked) {
        List<RowProblem> asked = new ArrayList<>();
        FarDays.ask(checked, asked);
        LikeLines.of(kept.columns, checked.rows()).forEach(pair -> asked.add(whetherOneLine(pair)));
        return asked;
    }

    private RowProblem whetherOneLine(LikeLines.Pair pair) {
        Origin origin = kept.columns.origin(pair.row());
        String rare = Spelling.shortened(pair.rare(), 40);
        String usual = Spelling.shortened(pair.usual(), 40);
        return new RowProblem(origin.file(), origin.line(), "vehicle", pair.rare(), RowProblem.Kind.QUESTION,
                "this is a letter away from '" + usual + "' (" + pair.rowsOfUsual()
                        + " rows), and is taken for a line of its own: is it mistyped? If so mend it, or state in words.csv: vehicle,"
                        + rare + "," + usual);
    }
}
