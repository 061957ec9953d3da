package swapworth.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SpellingTest {

    @Test
    void what_sums_up_other_rows_is_known_by_its_name_alone() {
        for (String name : List.of("Total", "TOTAL:", "sub-total", "Summe", "Moyenne", "average", "Sum of all", "Gesamt", "Total :",
                "total amount spent so far", "Total g\u00e9n\u00e9ral", "Summe aller Zahlungen", "\u03a3")) {
            assertTrue(Spelling.isTotal(name), name);
        }
        for (String name : List.of("total loss", "Totalis", "Sivrette", "", "summer tyres", "total loss assessment", "sum insured",
                "all", "mean green paint", "spent")) {
            assertFalse(Spelling.isTotal(name), name);
        }
    }

    private static final List<String> NAMES = List.of("check", "judge", "value", "no start", "donor", "mint");

    private static void slip(String typed, String name) {
        assertEquals(Optional.of(name), Spelling.slipOf(typed, NAMES), typed);
    }

    @Test
    void a_letter_or_two_wrong_missing_added_or_swapped_is_a_slip() {
        slip("chek", "check");
        slip("Cheeck", "check");
        slip("jugde", "judge");
        slip("doner", "donor");
        slip("no strat", "no start");
        slip("NO_STARTS", "no start");
        slip("mit", "mint");
    }

    @Test
    void three_letters_away_or_half_of_a_short_word_is_another_word() {
        for (String other : List.of("checking", "valuable", "not started", "mi", "mud", "folder", "")) {
            assertEquals(Optional.empty(), Spelling.slipOf(other, NAMES), other);
        }
    }

    @Test
    void a_curved_apostrophe_is_an_apostrophe() {
        assertEquals("won't start", Spelling.key("Won\u2019t  start"));
        assertEquals("o'brien", Spelling.key("O'Brien"));
    }

    @Test
    void case_spaces_and_hyphens_make_no_other_name_unless_they_part_two_numbers() {
        for (String same : List.of("Brackenholt", "BRACKEN-HOLT", "bracken holt", " Bracken_Holt ")) {
            assertEquals("brackenholt", Spelling.name(same), same);
        }
        assertEquals(Spelling.name("Corvane7"), Spelling.name("Corvane 7"));
        assertEquals(Spelling.name("Corvane7"), Spelling.name("CORVANE-7"));
        assertEquals("corvane7 2", Spelling.name("Corvane 7 - 2"));
        assertEquals(Spelling.name("Tarn 7-1.6 L"), Spelling.name("Tarn 7 1.6L"));
    }
}
