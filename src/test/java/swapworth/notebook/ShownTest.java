package swapworth.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import swapworth.chart.SampleCharts;
import swapworth.listing.Runs;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.report.Part;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** What is to be seen of a value, by its type. */
class ShownTest {

    record Row(String name, OptionalInt modelYear, double price, Optional<Runs> runs, List<String> notes) {
    }

    /** Prints itself. */
    public record Told(int a) {
        public Table table() {
            return Table.titled("told").columns(Column.words("a")).row(Cell.words("it")).build();
        }
    }

    private static final Row ROW = new Row("first", OptionalInt.of(2016), 12345.6, Optional.of(Runs.ENGINE_DEAD), List.of("a", "b"));

    private static Part one(Object value) {
        List<Part> parts = Shown.parts(value);
        assertEquals(1, parts.size());
        return parts.get(0);
    }

    @Test
    void a_list_of_records_is_a_table_with_a_column_a_component() {
        Table table = ((Part.Rows) one(List.of(ROW, new Row("second", OptionalInt.empty(), 7, Optional.empty(), List.of())))).table();
        assertEquals("Row", table.title());
        assertEquals(List.of("name", "model year", "price", "runs", "notes"), table.columns().stream().map(Column::label).toList());
        assertEquals(List.of("first", "2016", "12,346", "engine dead", "a; b"), table.rows().get(0).stream().map(Cell::shown).toList());
        assertEquals(List.of("second", "", "7", "", ""), table.rows().get(1).stream().map(Cell::shown).toList());
        assertEquals(Column.Align.RIGHT, table.columns().get(1).align());
    }

    @Test
    void one_record_is_a_table_of_names_and_values() {
        Table table = ((Part.Rows) one(ROW)).table();
        assertEquals(List.of("price", "12,346"), table.rows().get(2).stream().map(Cell::shown).toList());
    }

    @Test
    void a_result_that_has_a_table_of_itself_is_shown_by_it() {
        assertEquals(new Told(1).table(), ((Part.Rows) one(new Told(1))).table());
    }

    @Test
    void tables_charts_and_parts_are_shown_as_they_are() {
        assertTrue(one(SampleCharts.six(60, 2).get(0)) instanceof Part.Picture);
        assertEquals(Part.prose("x"), one(Part.prose("x")));
        assertEquals(2, Shown.parts(List.of(new Told(1).table(), SampleCharts.six(60, 2).get(0))).size());
    }

    @Test
    void a_long_table_is_folded() {
        assertTrue(one(IntStream.range(0, 60).mapToObj(Told::new).toList()) instanceof Part.Folded);
        assertTrue(one(IntStream.range(0, 59).mapToObj(Told::new).toList()) instanceof Part.Rows);
    }

    @Test
    void numbers_words_and_text_are_text() {
        assertEquals(Part.prose("12,346"), one(12345.6));
        assertEquals(Part.prose("1.50"), one(new BigDecimal("1.5")));
        assertEquals(Part.prose("engine dead"), one(Runs.ENGINE_DEAD));
        assertEquals(Part.prose("a *b*"), one("a *b*"));
        assertEquals(Part.verbatim("a\n  b"), one("a\n  b"));
        assertEquals(Part.bullets(List.of("a", "2")), one(List.of("a", 2)));
    }

    @Test
    void an_optional_of_any_kind_is_shown_by_what_it_holds() {
        assertEquals(Part.prose("2,016"), one(OptionalInt.of(2016)));
        assertEquals(Part.prose("7"), one(OptionalLong.of(7)));
        assertEquals(Part.prose("1.50"), one(OptionalDouble.of(1.5)));
        assertEquals(Part.prose("3"), one(Optional.of(OptionalInt.of(3))));
        for (Object none : List.of(Optional.empty(), OptionalInt.empty(), OptionalLong.empty(), OptionalDouble.empty())) {
            assertEquals(Part.prose("There is none."), one(none));
        }
    }

    @Test
    void an_answer_is_shown_by_what_is_told_or_by_the_reason_why_nothing_is() {
        CannotTell reason = CannotTell.without("there is no fees.csv", "that file");
        assertEquals(new Told(1).table(), ((Part.Rows) one(new Answer.Told<>(new Told(1)))).table());
        assertEquals(Part.prose("Cannot tell: there is no fees.csv; needed: that file."), one(new Answer.NotTold<>(reason)));
        assertEquals(one(new Answer.NotTold<>(reason)), one(reason));
    }

    @Test
    void an_empty_list_is_not_shown_as_a_value_that_is_not_there() {
        assertEquals(Part.prose("There are none."), one(List.of()));
        assertEquals(Part.prose("Rows: none."), one(Table.titled("Rows").columns(Column.words("a")).build()));
        assertEquals(Part.prose("x"), one(Optional.of("x")));
    }
}
