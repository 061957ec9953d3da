package swapworth.command;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.cli.CommandLine;
import org.apache.commons.cli.DefaultParser;
import org.apache.commons.cli.Option;
import org.apache.commons.cli.Options;
import org.apache.commons.cli.ParseException;
import swapworth.table.TextLines;

/** What may be said to the program or to one of its steps: a folder or files, and options. Commons CLI takes the words apart by it. */
final class Usage {
    static final String HELP = "--help";

    /** How many words may stand by themselves. */
    enum Many { AT_MOST_ONE, AT_LEAST_ONE, NONE }

    /** What goes with an option. */
    enum Takes {
        NOTHING,
        A_WORD,
        /** A word that is a list, and more of them where the option is stated again. */
        A_LIST,
        /** All words up to the next option. */
        WORDS
    }

    /** Whether an option may be left out. */
    enum Need { NONE, NEEDED }

    /** Words that stand by themselves. */
    record Alone(String label, Many many, String description) {
        String shown() {
            return many == Many.NONE ? "" : many == Many.AT_MOST_ONE ? " [" + label + "]" : " " + label + "...";
        }
    }

    /** An option, by its name with two dashes. */
    record Named(String name, String label, Takes takes, Need need, String description) {
        String shown() {
            return label.isEmpty() ? name : name + " " + label;
        }

        private Option option() {
            Option.Builder option = (name.equals(HELP) ? Option.builder("h") : Option.builder()).longOpt(name.substring(2));
            return switch (takes) {
                case NOTHING -> option.get();
                case A_WORD, A_LIST -> option.hasArg().get();
                case WORDS -> option.hasArgs().get();
            };
        }
    }

    private final String command;
    private final List<String> about;
    private final Alone alone;
    private final List<Named> options;

    /**
     * Names all that may be said.
     *
     * @param command the words that stand before it, for the help
     * @param about what the program or the step does, in sentences
     * @param alone the words that stand by themselves
     * @param options the options but that for help, which all have
     */
    Usage(String command, List<String> about, Alone alone, List<Named> options) {
        this.command = command;
        this.about = List.copyOf(about);
        this.alone = alone;
        this.options = Stream.concat(Stream.of(new Named(HELP, "", Takes.NOTHING, Need.NONE, "prints this")), options.stream()).toList();
    }

    /** The names of the options. */
    List<String> names() {
        return options.stream().map(Named::name).toList();
    }

    /** The option that Commons CLI calls so. */
    Named named(Option option) {
        return options.stream().filter(o -> o.name.equals("--" + option.getLongOpt())).findFirst().orElseThrow();
    }

    /**
     * Tells words apart.
     *
     * @param words the words behind the command
     * @return the same by their options; whether all that is needed is there, and nothing twice, is not asked yet
     * @throws ParseException where a word is no option or lacks its value
     */
    CommandWords toldApart(String[] words) throws ParseException {
        Options known = new Options();
        options.forEach(o -> known.addOption(o.option()));
        CommandLine line = DefaultParser.builder().setAllowPartialMatching(false).setStripLeadingAndTrailingQuotes(false).get()
                .parse(known, words, false);
        Map<String, List<List<String>>> byOption = new HashMap<>();
        for (Option option : line.getOptions()) {
            byOption.computeIfAbsent("--" + option.getLongOpt(), name -> new ArrayList<>()).add(option.getValuesList());
        }
        return new CommandWords(line.getArgList(), byOption);
    }

    /** What is needed and not there, in the words of the help. */
    List<String> missing(CommandWords words) {
        Stream<String> named = options.stream().filter(o -> o.need == Need.NEEDED && !words.has(o.name))
                .map(o -> o.shown() + " (" + o.description + ")");
        Stream<String> plain = alone.many == Many.AT_LEAST_ONE && words.alone().isEmpty()
                ? Stream.of(alone.label + " (" + alone.description + ")") : Stream.empty();
        return Stream.concat(named, plain).toList();
    }

    /** The words too many that stand by themselves. */
    List<String> tooMany(CommandWords words) {
        int most = alone.many == Many.NONE ? 0 : alone.many == Many.AT_MOST_ONE ? 1 : Integer.MAX_VALUE;
        return words.alone().subList(Math.min(most, words.alone().size()), words.alone().size());
    }

    /** The options that are stated more than once and hold one value at most. */
    List<String> twice(CommandWords words) {
        return options.stream().filter(o -> o.takes == Takes.NOTHING || o.takes == Takes.A_WORD)
                .filter(o -> words.times(o.name) > 1).map(Named::name).toList();
    }

    /** What may be said, for people. */
    String help() {
        List<Named> needed = options.stream().filter(o -> o.need == Need.NEEDED).toList();
        String usage = "Usage: " + command + alone.shown() + needed.stream().map(o -> " " + o.shown()).collect(Collectors.joining())
                + " [options]";
        Map<String, String> meanings = new LinkedHashMap<>();
        if (alone.many != Many.NONE) {
            meanings.put(alone.label, alone.description);
        }
        Stream.concat(options.stream().skip(1), options.stream().limit(1)).forEach(o -> meanings.put(o.shown(), o.description));
        return TextLines.of("", usage) + about.stream().map(sentence -> TextLines.of("", sentence)).collect(Collectors.joining()) + "\n"
                + TextLines.meanings(meanings);
    }
}
