package swapworth.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** Why a cell stopped: what the library says to its user stands in plain words, without the names of Java's classes. */
class PlainCausesTest {

    private static String cause(String cell) {
        NotebookFile notebook = NotebookFile.of(Path.of("some.jsh"), "// %%\n" + cell + "\n");
        return Unwatched.run(notebook).failure().orElseThrow().cause();
    }

    @Test
    void an_exception_of_the_library_is_told_by_its_message_alone() {
        assertEquals("nowhere.csv: there is no such file; needed: a CSV file that can be read",
                cause("swapworth.listing.Listings.read(Path.of(\"nowhere.csv\"));"));
    }

    @Test
    void a_wrong_argument_or_state_that_the_library_names_is_told_by_its_message_alone() {
        assertEquals("cannot tell: there is no fees.csv; needed: that file",
                cause("new swapworth.market.Answer.NotTold<>(swapworth.market.CannotTell.without(\"there is no fees.csv\", \"that file\"))"
                        + ".orElseThrow();"));
        assertEquals("an offer needs an amount above 0 and days of at least 0, not -1.0 and 0.0",
                cause("swapworth.swap.OwnOffer.refused(-1);"));
    }

    @Test
    void what_the_notebook_or_java_itself_throws_keeps_its_class() {
        assertEquals("java.lang.IllegalStateException: mine", cause("throw new IllegalStateException(\"mine\");"));
        assertEquals("java.util.NoSuchElementException: No value present", cause("Optional.empty().orElseThrow();"));
        assertTrue(cause("Integer.parseInt(\"x\");").startsWith("java.lang.NumberFormatException: "));
    }
}
