package swapworth.listing;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import swapworth.money.Rates;
import swapworth.reading.Conventions;
import swapworth.reading.RatesFile;
import swapworth.reading.RowProblem;
import swapworth.reading.Words;

/** The files beside a listings file that speak for all of its folder: words.csv, rates.csv and lines.csv. */
final class FolderFiles {

    final Words words;
    final Conventions conventions;
    final Rates rates;
    final LinesFile lines;
    final List<RowProblem> problems = new ArrayList<>();
    final List<String> notes = new ArrayList<>();

    FolderFiles(Path folder, Conventions stated) {
        Path wordsFile = folder.resolve("words.csv");
        if (Files.isRegularFile(wordsFile)) {
            words = Words.read(wordsFile);
            problems.addAll(words.problems());
            notes.add("the spellings and conventions of words.csv beside the file are used");
        } else {
            words = Words.none();
        }
        conventions = stated.or(words.conventions());
        Path ratesFile = folder.resolve("rates.csv");
        if (Files.isRegularFile(ratesFile)) {
            RatesFile read = RatesFile.read(ratesFile, conventions);
            rates = read.rates();
            problems.addAll(read.problems());
            notes.add("the exchange rates of rates.csv beside the file are used");
        } else {
            rates = Rates.none();
        }
        Path linesFile = folder.resolve("lines.csv");
        if (Files.isRegularFile(linesFile)) {
            lines = LinesFile.read(linesFile, conventions, words);
            problems.addAll(lines.problems());
            notes.add("the facts of lines.csv beside the file stand in where a row says nothing of them");
        } else {
            lines = LinesFile.none();
        }
    }

    static Path folderOf(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        return folder == null ? Path.of("") : folder;
    }
}
