package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import swapworth.table.Table;

class HostileTextTest extends ReadingListings {

    private static final String FILE = "id,seen_on,vehicle,model_year,mileage,price,runs,note,<i>more\n"
            + "=cmd|' /C calc'!A0,2024-01-01,<script>alert(1)</script>,2010,50000,9000,<b>blown</b>,"
            + "\"<img src=x onerror=y>\",@x\n"
            + "b,2024-01-01,\u001b[31mRed,2010,50000,<svg onload=z>,drives,fine,\n"
            + "c,2024-01-01,Roadster,2010,=1+1,9000,drives,fine,\n"
            + "d,2024-01-01,Roadster,2010,50000,0,drives,\u202ereversed,\n";

    @Test
    void nothing_of_a_hostile_file_escapes_onto_the_page_or_into_a_spreadsheet() {
        Check check = Check.of(read(FILE));
        assertEquals(4, check.counts().rows().get(0).size() + 2);
        for (Table table : check.tables()) {
            String html = table.html();
            for (String tag : new String[] {"<script", "<img", "<svg", "<b>", "<i>"}) {
                assertFalse(html.contains(tag), html);
            }
            for (String line : table.csv().split("\r\n")) {
                assertFalse(line.startsWith("=") || line.contains(",=") || line.contains(",@"), line);
            }
            assertFalse(table.text().contains("\u001b"));
        }
        assertFalse(check.cars().csv().contains("\n="));
    }

    @Test
    void a_hostile_file_is_accounted_for() {
        assertEquals(new Counts(1, 1, 2, 0, 0), read(FILE).counts());
    }

    @Test
    void a_huge_note_is_kept_and_a_huge_word_is_shortened() {
        ListingsRead read = read("vehicle,year,price,note,runs\nA,2010,9000," + "n".repeat(500_000) + "," + "w".repeat(500_000)
                + "\n");
        assertEquals(500_000, read.listings().get(0).note().orElseThrow().length());
        assertTrue(read.unmatchedWords().get(0).word().length() <= 60);
        assertTrue(Check.of(read).text().length() < 20_000);
    }

    @Test
    void a_turkish_machine_reads_the_same() {
        Locale before = Locale.getDefault();
        String file = "ID,SEEN_ON,VEHICLE,MODEL_YEAR,MILEAGE_MI,PRICE,TITLE,INTERIOR,SELLER\n"
                + "I1,2024-01-01,Iris,2010,50 MILES,EUR 9000,SALVAGE TITLE,FINE,PRIVATE\n";
        try {
            ListingsRead usual = read(file);
            Locale.setDefault(new Locale("tr", "TR"));
            assertEquals(usual, read(file));
            assertEquals(Title.SALVAGE, usual.listings().get(0).facts().title());
            assertEquals(Check.of(usual).text(), Check.of(read(file)).text());
        } finally {
            Locale.setDefault(before);
        }
    }
}
