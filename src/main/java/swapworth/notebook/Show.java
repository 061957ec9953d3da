package swapworth.notebook;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.report.Part;

/**
 * Shows results in a notebook: as tables, charts and text of its page, or, where the same file runs under plain {@code jshell}, as
 * text in the terminal.
 */
public final class Show {
    private static volatile Consumer<List<Part>> sink = Show::print;

    private Show() {
    }

    /**
     * Shows a thing by its type: tables and charts, results that have a table of themselves, records and lists of records as tables,
     * anything else as text. An answer shows what is told, or why nothing is.
     *
     * @param thing what to show
     */
    public static void show(Object thing) {
        // A method of its own: what 'match' gives would else be taken for all things at once, and not compile.
        all(Collections.singletonList(thing));
    }

    /**
     * Shows things one below the other, each by its type; a reason that several of them share is shown once.
     *
     * @param first the first of them
     * @param second the second
     * @param more the others
     */
    public static void show(Object first, Object second, Object... more) {
        List<Object> things = new ArrayList<>(Arrays.asList(first, second));
        things.addAll(Arrays.asList(more));
        all(things);
    }

    private static void all(List<Object> things) {
        List<Part> parts = new ArrayList<>();
        Set<CannotTell> said = new HashSet<>();
        for (Object thing : things) {
            if (thing instanceof Answer.NotTold<?> no && !said.add(no.reason())) {
                continue;
            }
            parts.addAll(Shown.parts(requireNonNull(thing, "what is shown must not be null")));
        }
        sink.accept(parts);
    }

    /** Hands everything shown from now on to the runner. */
    static void to(Consumer<List<Part>> runner) {
        sink = runner;
    }

    /** Prints everything shown from now on. */
    static void toTerminal() {
        sink = Show::print;
    }

    private static void print(List<Part> parts) {
        parts.forEach(part -> System.out.println(PartText.of(part)));
    }
}
