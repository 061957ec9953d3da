package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A file that its keeper sorted another way holds the same evidence, and every draw is the same. */
class RowOrderTest {
    private static final Path SAMPLE = Path.of("sample-listings");

    @TempDir
    Path folder;

    /** The sample with the rows of one file in another order. */
    private Undertaking shuffled(String file) throws IOException {
        try (Stream<Path> files = Files.list(SAMPLE)) {
            for (Path from : files.filter(f -> f.toString().endsWith(".csv")).toList()) {
                Files.copy(from, folder.resolve(from.getFileName()));
            }
        }
        List<String> lines = Files.readAllLines(SAMPLE.resolve(file));
        List<String> rows = new ArrayList<>(lines.subList(1, lines.size()));
        Collections.shuffle(rows, new Random(3));
        rows.add(0, lines.get(0));
        Files.write(folder.resolve(file), rows);
        return Undertaking.of(folder);
    }

    private static void assertSame(double[] expected, double[] actual, String what) {
        assertEquals(expected.length, actual.length, what);
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], actual[i], 0.5, what + ", draw " + i);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"listings.csv", "parts.csv", "partout.csv", "ledger.csv", "swaps.csv", "cars.csv"})
    void the_order_of_the_rows_of_a_file_moves_no_draw(String file) throws IOException {
        Undertaking before = Undertaking.of(SAMPLE);
        Undertaking after = shuffled(file);
        FinishOrStop was = before.finishOrStop().orElseThrow();
        FinishOrStop is = after.finishOrStop().orElseThrow();
        assertSame(was.finished(), is.finished(), "value of the finished car");
        assertSame(was.finishing(), is.finishing(), "what finishing brings");
        assertEquals(was.exits().stream().map(FinishOrStop.Exit::name).toList(), is.exits().stream().map(FinishOrStop.Exit::name).toList());
        for (int k = 0; k < was.exits().size(); k++) {
            assertSame(was.exits().get(k).brings(), is.exits().get(k).brings(), was.exits().get(k).name());
        }
        assertSame(before.nowOrLater().orElseThrow().gain(6), after.nowOrLater().orElseThrow().gain(6), "to wait half a year");
    }

    @Test
    void half_a_dollar_is_less_than_another_order_of_draws_would_move() {
        double[] finished = Undertaking.of(SAMPLE).finishOrStop().orElseThrow().finished();
        double[] shifted = new double[finished.length];
        System.arraycopy(finished, 1, shifted, 0, finished.length - 1);
        long moved = 0;
        for (int i = 0; i < finished.length; i++) {
            moved += Math.abs(finished[i] - shifted[i]) > 0.5 ? 1 : 0;
        }
        assertEquals(1, (double) moved / finished.length, 0.01);
    }
}
