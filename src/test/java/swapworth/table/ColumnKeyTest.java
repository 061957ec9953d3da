package swapworth.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ColumnKeyTest {

    @Test
    void the_key_is_the_label_in_lower_case_with_one_underscore_for_what_stands_between_words() {
        assertEquals("fair_value", Column.number("Fair  value", "USD").key());
        assertEquals("80_from", Column.number("80 % from", "USD").key());
        assertEquals("gap_per_cent", Column.number(" gap (per cent) ", "%").key());
        assertEquals("größe_ı", Column.words("Größe ı").key());
        assertEquals("", Column.words("%").key());
    }
}
