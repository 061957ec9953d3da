package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** A machine whose Java cannot paint, played by a painter that throws what such machines throw. */
class ChartWithoutPictureTest {
    private static final Table DATA = Table.titled("numbers").columns(Column.number("x", "")).row(Cell.whole(7)).build();

    private static Chart chart(Throwable thrown) {
        Axis axis = Axis.between(0, 1, 4);
        return new Plot(100, axis, axis, "x", "y").chart("title", "what it shows", DATA, (layers, x, y, width, height) -> {
            if (thrown instanceof Error error) {
                throw error;
            }
            throw (RuntimeException) thrown;
        });
    }

    static List<Error> missingLibraries() {
        return List.of(new Error("Probable fatal error: No physical fonts found."),
                new InternalError("java.lang.reflect.InvocationTargetException"),
                new UnsatisfiedLinkError("libfontmanager.so: libfreetype.so.6: cannot open shared object file"),
                new NoClassDefFoundError("Could not initialize class java.awt.Color"), new java.awt.AWTError("no toolkit"));
    }

    @ParameterizedTest
    @MethodSource("missingLibraries")
    void the_chart_says_what_to_install_and_keeps_words_and_numbers(Error error) {
        Chart chart = chart(error);
        String trouble = chart.trouble().orElseThrow();
        assertTrue(trouble.startsWith("no picture: this machine has no font"), trouble);
        assertTrue(trouble.contains("on Debian install fontconfig and fonts-dejavu-core"), trouble);
        assertEquals("", chart.svg());
        assertEquals("", chart.document());
        assertEquals("what it shows", chart.alt());
        assertEquals(DATA, chart.data());
    }

    @Test
    void faults_of_our_own_are_not_hidden() {
        assertThrows(OutOfMemoryError.class, () -> chart(new OutOfMemoryError()));
        assertThrows(StackOverflowError.class, () -> chart(new StackOverflowError()));
        assertThrows(AssertionError.class, () -> chart(new AssertionError()));
        assertThrows(IllegalStateException.class, () -> chart(new IllegalStateException()));
    }
}
