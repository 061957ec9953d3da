package swapworth.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class CsvSourceTest {

    private static CsvSource of(String text) {
        return CsvSource.of("file.csv", text);
    }

    private static List<Integer> lines(CsvSource source) {
        return source.rows().stream().map(CsvRow::line).toList();
    }

    @Test
    void commas_semicolons_and_tabs_are_told_from_the_header() {
        assertEquals(',', of("a,b;c,d\n1,2,3\n").separator());
        assertEquals(';', of("a;b,c;d\n1;2;3\n").separator());
        assertEquals('\t', of("a\tb\tc\n1\t2\t3\n").separator());
        assertEquals(',', of("a\n1\n").separator());
        assertEquals(';', of("\"a,b,c\";b;c\n1;2;3\n").separator());
    }

    @Test
    void a_first_line_may_state_the_separator() {
        CsvSource source = of("sep=;\na;b\n1;2\n");
        assertEquals(List.of("a", "b"), source.header());
        assertEquals(List.of(3), lines(source));
    }

    /** So it is where one file was put behind another. */
    @Test
    void a_header_that_stands_again_among_the_rows_is_no_row_and_says_so() {
        CsvSource source = of("\ufeffPreis;b c;\n1;2;\npreis;b_c;\n3;4;\n;b c;\nPreis;b c;;;\n");
        assertEquals(List.of(2, 4, 5), lines(source));
        assertEquals(List.of(3, 6), source.rejected().stream().map(RowProblem::line).toList());
        assertEquals("the header of line 1 stands here again: it is no row; remove it", source.rejected().get(0).message());
    }

    @Test
    void a_byte_order_mark_is_no_part_of_the_header() {
        assertEquals(List.of("price", "b"), of("\ufeffprice,b\n1,2\n").header());
    }

    @Test
    void lines_are_physical_lines_and_blanks_and_comments_are_counted() {
        CsvSource source = of("# what this is\n\na,b\n1,2\n\n# not this one, 3\n,\n\"two\nlines\",4\n5,6");
        assertEquals(List.of(4, 8, 10), lines(source));
        assertEquals(2, source.blankLines());
        assertEquals(2, source.commentLines());
        assertEquals("two\nlines", source.rows().get(1).cell(0));
    }

    @Test
    void carriage_returns_end_lines_too() {
        assertEquals(List.of(2, 3), lines(of("a,b\r\n1,2\r\n3,4\r\n")));
        assertEquals(List.of(2, 3), lines(of("a,b\r1,2\r3,4\r")));
    }

    @Test
    void a_shorter_row_is_filled_with_blanks() {
        CsvSource source = of("a,b,c\n1\n");
        assertEquals("", source.rows().get(0).cell(2));
        assertEquals("", source.rows().get(0).cell(-1));
    }

    @Test
    void a_text_that_its_own_separator_cut_in_two_is_rejected_whether_the_row_came_out_too_long_or_too_short() {
        CsvSource source = of("date;amount;note;car;category;receipt\n2026-03-04;100;two hoses; one clamp;donor;part;\n"
                + "2026-03-05;70;carriage;recipient: 60; donor: 40\n2026-03-06;70;wire;donor\n");
        assertEquals(List.of(4), lines(source));
        assertEquals("the row has 7 cells under 6 columns, and ' one clamp' begins with a space; a cell that holds a semicolon must stand"
                + " in quotes; if none does, write no space there", source.rejected().get(0).message());
        assertTrue(source.rejected().get(1).message().startsWith("the row has 5 cells under 6 columns, and ' donor: 40' begins"));
        assertEquals(1, of("a,b,c,d\nR,nice, new tyres\n").rejected().size());
    }

    @Test
    void spaces_between_cells_are_fine_where_the_header_or_the_row_has_them_throughout_and_before_numbers() {
        for (String text : List.of("a; b; c; d\nx;nice; front\n", "a;b;c;d\nx; nice; front\n", "a;b;c;d\nx; 9000;7\n",
                "a;b;c;d\nx;9000; nice\n", "a;b;c\nx;nice; front\n", "a;b;c;d\nx;nice;\u00a0front\n")) {
            assertEquals(List.of(), of(text).rejected(), text);
        }
    }

    @Test
    void a_longer_row_is_rejected_with_a_hint_about_commas() {
        CsvSource source = of("a,b\n1,2\n3,4,5\n6,7,,\n");
        assertEquals(List.of(2, 4), lines(source));
        assertEquals(3, source.rejected().get(0).line());
        assertTrue(source.rejected().get(0).message().contains("a cell that holds a comma must stand in quotes"));
    }

    @Test
    void an_unclosed_quote_rejects_its_line_alone() {
        CsvSource source = of("a,b\n1,2\n3,\"four\n5,6\n7,8\n");
        assertEquals(List.of(2, 4, 5), lines(source));
        assertEquals(List.of(3), source.rejected().stream().map(RowProblem::line).toList());
        assertEquals("3,\"four 5,6 7,8 ", source.rejected().get(0).rawText());
    }

    @Test
    void text_after_a_closing_quote_rejects_its_line_alone() {
        CsvSource source = of("a,b\n1,2\n3,\"four\" wheels\n5,6\n");
        assertEquals(List.of(2, 4), lines(source));
        assertTrue(source.rejected().get(0).message().contains("text follows a closing quote"));
    }

    @Test
    void an_unclosed_quote_that_pairs_with_a_later_one_swallows_no_row() {
        CsvSource source = of("a,b,c,d\n1,2,3,4\n5,6,7,\"broken\n9,10,11,12\n13,14,15,16\n17,18,19,end\"\n21,22,23,24\n");
        assertEquals(List.of(2, 4, 5, 6, 7), lines(source));
        assertEquals(List.of(3), source.rejected().stream().map(RowProblem::line).toList());
    }

    @Test
    void a_quote_within_an_unquoted_cell_is_text() {
        assertEquals("15\" wheels", of("a,b\n1,15\" wheels\n").rows().get(0).cell(1));
    }

    @Test
    void a_row_over_several_lines_before_a_broken_one_keeps_the_line_numbers_right() {
        CsvSource source = of("a,b\n1,\"x\r\ny\r\nz\"\r\n3,\"broken\r\n5,6\r\n");
        assertEquals(List.of(2, 6), lines(source));
        assertEquals(5, source.rejected().get(0).line());
    }

    @Test
    void a_huge_cell_rejects_its_row() {
        CsvSource source = of("a,b\n1,2\n3," + "x".repeat(CsvSource.MOST_CHARACTERS_A_CELL + 1) + "\n5,6\n");
        assertEquals(List.of(2, 4), lines(source));
        assertTrue(source.rejected().get(0).message().contains("1,048,576 characters"));
        assertTrue(source.rejected().get(0).rawText().length() <= RowProblem.SHOWN);
    }

    @Test
    void a_row_of_a_million_cells_is_rejected() {
        CsvSource source = of("a,b\n1,2\n" + ",x".repeat(1_000_000) + "\n5,6\n");
        assertEquals(List.of(2, 4), lines(source));
        assertEquals(List.of(3), source.rejected().stream().map(RowProblem::line).toList());
    }

    @Test
    void columns_are_found_without_regard_to_case_and_spaces() {
        CsvSource source = of(" Seen On ,PRICE\n1,2\n");
        assertEquals(0, source.column("seen_on"));
        assertEquals(1, source.column("price"));
        assertEquals(-1, source.column("id"));
    }
}
