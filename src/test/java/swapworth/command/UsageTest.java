package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.apache.commons.cli.ParseException;
import org.junit.jupiter.api.Test;
import swapworth.command.Usage.Alone;
import swapworth.command.Usage.Many;
import swapworth.command.Usage.Named;
import swapworth.command.Usage.Need;
import swapworth.command.Usage.Takes;

/** How the words of a command line are told apart, and what the help says of them. */
class UsageTest {
    private static final Usage USAGE = new Usage("swapworth step", List.of("Does it."), new Alone("FILE", Many.AT_MOST_ONE, "a file"),
            List.of(new Named("--market", "FILES...", Takes.WORDS, Need.NEEDED, "files"),
                    new Named("--on", "DATE", Takes.A_WORD, Need.NONE, "a day"),
                    new Named("--with", "COLUMN,...", Takes.A_LIST, Need.NONE, "columns"),
                    new Named("--strict", "", Takes.NOTHING, Need.NONE, "no mercy")));

    private static CommandWords told(String... words) throws ParseException {
        return USAGE.toldApart(words);
    }

    @Test
    void options_and_words_may_stand_in_any_order() throws ParseException {
        for (String[] words : List.of(new String[] {"a.csv", "--on", "2026-03-31", "--strict", "--market", "b", "c"},
                new String[] {"--market", "b", "c", "--on=2026-03-31", "a.csv", "--strict"},
                new String[] {"--strict", "--market", "b", "--market", "c", "--on", "2026-03-31", "--", "a.csv"})) {
            CommandWords told = told(words);
            assertEquals(Optional.of("a.csv"), told.first(), String.join(" ", words));
            assertEquals(List.of("b", "c"), told.all("--market"));
            assertEquals(Optional.of("2026-03-31"), told.one("--on"));
            assertTrue(told.has("--strict"));
            assertEquals(List.of(), USAGE.missing(told));
            assertEquals(List.of(), USAGE.twice(told));
        }
    }

    @Test
    void what_looks_like_an_option_is_one_and_quotes_and_negative_numbers_are_kept() throws ParseException {
        assertEquals(Optional.of("-5"), told("--on", "-5").one("--on"));
        assertEquals(Optional.of(""), told("--on=").one("--on"));
        assertEquals(Optional.of("\"odd name\""), told("\"odd name\"").first());
        assertThrows(ParseException.class, () -> told("--on", "--strict"));
        assertThrows(ParseException.class, () -> told("--o", "x"), "no option is guessed from its beginning");
        assertThrows(ParseException.class, () -> told("-x"));
    }

    @Test
    void one_is_stated_once_and_a_list_may_be_stated_again() throws ParseException {
        assertEquals(List.of("--on"), USAGE.twice(told("--on", "a", "--on", "b")));
        assertEquals(List.of("--strict"), USAGE.twice(told("--strict", "--strict")));
        CommandWords told = told("--with", "a,b", "--with", "c");
        assertEquals(List.of(), USAGE.twice(told));
        assertEquals(List.of("a,b", "c"), told.all("--with"));
        assertEquals(List.of("two"), USAGE.tooMany(told("one", "two")));
        assertEquals(List.of("--market FILES... (files)"), USAGE.missing(told()));
    }

    @Test
    void help_lists_what_is_needed_first_and_every_option_once() throws ParseException {
        assertTrue(told("-h").has("--help"));
        assertEquals("""
                Usage: swapworth step [FILE] --market FILES... [options]
                Does it.

                  FILE               a file
                  --market FILES...  files
                  --on DATE          a day
                  --with COLUMN,...  columns
                  --strict           no mercy
                  --help             prints this
                """, USAGE.help());
    }

    @Test
    void no_line_of_any_help_is_wider_than_a_terminal_and_what_goes_on_stands_in_its_column() {
        for (String line : Step.help().split("\n")) {
            assertTrue(line.length() <= 110, line);
        }
        assertTrue(Step.help().contains("\n  value --market LISTINGS... --subject CARS\n                     cars valued by listings\n"),
                Step.help());
    }
}
