package swapworth.listing;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import swapworth.money.Rates;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowProblem;
import swapworth.reading.Words;

/** The files beside a listings file that speak for all of its folder: words.csv, rates.csv and lines.csv. */
final class FolderFiles {

    final Words words;
    final Conventions conventions;
    final Rates rates;
    final LinesFile lines;
    final List<RowProblem> problems;
    final List<String> notes;

    FolderFiles(Path folder, Conventions stated) {
        FolderSettings settings = FolderSettings.of(folder, stated);
        words = settings.words();
        conventions = settings.conventions();
        rates = settings.rates();
        problems = new ArrayList<>(settings.problems());
        notes = new ArrayList<>(settings.notes());
        Path linesFile = folder.resolve("lines.csv");
        if (Files.isRegularFile(linesFile)) {
            lines = LinesFile.read(linesFile, conventions, words);
            problems.addAll(lines.rows().problems());
            notes.add("the facts of a line stand in where a row says nothing of them: " + lines.rows().sentence());
        } else {
            lines = LinesFile.none();
        }
    }

    static Path folderOf(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        return folder == null ? Path.of("") : folder;
    }
}
