package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.Random;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import swapworth.table.Cell;

class ChartsTest {

    static Element parsed(String svg) {
        return assertDoesNotThrow(() -> DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new InputSource(new StringReader(svg))).getDocumentElement());
    }

    private static List<String> texts(Chart chart) {
        NodeList nodes = parsed(chart.svg()).getElementsByTagName("text");
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            texts.add(nodes.item(i).getTextContent());
        }
        return texts;
    }

    private static Chart scatter(double[] x, double[] y) {
        return Charts.scatterWithBand("Prices", "mileage, mi", "price, USD", ValueScale.LINEAR,
                List.of(Points.of("cars", x, y)), Curve.none());
    }

    @Test
    void every_chart_is_well_formed_has_words_and_is_small() {
        int size = 0;
        for (Chart chart : SampleCharts.six(500, 1)) {
            Element svg = parsed(chart.svg());
            assertEquals("img", svg.getAttribute("role"));
            assertEquals(chart.alt(), svg.getAttribute("aria-label"));
            assertTrue(chart.trouble().isEmpty(), chart.title());
            assertFalse(chart.svg().contains("NaN") || chart.svg().contains("Infinity"), chart.title());
            size += chart.svg().length();
        }
        assertTrue(size < 100_000, "six charts take " + size + " characters");
    }

    @Test
    void a_chart_stands_alone_as_a_document_with_title_and_style() {
        Chart chart = SampleCharts.index();
        Element svg = parsed(chart.document());
        assertEquals("http://www.w3.org/2000/svg", svg.getAttribute("xmlns"));
        assertEquals(chart.title(), svg.getFirstChild().getTextContent());
        assertTrue(svg.getElementsByTagName("style").item(0).getTextContent().contains("prefers-color-scheme"));
    }

    @Test
    void words_of_a_chart_can_be_searched() {
        List<String> texts = texts(SampleCharts.scatter(80, ValueScale.LINEAR, new Random(1)));
        for (String text : List.of("mileage, mi", "asked price, USD", "Veldra Sprenn (20)", "Veldra Sprenn S (19)",
                "fitted, 6 years old", "80 % range of one car", "100,000", "20,000",
                "1 point lies beyond the axes and stands at", "the edge.")) {
            assertTrue(texts.contains(text), () -> text + " is not among " + texts);
        }
        assertTrue(texts(SampleCharts.terms()).containsAll(List.of("one year older", "80 % range", "95 % range", "-40")));
        assertTrue(texts(SampleCharts.index()).containsAll(List.of("Jul 2025", "Jan 2026", "index, May 2025 = 100")));
    }

    @Test
    void the_table_holds_what_is_drawn_and_what_is_not() {
        Chart chart = Charts.scatterWithBand("Prices", "mileage, mi", "price, USD", ValueScale.LINEAR,
                List.of(new Points("cars", new double[] {10_000, 50_000, Double.NaN}, new double[] {9_000, 7_500, 8_000},
                        List.of("a", "b", "c"))),
                new Curve("fitted", "80 % range", new double[] {10_000, 50_000}, new double[] {9_100.4, 7_400},
                        new double[] {7_000, 6_000}, new double[] {11_000, 9_000}));
        assertEquals("drawn_as,note,mileage,price,low,high\r\ncars,a,10000,9000,,\r\ncars,b,50000,7500,,\r\ncars,c,,8000,,\r\n"
                + "fitted,,10000,9100.4,7000,11000\r\nfitted,,50000,7400,6000,9000\r\n", chart.data().csv());
        assertTrue(texts(chart).contains("cars (2)"));
        assertTrue(chart.svg().contains("<title>b</title>"));
        assertFalse(chart.svg().contains("<title>c</title>"));
    }

    @Test
    void the_words_of_a_chart_say_what_it_shows() {
        assertEquals("index, May 2025 = 100 from 2025-05-05 to 2026-10-26: 100 at first, 90.6 at last (80 % range 87.5 to 93.8).",
                SampleCharts.index().alt());
        assertEquals("Prices: 2 cars; mileage, mi from 10 to 20; price, USD from 5 to 7.",
                scatter(new double[] {10, 20}, new double[] {5, 7}).alt());
        Chart identity = Charts.identity("Asked", "asked, USD", "value, USD", "80 % range", ValueScale.LINEAR, List.of(
                new Estimates("cars", new double[] {5, 10, 20}, new double[] {10, 11, 12}, new double[] {8, 9, 10},
                        new double[] {13, 14, 15}, List.of())));
        assertEquals("value, USD against asked, USD: 3 cars, each with its 80 % range, and the line on which both are equal; "
                + "1 asked below and 1 above their range.", identity.alt());
    }

    @Test
    void without_data_there_is_a_panel_that_says_so() {
        double[] none = new double[0];
        double[] unknown = {Double.NaN};
        List<Chart> charts = List.of(scatter(none, none), scatter(unknown, new double[] {5}),
                Charts.identity("i", "a", "b", "r", ValueScale.LOGARITHMIC, List.of()),
                Charts.bandLine("b", "index", new DatedBand("index", List.of(), none, none, none, none, none),
                        OptionalDouble.of(100)),
                Charts.ranges("r", "x", List.of(), OptionalDouble.empty()));
        for (Chart chart : charts) {
            assertEquals(List.of("no data"), texts(chart));
            assertTrue(chart.alt().endsWith(": no data"));
            assertTrue(chart.trouble().isEmpty());
        }
    }

    @Test
    void one_value_and_values_all_the_same_are_drawn() {
        double[] same = {8_000, 8_000, 8_000};
        assertTrue(texts(scatter(same, same)).contains("cars (3)"));
        assertTrue(texts(scatter(new double[] {1}, new double[] {0})).contains("cars (1)"));
        double[] one = {100};
        DatedBand day = new DatedBand("index", List.of(LocalDate.of(2026, 1, 1)), one, one, one, one, one);
        Chart index = Charts.bandLine("b", "index", day, OptionalDouble.of(100));
        assertTrue(index.svg().contains(" dot\""));
        RangeRow row = new RangeRow("a", 1, 1, 1, 1, 1);
        assertTrue(texts(Charts.ranges("r", "x", List.of(row), OptionalDouble.empty())).contains("a"));
        assertTrue(texts(Charts.identity("i", "a", "b", "r", ValueScale.LOGARITHMIC,
                List.of(new Estimates("cars", same, same, same, same, List.of())))).contains("cars (3)"));
    }

    @Test
    void wild_numbers_break_nothing() {
        double[] wild = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e308, 1e308, 0, -0.0, 1e-300, 5};
        Random random = new Random(9);
        for (int i = 0; i < 300; i++) {
            double[][] a = new double[5][6];
            for (double[] row : a) {
                for (int k = 0; k < row.length; k++) {
                    row[k] = random.nextInt(3) == 0 ? wild[random.nextInt(wild.length)] : 1e4 * random.nextGaussian();
                }
            }
            ValueScale scale = random.nextBoolean() ? ValueScale.LINEAR : ValueScale.LOGARITHMIC;
            List<LocalDate> dates = List.of(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 1, 2), LocalDate.of(2026, 5, 1),
                    LocalDate.of(2027, 1, 1), LocalDate.of(2030, 1, 1), LocalDate.of(2099, 1, 1));
            List<RangeRow> rows = new ArrayList<>();
            for (double[] row : a) {
                rows.add(new RangeRow("row", row[0], row[1], row[2], row[3], row[4]));
            }
            for (Chart chart : List.of(
                    Charts.scatterWithBand("t", "x", "y", scale, List.of(Points.of("cars", a[0], a[1])),
                            new Curve("c", "b", new double[] {1, 2, 3, 4, 5, 6}, a[2], a[3], a[4])),
                    Charts.identity("t", "x", "y", "r", scale, List.of(new Estimates("cars", a[0], a[1], a[2], a[3], List.of()))),
                    Charts.bandLine("t", "y", new DatedBand("b", dates, a[0], a[1], a[2], a[3], a[4]),
                            OptionalDouble.of(a[0][0])),
                    Charts.ranges("t", "x", rows, OptionalDouble.of(a[0][1])))) {
                parsed(chart.svg());
                assertFalse(chart.svg().contains("NaN") || chart.svg().contains("Infinity"), chart.svg());
            }
        }
    }

    @Test
    void a_band_that_reaches_zero_goes_on_below_a_logarithmic_axis() {
        Chart chart = Charts.scatterWithBand("t", "x", "y", ValueScale.LOGARITHMIC, List.of(),
                new Curve("c", "b", new double[] {1, 2}, new double[] {10, 20}, new double[] {0, 5}, new double[] {20, 40}));
        assertTrue(chart.svg().contains(" area\" d=\"m"), chart.svg());
    }

    @Test
    void a_strangers_text_is_shown_and_not_run() {
        String hostile = "<script>alert(1)</script>\" onload=\"x\u0007 & '";
        Chart chart = Charts.scatterWithBand(hostile, hostile, hostile, ValueScale.LINEAR,
                List.of(new Points(hostile, new double[] {1}, new double[] {2}, List.of(hostile))), Curve.none());
        Element svg = parsed(chart.document());
        assertEquals(0, svg.getElementsByTagName("script").getLength());
        assertEquals("", svg.getAttribute("onload"));
        assertTrue(texts(chart).stream().anyMatch(text -> text.startsWith("<script>alert(1)</script>")));
    }

    /** The lines in which the names of rows stand, at most so many characters each. */
    private static List<String> rowLines(Chart chart) {
        Matcher lines = Pattern.compile("class=\"end\">([^<]*)<").matcher(chart.svg());
        List<String> all = new ArrayList<>();
        while (lines.find()) {
            assertTrue(lines.group(1).length() <= 22, lines.group(1));
            all.add(lines.group(1));
        }
        return all;
    }

    @Test
    void long_names_of_rows_take_as_many_lines_as_they_need() {
        String name = "a term whose name goes on and on and on and does not come to an end before the paper does, nor after";
        Chart one = Charts.ranges("r", "x", List.of(new RangeRow("short", 1, 0, 2, -1, 3)), OptionalDouble.empty());
        Chart both = Charts.ranges("r", "x", List.of(new RangeRow("short", 1, 0, 2, -1, 3), new RangeRow(name, 1, 0, 2, -1, 3)),
                OptionalDouble.empty());
        assertTrue(String.join(" ", rowLines(both)).startsWith("short " + name), rowLines(both).toString());
        assertEquals(height(one) + 2 * (5 * 20 + 8) - 28, height(both));
    }

    private static double height(Chart chart) {
        return Double.parseDouble(parsed(chart.svg()).getAttribute("viewBox").split(" ")[3]);
    }

    @Test
    void a_figure_beside_the_name_of_a_row_is_never_cut() {
        String name = "a step whose name goes on and on";
        List<String> lines = rowLines(AmountCharts.waterfall("w", "amount, JPY", List.of(AmountCharts.Step.change(name, 2_910_000),
                AmountCharts.Step.level("a level of words that go on and on, and of some more"))));
        assertEquals(List.of("a step whose name goes", "on and on  +2,910,000", "a level of words that", "go on and on, and of",
                "some more  2,910,000"), lines.subList(0, 5));
        List<String> full = rowLines(AmountCharts.waterfall("w", "amount, JPY", List.of(AmountCharts.Step.change(
                "a step whose name goes on and comes to an end", 2_910_000))));
        assertEquals(List.of("a step whose name goes", "on and comes to an end", "+2,910,000"), full.subList(0, 3));
    }

    @Test
    void words_that_take_more_than_a_line_are_broken_and_not_cut() {
        String name = "a group whose name goes on for longer than the chart that it is in is wide";
        Chart chart = Charts.scatterWithBand("s", "across: " + name, "up: " + name, ValueScale.LINEAR,
                List.of(Points.of(name, new double[] {1, 2}, new double[] {1, 2})), Curve.none());
        for (String words : List.of(name + " (2)", "across: " + name, "up: " + name)) {
            assertTrue(String.join(" ", texts(chart)).contains(words), texts(chart).toString());
        }
        assertTrue(texts(chart).stream().allMatch(line -> line.length() <= 44), texts(chart).toString());
    }

    @Test
    void rows_whose_names_take_more_lines_than_fit_are_told_apart_by_their_number() {
        String end = " and on".repeat(20);
        List<String> lines = rowLines(Charts.ranges("r", "x", List.of(
                new RangeRow("a note that goes on" + end + " once" + end, 1, 0, 2, -1, 3),
                new RangeRow("a note that goes on" + end + " twice" + end, 1, 0, 2, -1, 3)), OptionalDouble.empty()));
        assertTrue(lines.stream().anyMatch(line -> line.startsWith("1. a note that goes on")), lines.toString());
        assertTrue(lines.stream().anyMatch(line -> line.startsWith("2. a note that goes on")), lines.toString());
        assertTrue(lines.stream().filter(line -> line.contains("…")).count() == 2, lines.toString());
        assertTrue(rowLines(Charts.ranges("r", "x", List.of(new RangeRow("\uD83D\uDE97".repeat(200), 1, 0, 2, -1, 3)),
                OptionalDouble.empty())).stream().allMatch(line -> StandardCharsets.UTF_8.newEncoder().canEncode(line)));
    }

    @Test
    void ticks_do_not_run_into_each_other() {
        Chart chart = AmountCharts.waterfall("w", "amount, JPY", List.of(
                AmountCharts.Step.change("a step whose name takes all the room that it can get, and more", 3_600_000)));
        // 0.58 of the type size of a narrow screen a character, as wide as words are taken to be
        double character = 0.58 * ChartStyle.NARROW_TYPE;
        Matcher ticks = Pattern.compile("<text x=\"([0-9.]+)\" y=\"[0-9.]+\" class=\"(mid|end)\">([0-9,]+)<").matcher(chart.svg());
        double right = Double.NEGATIVE_INFINITY;
        int shown = 0;
        while (ticks.find()) {
            double width = ticks.group(3).length() * character;
            double left = Double.parseDouble(ticks.group(1)) - (ticks.group(2).equals("mid") ? width / 2 : width);
            assertTrue(left >= right, ticks.group());
            right = left + width;
            shown++;
        }
        assertTrue(shown >= 2, chart.svg());
    }

    @Test
    void the_ends_of_the_band_of_a_single_price_are_on_the_axis_and_in_the_words() {
        // one listing at 8,168 whose range is 3,968 to 18,847
        Chart chart = Charts.scatterWithBand("one", "mileage, mi", "price, USD", ValueScale.LINEAR,
                List.of(Points.of("cars", new double[] {80_220}, new double[] {8_168})), new Curve("fitted", "80 % range",
                        new double[] {72_198, 88_243}, new double[] {8_700, 8_600}, new double[] {3_968, 3_960},
                        new double[] {18_847, 18_700}));
        assertTrue(chart.alt().contains("8,700 (80 % range 3,968 to 18,847) at 72,198"), chart.alt());
        assertTrue(texts(chart).contains("15,000"), texts(chart).toString());
    }

    @Test
    void points_beyond_the_axes_are_in_the_words_with_their_values() {
        double[] x = new double[40];
        double[] y = new double[40];
        for (int i = 0; i < x.length; i++) {
            x[i] = i;
            y[i] = i % 3 == 0 ? -i / 4.0 : 0;
        }
        y[1] = 900;
        Chart chart = scatter(x, y);
        assertTrue(chart.alt().contains("price, USD from -9.75 to 900"), chart.alt());
        assertTrue(chart.alt().contains("1 point lies beyond the axes and stands at the edge."), chart.alt());
    }

    @Test
    void lines_differ_in_stroke_and_not_in_hue_alone() {
        String svg = Charts.steps("s", "x", "y", List.of(line("a", 1), line("b", 2), line("c", 3), line("d", 4))).svg();
        for (String stroke : List.of("h1 line\"", "h2 line long\"", "h3 line short\"", "h4 line mixed\"")) {
            assertTrue(svg.contains(stroke), stroke);
        }
    }

    private static Curve line(String name, double height) {
        return new Curve(name, "", new double[] {0, 1}, new double[] {height, height}, new double[] {Double.NaN, Double.NaN},
                new double[] {Double.NaN, Double.NaN});
    }

    @Test
    void a_line_of_steps_stands_within_its_band_as_far_as_that_is_known() {
        Chart chart = Charts.steps("Left", "days", "left, %", List.of(new Curve("all", "95 % range", new double[] {0, 2, 5},
                new double[] {100, 50, 0}, new double[] {100, 10, Double.NaN}, new double[] {100, 80, Double.NaN})));
        assertTrue(chart.svg().contains("h1 faint") && texts(chart).contains("95 % range"), chart.svg());
        assertEquals(List.of("all", "2", "50", "10", "80"), chart.data().rows().get(1).stream().map(Cell::exact).toList());
        assertTrue(chart.alt().endsWith("all, at last 0 at 5."), chart.alt());
        assertFalse(Charts.steps("Left", "days", "left, %", List.of(line("all", 1))).svg().contains("h1 faint"));
    }

    @Test
    void lists_of_unequal_length_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> Points.of("p", new double[2], new double[3]));
        assertThrows(IllegalArgumentException.class, () -> new Points("p", new double[2], new double[2], List.of("only one")));
        assertThrows(IllegalArgumentException.class,
                () -> new Curve("c", "b", new double[] {2, 1}, new double[2], new double[2], new double[2]));
        assertThrows(IllegalArgumentException.class, () -> new DatedBand("d", List.of(LocalDate.EPOCH), new double[2],
                new double[2], new double[2], new double[2], new double[2]));
    }

    @Test
    void records_keep_their_own_copy_of_the_numbers() {
        double[] mine = {1, 2};
        Points points = Points.of("p", mine, mine);
        mine[0] = 99;
        points.x()[1] = 99;
        assertEquals(1, points.x()[0]);
        assertEquals(2, points.x()[1]);
    }

    @Test
    void what_a_chart_is_made_of_prints_its_name_and_how_much_it_holds() {
        double[] one = {1};
        List<LocalDate> day = List.of(LocalDate.of(2026, 6, 1));
        assertEquals("1 point of 'cars'", Points.of("cars", one, one).toString());
        assertEquals("2 estimates of 'cars'", new Estimates("cars", new double[2], new double[2], new double[2], new double[2], List.of())
                .toString());
        assertEquals("curve '' of 0 places", Curve.none().toString());
        assertEquals("band 'level' of 1 date, 2026-06-01 to 2026-06-01", new DatedBand("level", day, one, one, one, one, one).toString());
        assertEquals("line 'base' of 1 date, 2026-06-01 to 2026-06-01", new Charts.NamedLine("base", day, one).toString());
        assertEquals("line '' of 0 dates", new Charts.NamedLine("", List.of(), new double[0]).toString());
    }
}
