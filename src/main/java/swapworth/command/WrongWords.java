package swapworth.command;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.commons.cli.MissingArgumentException;
import org.apache.commons.cli.ParseException;
import org.apache.commons.cli.UnrecognizedOptionException;
import swapworth.reading.Spelling;

/** What is said of a command line that cannot be understood: which word, and what would be. */
final class WrongWords {
    private WrongWords() {
    }

    /**
     * Why a word for the folder is none: it is near the name of a step, or a file.
     *
     * @param word the word that stands where the folder or the step should
     * @return nothing where it may be a folder
     */
    static Optional<String> noStep(String word) {
        if (word.isEmpty() || isFolder(word)) {
            return Optional.empty();
        }
        if (isFile(word)) {
            return Optional.of(word + ": this is a file; needed: the folder in which it lies, or a step before it, for instance"
                    + " swapworth judge " + word);
        }
        return Spelling.slipOf(word, Step.WORDS).isPresent() ? Optional.of(unknownStep(word)) : Optional.empty();
    }

    private static String unknownStep(String word) {
        return "no step '" + Spelling.shortened(word, 60) + "'" + didYouMean(word, Step.WORDS) + " The steps are: "
                + String.join(", ", Step.WORDS);
    }

    /** The sentence for a word that is no option, or an option without what goes with it; without a name of a class. */
    static String sentence(ParseException fault, Usage usage) {
        if (fault instanceof MissingArgumentException lacking) {
            Usage.Named option = usage.named(lacking.getOption());
            return "needed: " + option.shown() + " (" + option.description() + ")";
        }
        String word = fault instanceof UnrecognizedOptionException unknown ? unknown.getOption() : "";
        int sign = word.indexOf('=');
        if (sign > 0 && usage.names().contains(word.substring(0, sign))) {
            return word.substring(0, sign) + " takes no value; leave out '" + Spelling.shortened(word.substring(sign), 60) + "'";
        }
        return "no option '" + Spelling.shortened(word, 60) + "'" + didYouMean(word, usage.names()) + " The options are: "
                + String.join(", ", usage.names());
    }

    /**
     * What is wrong with words that were told apart: too many, too few, or one twice.
     *
     * @param usage what may be said
     * @param words what is said
     * @param first the first word of the command line
     * @param isStep whether that is a step
     * @return nothing where all is well
     */
    static Optional<String> of(Usage usage, CommandWords words, String first, boolean isStep) {
        Optional<String> twice = usage.twice(words).stream().findFirst();
        if (twice.isPresent()) {
            return Optional.of(twice.get() + " is stated twice; state it once");
        }
        Optional<String> tooMany = usage.tooMany(words).stream().findFirst();
        if (tooMany.isPresent()) {
            return Optional.of(tooMany(tooMany.get(), words.alone(), first, isStep));
        }
        List<String> missing = usage.missing(words);
        return missing.isEmpty() ? Optional.empty() : Optional.of("needed: " + String.join(", ", missing));
    }

    private static String tooMany(String word, List<String> alone, String first, boolean isStep) {
        if (isStep) {
            return "'" + Spelling.shortened(word, 60) + "' is one word too many for " + first;
        }
        if (Step.WORDS.contains(word) || !first.startsWith("-") && isFolder(first)) {
            return "'" + Spelling.shortened(word, 60) + "' is one word too many; a step stands first, for instance swapworth judge FOLDER";
        }
        return Step.WORDS.stream().filter(alone::contains).findFirst()
                .map(step -> "the step stands first: swapworth " + step + " ...").orElseGet(() -> unknownStep(first));
    }

    private static String didYouMean(String word, List<String> names) {
        return Spelling.slipOf(word, names).map(near -> "; did you mean " + near + "?").orElse(".");
    }

    private static boolean isFolder(String word) {
        try {
            return Files.isDirectory(Path.of(word));
        } catch (InvalidPathException e) {
            return false;
        }
    }

    private static boolean isFile(String word) {
        try {
            return Files.isRegularFile(Path.of(word));
        } catch (InvalidPathException e) {
            return false;
        }
    }
}
