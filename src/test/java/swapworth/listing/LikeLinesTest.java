package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import swapworth.reading.RowProblem;

/** That a mistyped line is asked about, and that nothing is asked of lines that merely look alike. */
class LikeLinesTest extends ReadingListings {

    @Test
    void one_letter_in_a_long_word_is_a_letter_apart() {
        assertTrue(LikeLines.areALetterApart("Brontele", "Brontelle"));
        assertTrue(LikeLines.areALetterApart("Brontlele", "Brontelle"));
        assertTrue(LikeLines.areALetterApart("brontalle", "Brontelle"));
        assertTrue(LikeLines.areALetterApart("Aral Brontelles", "Aral Brontelle"));
    }

    @Test
    void codes_short_words_and_two_changes_are_not() {
        assertFalse(LikeLines.areALetterApart("Brontelle", "Brontelle"));
        assertFalse(LikeLines.areALetterApart("Corvane 340t", "Corvane 340s"));
        assertFalse(LikeLines.areALetterApart("Corvane 5", "Corvane 6"));
        assertFalse(LikeLines.areALetterApart("Aral Siv", "Aral Vel"));
        assertFalse(LikeLines.areALetterApart("Brontele", "Brontella"));
        assertFalse(LikeLines.areALetterApart("Brontelle", "Brontelle S"));
    }

    @Test
    void a_rare_line_is_asked_about_once_and_stays_a_line() {
        StringBuilder text = new StringBuilder("vehicle,model_year,mileage_mi,price_usd,running_gear\n");
        for (int i = 0; i < 6; i++) {
            text.append("Brontelle,201").append(i).append(",5000").append(i).append(",900").append(i).append(",own\n");
        }
        ListingsRead read = read(text + "Brontele,2014,60000,8800,own\nBrontele,2015,61000,8900,own\n");
        List<RowProblem> asked = read.questions().stream().filter(q -> q.column().equals("vehicle")).toList();
        assertEquals(1, asked.size(), read.questions().toString());
        assertEquals(8, asked.get(0).line());
        assertTrue(asked.get(0).message().contains("a letter away from 'Brontelle' (6 rows)"), asked.get(0).message());
        assertTrue(asked.get(0).message().endsWith("words.csv: vehicle,Brontele,Brontelle"), asked.get(0).message());
        assertEquals("Brontele", read.listings().get(7).facts().vehicle());
        // Two lines with many rows each are two lines.
        assertEquals(List.of(), read(text + text.substring(text.indexOf("\n") + 1).replace("Brontelle", "Brontele")).questions().stream()
                .filter(q -> q.column().equals("vehicle")).toList());
    }

    @Test
    void a_price_beyond_all_others_is_odd_where_its_line_has_few_rows() {
        String rows = "vehicle,model_year,mileage_mi,price_usd\nBrontelle,2014,88000,9800\nBrontelle,2015,78000,10800\n"
                + "Aral Siv,2012,98000,7800\n";
        ListingsRead read = read(rows + "Aral Siv,2015,71000,8\nAral Siv,2015,72000,4000\n");
        assertEquals(1, read.oddities().size(), read.oddities().toString());
        assertEquals(5, read.oddities().get(0).line());
        assertTrue(read.oddities().get(0).message().startsWith("the price is about 1/975 of the middle of all rows"),
                read.oddities().get(0).message());
        assertEquals(5, read.counts().used());
        assertEquals(List.of(), read(rows).oddities());
        // By hand: the middle of the five is 9,800, and 312,000 / 9,800 = 31.8.
        assertTrue(read(rows + "Aral Siv,2015,71000,8\nAral Siv,2015,72000,312000\n").oddities().stream()
                .anyMatch(o -> o.message().startsWith("the price is 31.8 times the middle of all rows")));
    }
}
