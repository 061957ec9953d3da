package swapworth.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** That each cell says what its text says, of columns of few texts and of many, and that a shared text is understood once. */
class RememberedTest {

    private static final String[] WORDS = {"sound", "worn", "", "bad", " ", "\u00a0", " worn ", "Worn", "two\nlines", "d\u00e9j\u00e0 vu"};
    private static final int ROWS = 30_000;

    @Test
    void every_cell_says_what_its_text_says_however_many_texts_its_column_has() {
        Random random = new Random(11);
        StringBuilder text = new StringBuilder("word,own,often,long\n");
        List<String[]> written = new ArrayList<>();
        for (int i = 0; i < ROWS; i++) {
            String own = "c" + (i % 7 == 0 ? random.nextInt(ROWS) : i);
            String[] cells = {WORDS[random.nextInt(WORDS.length)], own, "" + random.nextInt(12_000), "long".repeat(15) + random.nextInt(9)};
            written.add(cells);
            text.append('"').append(String.join("\",\"", cells)).append("\"\n");
        }
        List<CsvRow> rows = CsvSource.of("many.csv", text.toString()).rows();
        assertEquals(ROWS, rows.size());
        for (int column = 0; column < 4; column++) {
            int place = column;
            AtomicInteger findings = new AtomicInteger();
            Remembered<String> saying = new Remembered<>(place, row -> findings.incrementAndGet() > 0 ? "says " + row.cell(place) : "");
            for (int i = 0; i < ROWS; i++) {
                String stripped = written.get(i)[column].replace('\u00a0', ' ').strip();
                assertEquals(stripped, rows.get(i).cell(column));
                assertEquals("says " + stripped, saying.of(rows.get(i)));
                assertEquals(stripped.isEmpty(), rows.get(i).isEmpty(column));
            }
            if (column == 0) {
                assertTrue(findings.get() <= WORDS.length, findings + " findings of a few words");
            }
        }
    }

    @Test
    void a_column_that_is_missing_says_what_an_empty_cell_does() {
        List<CsvRow> rows = CsvSource.of("short.csv", "a,b,c\n1,2\n1,2,3\n1,2, \n").rows();
        Remembered<String> third = new Remembered<>(2, row -> "<" + row.cell(2) + ">");
        assertEquals(List.of("<>", "<3>", "<>"), rows.stream().map(third::of).toList());
        Remembered<String> none = new Remembered<>(-1, row -> "<" + row.cell(-1) + ">");
        assertEquals(List.of("<>", "<>", "<>"), rows.stream().map(none::of).toList());
    }
}
