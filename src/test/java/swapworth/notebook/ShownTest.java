package swapworth.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import swapworth.chart.SampleCharts;
import swapworth.listing.CarFacts;
import swapworth.listing.Listing;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.listing.Runs;
import swapworth.listing.Title;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.market.TestCars;
import swapworth.report.Part;
import swapworth.report.Section;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.StringColumn;

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
    void paragraphs_are_prose_and_lines_stand_as_they_are() {
        assertEquals(List.of(Part.prose("One.\n\nTwo.")), Shown.parts("One.\n\nTwo."));
        assertEquals(List.of(Part.prose("One.")), Shown.parts("One."));
        assertEquals(List.of(Part.verbatim("a  1\nb  2\n\nc")), Shown.parts("a  1\nb  2\n\nc"));
    }

    @Test
    void an_array_is_shown_as_a_list_is() {
        List<Part> parts = List.of(Part.prose("first"), Part.bullets(List.of("second")));
        assertEquals(parts, Shown.parts(parts.toArray()));
        assertEquals(one(List.of(ROW, ROW)), one(new Row[] {ROW, ROW}));
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
    void what_a_match_tells_is_shown_without_a_detour() {
        List<Part> seen = new ArrayList<>();
        Show.to(seen::addAll);
        try {
            Answer<Integer> answer = new Answer.Told<>(3);
            Show.show(answer.match(told -> told + " cars", no -> no.reason()));
            Show.show("x", answer.match(told -> told + " lines", no -> no.reason()));
            Show.show("x", "y", "z");
        } finally {
            Show.toTerminal();
        }
        assertEquals(List.of("3 cars", "x", "3 lines", "x", "y", "z").stream().map(Part::prose).toList(), seen);
    }

    @Test
    void a_listing_within_a_record_is_told_in_one_line() {
        Listing listing = TestCars.car(0, CarFacts.of("Sivrette").trim("Plain").modelYear(2014)
                .mileage(new Mileage(74_000, MileageStatus.READ)).build(), 5400).latest();
        assertEquals("car-0, Sivrette Plain 2014, 74,000 mi, USD 5400.0, private asking, seen on 2026-06-01, listings.csv:2",
                RecordTable.words(listing));
    }

    @Test
    void an_empty_list_is_not_shown_as_a_value_that_is_not_there() {
        assertEquals(Part.prose("There are none."), one(List.of()));
        assertEquals(Part.prose("Rows: none."), one(Table.titled("Rows").columns(Column.words("a")).build()));
        assertEquals(Part.prose("x"), one(Optional.of("x")));
    }

    /** Holds another record, an amount to the cent and words by name. */
    record Holder(CarFacts car, BigDecimal landed, Map<String, Double> shares) {
    }

    @Test
    void a_record_within_a_record_says_what_is_known_in_words() {
        CarFacts car = CarFacts.of("Sivrette").trim("Plain").modelYear(2016).mileage(new Mileage(71_000, MileageStatus.READ))
                .title(Title.CLEAN).build();
        Table table = ((Part.Rows) one(new Holder(car, new BigDecimal("5577.10"), Map.of("age", 0.25)))).table();
        assertEquals("vehicle Sivrette, trim Plain, model year 2016, mileage 71,000 mi, read, title clean",
                table.rows().get(0).get(1).shown());
        assertEquals("age 0.2500", table.rows().get(2).get(1).shown());
    }

    @Test
    void an_answer_within_a_list_says_what_is_told_or_why_nothing_is() {
        CannotTell reason = CannotTell.without("there is no fees.csv", "that file");
        assertEquals(Part.bullets(List.of("engine dead", "Cannot tell: there is no fees.csv; needed: that file.")),
                one(List.of(new Answer.Told<>(Runs.ENGINE_DEAD), new Answer.NotTold<Runs>(reason))));
        assertEquals(reason.sentence(), RecordTable.words(reason));
    }

    @Test
    void an_amount_to_the_cent_keeps_its_cents() {
        assertEquals(Part.prose("5,577.10"), one(new BigDecimal("5577.10")));
        assertEquals(Part.prose("5,577"), one(new BigDecimal("5577")));
        assertEquals("5,577.10", ((Part.Rows) one(new Holder(CarFacts.of("Sivrette").build(), new BigDecimal("5577.10"), Map.of())))
                .table().rows().get(1).get(1).shown());
    }

    @Test
    void a_table_of_Tablesaw_is_a_table_with_each_of_its_rows_once() {
        Table table = ((Part.Rows) one(tech.tablesaw.api.Table.create("asks", StringColumn.create("vehicle", "Sivrette", "Velmarch", ""),
                DoubleColumn.create("price", 9800, 17400.6, Double.NaN), DoubleColumn.create("model_year", 2014, 2018, 2012)))).table();
        assertEquals("asks", table.title());
        assertEquals(List.of("vehicle", "price", "model_year"), table.columns().stream().map(Column::label).toList());
        assertEquals(List.of(List.of("Sivrette", "9,800", "2014"), List.of("Velmarch", "17,401", "2018"), List.of("", "", "2012")),
                table.rows().stream().map(r -> r.stream().map(Cell::shown).toList()).toList());
        assertEquals(Column.Align.RIGHT, table.columns().get(1).align());
    }

    @Test
    void every_kind_of_block_of_a_page_has_a_text_for_the_terminal() {
        Section market = Section.of("market", "The market in time", Part.prose("It falls."));
        Part.Pointers pointers = new Part.Pointers(List.of(new Part.Pointer("It falls by 1 % a month.", market)));
        assertEquals("- The market in time: It falls by 1 % a month.\n", PartText.of(pointers));
        assertEquals("It falls.\n", PartText.of(market.parts().get(0)));
        assertEquals("# Why\n", PartText.of(Part.marked("# Why\n")));
        assertEquals("Beware\n- of it\n", PartText.of(Part.cautions("Beware", List.of("of it"))));
        assertEquals("a\n\nb\n", PartText.of(Part.folded("", "more", Part.prose("a"), Part.prose("b"))));
    }

    @Test
    void a_path_is_text_and_no_list_of_folders() {
        assertEquals(Part.prose("cars/listings.csv"), one(Path.of("cars", "listings.csv")));
    }
}
