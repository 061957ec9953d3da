package swapworth.command;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import swapworth.table.TextLines;

/** The single steps of the program, in the order of the help. */
enum Step {
    CHECK("LISTINGS...", "what was understood of listing files, of a folder its cars too",
            "Says what was understood of listing files, and what was not."),
    JUDGE("LISTINGS...", "every listing judged, its own car left out", "Judges every listing, its own car left out."),
    VALUE("--market LISTINGS... --subject CARS", "cars valued by listings", "Values cars by listings."),
    INDEX("LISTINGS...", "how the level of the market has moved",
            "Says how the level of the market has moved, how fast, and where it may go."),
    LANDED("FOLDER", "what each car costs once it stands in the yard, and the highest bid",
            "What each car in play costs once it stands in the yard, line by line (cars.csv, fees.csv)."),
    PARTOUT("FOLDER", "what the left-over parts of each car bring",
            "What the left-over parts of each car bring (cars.csv, partout.csv, parts.csv, listings.csv)."),
    SWAP("FOLDER", "the finished cars of cars.csv: body of one line, running gear of another",
            "Values finished swaps: the rows of cars.csv of the role 'finished', by listings.csv, swaps.csv and the assumptions."),
    PROJECT("FOLDER", "the money of the undertaking: spent, still to come, and what it is against",
            "The money of the undertaking, from ledger.csv and the files beside it."),
    NOTEBOOK("FILE...", "notebooks run, each written as a page",
            "Runs notebooks (files of JShell with prose between the code) and writes a page for each.");

    /** All that may stand first on a command line. */
    static final List<String> WORDS = Arrays.stream(values()).map(Step::word).toList();

    private final String takes;
    private final String does;
    private final String description;

    Step(String takes, String does, String description) {
        this.takes = takes;
        this.does = does;
        this.description = description;
    }

    /** The step that a word names. */
    static Optional<Step> named(String word) {
        int place = WORDS.indexOf(word);
        return place < 0 ? Optional.empty() : Optional.of(values()[place]);
    }

    /** What stands first on the command line. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** What the help of the whole program says of the steps. */
    static String help() {
        Map<String, String> meanings = new LinkedHashMap<>();
        for (Step step : values()) {
            meanings.put(step.word() + " " + step.takes, step.does);
        }
        return "\nSingle steps, each with its own --help:\n" + TextLines.meanings(meanings);
    }

    /** What its own help says first. */
    String description() {
        return description;
    }
}
