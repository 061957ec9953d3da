package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import swapworth.money.Rates;

/**
 * What speaks for every file of a folder: the user's spellings and conventions of {@code words.csv} and the exchange rates of
 * {@code rates.csv}.
 *
 * @param words the user's own spellings
 * @param conventions how the user writes numbers, dates, distances and money
 * @param rates dated exchange rates
 * @param problems rows of these files that could not be used
 * @param notes which of these files were used
 */
public record FolderSettings(Words words, Conventions conventions, Rates rates, List<RowProblem> problems, List<String> notes) {

    /** Copies the lists in. */
    public FolderSettings {
        requireNonNull(words, "words");
        requireNonNull(conventions, "conventions");
        requireNonNull(rates, "rates");
        problems = List.copyOf(problems);
        notes = List.copyOf(notes);
    }

    /**
     * The settings of a folder.
     *
     * @param folder the folder; neither file need be there
     * @param stated conventions that count before those of {@code words.csv}
     * @return the settings
     * @throws UnusableFileException if one of the files is there and cannot be used as a whole
     */
    public static FolderSettings of(Path folder, Conventions stated) {
        List<RowProblem> problems = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        Words words = Words.ofFolder(folder);
        problems.addAll(words.problems());
        if (!words.saysNothing()) {
            notes.add("the spellings and conventions of words.csv beside the file are used");
        }
        Conventions conventions = stated.or(words.conventions());
        Rates rates = Rates.none();
        Path ratesFile = folder.resolve("rates.csv");
        if (Files.isRegularFile(ratesFile)) {
            RatesFile read = RatesFile.read(ratesFile, conventions, words);
            rates = read.rates();
            problems.addAll(read.problems());
            if (rates != Rates.none()) {
                notes.add("the exchange rates of rates.csv beside the file are used");
            }
        }
        return new FolderSettings(words, conventions, rates, problems, notes);
    }

    /**
     * The currency in which amounts of the folder are counted where no listing says otherwise.
     *
     * @return the one stated in {@code words.csv}, else US dollars
     */
    public Currency currency() {
        return conventions.currency().orElse(Currencies.USUAL);
    }
}
