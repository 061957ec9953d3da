package swapworth.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.Locale;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.money.Money;

class CellReaderTest {

    private static final CellReader COMMAS = new CellReader(Conventions.unstated(), ',');
    private static final CellReader SEMICOLONS = new CellReader(Conventions.unstated(), ';');
    private static final CellReader COMMA_STATED = new CellReader(Conventions.unstated().with(DecimalMark.COMMA), ';');
    private static final CellReader POINT_STATED = new CellReader(Conventions.unstated().with(DecimalMark.POINT), ';');

    private static void number(String expected, CellReader cells, String text) {
        Parsed<BigDecimal> parsed = cells.number(text);
        assertEquals(0, new BigDecimal(expected).compareTo(assertInstanceOf(Parsed.Understood.class, parsed, text + ": " + parsed)
                .value() instanceof BigDecimal value ? value : BigDecimal.ZERO), text + ": " + parsed);
    }

    private static String refused(Parsed<?> parsed) {
        return assertInstanceOf(Parsed.Refused.class, parsed, parsed.toString()).message();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"85k|85000", "1.2k|1200", "1,5k|1500", "85 000|85000", "85\u00a0000|85000",
            "85\u202f000|85000",
        "85'000|85000", "85\u2019000|85000", "1.234.567|1234567", "1,234,567|1234567", "12.500,50|12500.50", "12,500.50|12500.50",
        "12,5|12.5", "12.5|12.5", "0.125|0.125", "0,125|0.125", "1600.0|1600", "12,500|12500", "2014|2014", "-5|-5", "+5|5",
        "\u22125|-5",
        "1234.567|1234.567", "1 234 567|1234567", "85 000,5|85000.5", "1.234.567,8|1234567.8", "007|7"})
    void a_number_is_understood_in_a_file_of_commas(String text, String expected) {
        number(expected, COMMAS, text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"12.500", "1.250k", "340t", "NaN", "0x1F", "1E5", "1e5", ".5", "12,50,000", "1.23.456", "12.500.50",
            "1,2,3",
        "12,500,50", "12.500.000,5.5", "Infinity", "abc", "12 500 13 000", "12500-13000", "2004 150 000", "1 2", "5 %", "12500 x",
        "1234567890123456789", "1'234.567.8", "1,234.567,8", "85 0000", "\u0663\u0664", "--5"})
    void a_text_that_is_no_number_or_more_than_one_is_refused(String text) {
        refused(COMMAS.number(text));
    }

    @Test
    void twelve_point_five_hundred_is_refused_with_a_question() {
        String message = refused(COMMAS.number("12.500"));
        assertTrue(message.contains("12500 or 12.500"), message);
        assertTrue(message.contains("*,decimal mark,comma"), message);
    }

    @Test
    void two_numbers_in_one_cell_are_refused_as_such() {
        assertTrue(refused(COMMAS.number("12500-13000")).startsWith("two numbers in one cell"));
        for (String shortened : List.of("1E5", "1.2e+05", "1.5E5 km", "15E-3")) {
            assertTrue(refused(COMMAS.number(shortened)).contains("a power of ten, as spreadsheets do"), shortened);
        }
        for (String two : List.of("320e5x", "12 E10", "9000 e5")) {
            assertTrue(refused(COMMAS.number(two)).startsWith("two numbers in one cell"), two);
        }
        assertTrue(refused(COMMAS.money("12500 / 11900", Optional.empty())).startsWith("two numbers in one cell"));
    }

    @Test
    void a_comma_before_three_digits_is_in_doubt_in_a_file_of_semicolons() {
        assertTrue(refused(SEMICOLONS.number("12,500")).contains("12500 or 12.500"));
        number("12.5", SEMICOLONS, "12,5");
    }

    @Test
    void a_stated_decimal_mark_settles_the_doubt_and_refuses_what_contradicts_it() {
        number("12500", COMMA_STATED, "12.500");
        number("12.5", COMMA_STATED, "12,500");
        number("12.5", POINT_STATED, "12.500");
        number("12500", POINT_STATED, "12,500");
        refused(COMMA_STATED.number("12.5"));
        refused(POINT_STATED.number("12,5"));
        refused(POINT_STATED.number("1.234.567"));
        refused(COMMA_STATED.number("12,500.50"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "  ", "-", "?", "n/a", "Unknown", "\u2013", "\u00a0"})
    void signs_of_not_knowing_are_blank(String text) {
        assertInstanceOf(Parsed.Blank.class, COMMAS.number(text));
        assertInstanceOf(Parsed.Blank.class, COMMAS.distance(text));
        assertInstanceOf(Parsed.Blank.class, COMMAS.money(text, Optional.empty()));
        assertInstanceOf(Parsed.Blank.class, COMMAS.date(text));
    }

    @Test
    void a_distance_may_carry_its_unit() {
        assertEquals(Parsed.understood(new Quantity(new BigDecimal("85000"), Optional.of(DistanceUnit.KM))), COMMAS.distance("85,000 km"));
        assertEquals(Parsed.understood(new Quantity(new BigDecimal("85000"), Optional.of(DistanceUnit.KM))), COMMAS.distance("85000KM"));
        assertEquals(Parsed.understood(new Quantity(new BigDecimal("85000"), Optional.of(DistanceUnit.MI))), COMMAS.distance("85k miles"));
        assertEquals(Parsed.understood(new Quantity(new BigDecimal("85000"), Optional.empty())), COMMAS.distance("85000"));
        assertTrue(refused(COMMAS.distance("85000 leagues")).contains("'leagues' is no unit"));
        assertTrue(refused(COMMAS.distance("12.500 km")).contains("12500 or 12.500"));
        assertTrue(refused(POINT_STATED.distance("84.500 km")).contains("is 84500 meant?"));
        assertTrue(refused(COMMA_STATED.distance("84,500")).contains("is 84500 meant?"));
        assertEquals(Parsed.understood(new Quantity(new BigDecimal("84.5"), Optional.empty())), POINT_STATED.distance("84.5"));
        refused(COMMAS.distance("TMU"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"ca. 165 tkm|165000", "165tkm|165000", "165 Tkm|165000", "165,5 tkm|165500.0",
        "165 Tsd. km|165000", "165 tsd km|165000"})
    void a_distance_in_thousands_of_km_says_so(String text, String km) {
        assertEquals(new Quantity(new BigDecimal(km), Optional.of(DistanceUnit.KM)),
                assertInstanceOf(Parsed.Understood.class, COMMA_STATED.distance(text), text).value());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"VB 3.900 EUR|EUR 3900", "FP: 5.728|USD 5728", "VB ca. 3.900 \u20ac|EUR 3900",
        "EUR VB 3.900|EUR 3900", "ca. EUR 3.900 VB|EUR 3900", "-|-"})
    void the_words_of_sellers_may_stand_before_the_amount(String text, String expected) {
        Parsed<?> parsed = COMMA_STATED.money(text, Optional.empty());
        assertEquals(expected, parsed instanceof Parsed.Understood<?> known ? known.value().toString() : "-", parsed.toString());
        assertEquals(text.startsWith("-"), parsed.match(u -> u.remarks().isEmpty(), () -> true, no -> true));
    }

    @Test
    void a_word_beside_an_amount_that_is_not_understood_is_quoted_with_what_to_do() {
        assertEquals("'inkl. MwSt.' beside the amount is not understood; write the amount and its currency alone, and the rest into another"
                + " column", refused(COMMA_STATED.money("5.705 inkl. MwSt.", Optional.empty())));
        refused(COMMA_STATED.money("EUR VB GBP 3.900", Optional.empty()));
        refused(COMMA_STATED.money("VB GBP 3.900 EUR", Optional.empty()));
    }

    @Test
    void an_approximate_distance_leaves_a_remark() {
        assertEquals(1, assertInstanceOf(Parsed.Understood.class, COMMAS.distance("ca. 85000")).remarks().size());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"EUR 12500|EUR 12500", "12500 eur|EUR 12500", "$30,000 OBO|USD 30000",
            "\u00a38,995|GBP 8995",
        "\u20ac12500|EUR 12500", "12500 \u20ac|EUR 12500", "12.500,50 \u20ac|EUR 12500.50", "8500,- \u20ac|EUR 8500",
        "8.500,-|USD 8500.00", "8.500,-- \u20ac|EUR 8500.00", "1.208.500,-EUR|EUR 1208500.00", "EUR 8,500.-|EUR 8500.00", "8500.-|USD 8500",
        "ca. 8500,-|USD 8500", "8'500.-|USD 8500",
        "US$ 5k|USD 5000",
        "C$ 5000|CAD 5000", "12500 firm|USD 12500", "$ 12500 or best offer|USD 12500", "-100|USD -100", "-$100|USD -100",
        "$-100|USD -100",
        "1.5k|USD 1500", "12500.00|USD 12500.00"})
    void money_is_understood(String text, String expected) {
        Parsed<?> parsed = COMMAS.money(text, Optional.empty());
        assertEquals(expected, assertInstanceOf(Parsed.Understood.class, parsed, parsed.toString()).value().toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"call", "12.500", "12500 plus fees", "EUR 12500 USD", "kr 5000", "swap", "12500 all",
            "$30,000 OBO 2 keys",
        "=1+1", "<b>5"})
    void money_that_is_not_understood_is_refused(String text) {
        refused(COMMAS.money(text, Optional.empty()));
    }

    @Test
    void the_currency_of_the_cell_counts_before_that_of_its_column() {
        Currency euro = Currency.getInstance("EUR");
        Parsed.Understood<?> own = assertInstanceOf(Parsed.Understood.class, COMMAS.money("GBP 100", Optional.of(euro)));
        assertEquals("GBP 100", own.value().toString());
        assertEquals(1, own.remarks().size());
        assertEquals("EUR 100",
                assertInstanceOf(Parsed.Understood.class, COMMAS.money("100", Optional.of(euro))).value().toString());
    }

    @Test
    void a_bare_dollar_sign_is_the_stated_kind_of_dollar() {
        CellReader canada = new CellReader(Conventions.unstated().with(Currency.getInstance("CAD")), ',');
        assertEquals("CAD 100", assertInstanceOf(Parsed.Understood.class, canada.money("$100", Optional.empty())).value()
                .toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"2024-04-03|2024-04-03", "2024-04-03T10:11:12Z|2024-04-03",
            "2024-04-03 10:11|2024-04-03",
        "2024/4/3|2024-04-03", "3 Apr 2024|2024-04-03", "3-Apr-2024|2024-04-03", "April 3rd, 2024|2024-04-03",
        "3. april 2024|2024-04-03",
        "25/04/2024|2024-04-25", "04/25/2024|2024-04-25", "25.04.2024|2024-04-25", "04/04/2024|2024-04-04",
        "1 SEPT 2023|2023-09-01"})
    void a_date_is_understood(String text, LocalDate expected) {
        assertEquals(Parsed.understood(expected), COMMAS.date(text));
    }

    /** Spreadsheets put a time behind the day of a column that once had one. */
    @ParameterizedTest
    @ValueSource(strings = {"25.04.2024 14:30", "25/04/2024 00:00:00", "25.4.2024, 9:05", "2024/04/25 10:11"})
    void a_time_behind_a_day_is_dropped(String text) {
        assertEquals(Parsed.understood(LocalDate.of(2024, 4, 25)), COMMAS.date(text));
    }

    @ParameterizedTest
    @ValueSource(strings = {"03/04/2024", "03.04.2024", "3/4/24", "2024-02-30", "31/02/2024", "2024", "2024-04", "yesterday",
            "20240403", "25.04.2024 99:99", "25.04.2024 14", "25.04.2024 14:30 x",
        "32/13/2024", "0000-00-00", "1 2 3 4 5", "2024-04-03x"})
    void a_date_in_doubt_is_refused(String text) {
        refused(COMMAS.date(text));
    }

    @Test
    void a_spreadsheets_number_of_a_day_is_named_as_such() {
        assertTrue(refused(COMMAS.date("46300")).startsWith("this is a spreadsheet's number of a day"));
        assertTrue(refused(COMMAS.date("463001")).startsWith("this is no date"));
    }

    @Test
    void a_date_that_can_only_be_the_other_way_than_stated_is_refused_and_not_turned() {
        CellReader dayFirst = new CellReader(Conventions.unstated().with(DateOrder.DAY_FIRST), ',');
        CellReader monthFirst = new CellReader(Conventions.unstated().with(DateOrder.MONTH_FIRST), ',');
        assertTrue(refused(dayFirst.date("01/14/2026")).contains("the stated date order is day first"));
        assertTrue(refused(monthFirst.date("14.01.2026")).contains("the stated date order is month first"));
        assertEquals(Parsed.understood(LocalDate.of(2026, 1, 14)), dayFirst.date("14/01/2026"));
        assertEquals(Parsed.understood(LocalDate.of(2026, 1, 14)), monthFirst.date("01/14/2026"));
        assertEquals(Parsed.understood(LocalDate.of(2026, 1, 14)), COMMAS.date("01/14/2026"));
    }

    @Test
    void an_amount_with_three_decimals_is_refused_where_no_coin_has_them() {
        // the decimal comma is stated, and 1,250 is the usual slip for 1250
        assertTrue(refused(COMMA_STATED.money("1,250", Optional.empty())).contains("is 1250 meant?"));
        assertTrue(refused(POINT_STATED.money("17.400 EUR", Optional.empty())).contains("no amount of EUR has three decimals"));
        assertEquals(Parsed.understood(Money.of("1.25", "USD")), COMMA_STATED.money("1,25", Optional.empty()));
        assertEquals(Parsed.understood(Money.of("0.125", "USD")), COMMA_STATED.money("0,125", Optional.empty()), "a rate a mile");
        // the dinar of Kuwait has a thousand fils (ISO 4217: three decimals)
        assertEquals(Parsed.understood(Money.of("1.250", "KWD")), COMMA_STATED.money("1,250 KWD", Optional.empty()));
        assertEquals(Parsed.understood(Money.of("1250", "USD")), POINT_STATED.money("1,250", Optional.empty()));
        assertEquals(Parsed.understood(Money.of("8500.00", "USD")), COMMA_STATED.money("8.500,-", Optional.empty()));
        assertEquals(Parsed.understood(Money.of("8500", "USD")), POINT_STATED.money("8500,-", Optional.empty()));
        assertTrue(refused(POINT_STATED.money("8.500,-", Optional.empty())).contains("written otherwise"));
    }

    @Test
    void a_stated_order_settles_a_date() {
        assertTrue(refused(COMMAS.date("03/04/2024")).contains("*,date order,day first"));
        assertEquals(Parsed.understood(LocalDate.of(2024, 4, 3)),
                new CellReader(Conventions.unstated().with(DateOrder.DAY_FIRST), ',').date("03/04/2024"));
        assertEquals(Parsed.understood(LocalDate.of(2024, 3, 4)),
                new CellReader(Conventions.unstated().with(DateOrder.MONTH_FIRST), ',').date("03/04/2024"));
    }

    @Test
    void a_first_registration_may_be_a_month_or_a_year() {
        assertEquals(LocalDate.of(2015, 3, 15), assertInstanceOf(Parsed.Understood.class, COMMAS.dayMonthOrYear("03/2015"))
                .value());
        assertEquals(LocalDate.of(2015, 3, 15), assertInstanceOf(Parsed.Understood.class, COMMAS.dayMonthOrYear("2015-03"))
                .value());
        assertEquals(LocalDate.of(2015, 3, 15), assertInstanceOf(Parsed.Understood.class, COMMAS.dayMonthOrYear("Mar 2015"))
                .value());
        Parsed.Understood<?> year = assertInstanceOf(Parsed.Understood.class, COMMAS.dayMonthOrYear("2015"));
        assertEquals(LocalDate.of(2015, 7, 1), year.value());
        assertEquals(1, year.remarks().size());
        assertEquals(Parsed.understood(LocalDate.of(2015, 3, 20)), COMMAS.dayMonthOrYear("2015-03-20"));
    }

    @Test
    void yes_and_no_are_understood_and_nothing_else() {
        assertEquals(Parsed.understood(true), CellReader.yesOrNo("Yes"));
        assertEquals(Parsed.understood(false), CellReader.yesOrNo("N"));
        assertInstanceOf(Parsed.Blank.class, CellReader.yesOrNo(" "));
        refused(CellReader.yesOrNo("perhaps"));
    }

    @Test
    void the_language_of_the_machine_changes_nothing() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(new Locale("tr", "TR"));
            assertEquals("engine fires", Spelling.key("ENGINE_FIRES"));
            number("12500", COMMAS, "12,500");
            assertEquals(Optional.of(DistanceUnit.MI), DistanceUnit.named("MI"));
            assertEquals(Parsed.understood(LocalDate.of(2024, 4, 3)), COMMAS.date("3 APRIL 2024"));
        } finally {
            Locale.setDefault(before);
        }
    }
}
