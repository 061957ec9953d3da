package swapworth.command;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
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

    /**
     * The sentence for words that could not be taken apart.
     *
     * @param fault what was found
     * @param first the first word of the command line
     * @param isStep whether that is a step
     * @return plain words, without a name of a class
     */
    static String sentence(ParameterException fault, String first, boolean isStep) {
        if (fault instanceof UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()) {
            return unmatched(unmatched, first, isStep);
        }
        if (fault instanceof MissingParameterException missing) {
            return missing(missing);
        }
        if (fault instanceof OverwrittenOptionException twice) {
            return name(twice.getOverwritten()) + " is stated twice; state it once";
        }
        // Every word is taken as text, so that what is left is an option with a value that takes none.
        return String.valueOf(fault.getMessage());
    }

    private static String unmatched(UnmatchedArgumentException fault, String first, boolean isStep) {
        String word = fault.getUnmatched().get(0);
        if (word.startsWith("-")) {
            List<String> options = new ArrayList<>();
            fault.getCommandLine().getCommandSpec().options().forEach(o -> options.add(o.longestName()));
            return "no option '" + Spelling.shortened(word, 60) + "'" + didYouMean(word, options) + " The options are: "
                    + String.join(", ", options);
        }
        if (isStep) {
            return "'" + Spelling.shortened(word, 60) + "' is one word too many for " + first;
        }
        if (Step.WORDS.contains(word) || !first.startsWith("-") && isFolder(first)) {
            return "'" + Spelling.shortened(word, 60) + "' is one word too many; a step stands first, for instance swapworth judge FOLDER";
        }
        return Step.WORDS.stream().filter(step -> fault.getCommandLine().getParseResult().originalArgs().contains(step)).findFirst()
                .map(step -> "the step stands first: swapworth " + step + " ...").orElseGet(() -> unknownStep(first));
    }

    private static String missing(MissingParameterException fault) {
        List<String> needed = new ArrayList<>();
        for (ArgSpec spec : fault.getMissing()) {
            needed.add(name(spec) + (spec.isOption() ? " " + spec.paramLabel() : "") + " (" + String.join(" ", spec.description()) + ")");
        }
        return needed.isEmpty() ? "something is missing" : "needed: " + String.join(", ", needed);
    }

    private static String name(ArgSpec spec) {
        return spec instanceof OptionSpec option ? option.longestName() : spec.paramLabel();
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
