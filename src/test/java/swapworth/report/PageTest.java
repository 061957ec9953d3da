package swapworth.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import swapworth.chart.Chart;
import swapworth.chart.SampleCharts;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

class PageTest {
    private static final Table TABLE = Table.titled("two rows").columns(Column.words("car"), Column.number("price", "USD"))
            .row(Cell.words("a").linked("#car-a"), Cell.number(9_500, 0)).row(Cell.words("b"), Cell.BLANK).build();

    /** The page as a tree; void elements are closed first, so that a strict reader of XML finds any tag left open. */
    private static Document parsed(String html) throws Exception {
        String xml = html.replaceFirst("<!DOCTYPE html>", "").replaceAll("<meta ([^>]*)>", "<meta $1/>")
                .replaceAll("<details class=\"numbers\" open>", "<details class=\"numbers\" open=\"open\">");
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    }

    private static List<Element> all(Document page, String tag) {
        NodeList nodes = page.getElementsByTagName(tag);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    @Test
    void every_part_has_its_place_and_every_tag_is_closed() throws Exception {
        Page page = Page.of("Title", "Lead.\n\nSecond.",
                Section.of("one", "First", Part.prose("Words."), Part.bullets(List.of("x", "y")), Part.rows(TABLE)),
                Section.of("two", "Second", Part.verbatim("a  b\n c"),
                        Part.folded("car-a", "Why a", Part.rows(TABLE), Part.folded("", "deeper", Part.prose("Deep.")))),
                Section.of("three", "Third", Part.picture(SampleCharts.six(40, 1).get(3)),
                        Part.cautions("Mind", List.of("fuel"))));
        Document html = parsed(page.html());
        assertEquals("Title", all(html, "h1").get(0).getTextContent());
        assertEquals(List.of("First", "Second", "Third"), all(html, "h2").stream().map(Element::getTextContent).toList());
        assertEquals(List.of("#one", "#two", "#three", "#car-a", "#car-a"),
                all(html, "a").stream().map(a -> a.getAttribute("href")).toList());
        assertEquals("a  b\n c", all(html, "pre").get(0).getTextContent());
        assertEquals("car-a", ((Element) all(html, "details").get(0).getElementsByTagName("div").item(0)).getAttribute("id"));
        assertEquals("Mind", all(html, "aside").get(0).getElementsByTagName("h3").item(0).getTextContent());
        assertEquals("en", html.getDocumentElement().getAttribute("lang"));
        assertEquals(1, html.getElementsByTagName("main").getLength());
        assertEquals(3, all(html, "header").get(0).getElementsByTagName("p").getLength(), "two of the lead, one for paper");
    }

    @Test
    void a_page_of_everything_is_well_formed() throws Exception {
        parsed(SamplePage.of(40, 20, SampleCharts.six(60, 2)).html());
    }

    @Test
    void the_page_forbids_itself_scripts_and_the_network_and_asks_for_neither() {
        String html = SamplePage.of(10, 5, SampleCharts.six(60, 2)).html();
        assertTrue(html.contains("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
                + "'unsafe-inline'; img-src data:\">"));
        for (String outside : List.of("http:", "https:", "//", "<script", "<link", "<iframe", "<img", "@import", "url(",
                "src=")) {
            assertFalse(html.contains(outside), outside);
        }
        Matcher href = Pattern.compile("href=\"([^\"]*)\"").matcher(html);
        while (href.find()) {
            assertTrue(href.group(1).startsWith("#"), href.group(1));
        }
    }

    @Test
    void a_strangers_text_is_shown_and_not_run_wherever_it_stands() throws Exception {
        String hostile = "</title></style></pre><script>alert('x')</script><img src=x onerror=\"y\"> & \u0000\u001b[2J";
        Table table = Table.titled(hostile).note(hostile).columns(Column.words(hostile)).row(Cell.words(hostile)).build();
        Chart without = new Chart(hostile, hostile, "", table, Optional.of(hostile));
        Page page = Page.of(hostile, hostile, Section.of("a", hostile, Part.prose(hostile), Part.bullets(List.of(hostile)),
                Part.rows(table), Part.picture(without), Part.verbatim(hostile), Part.cautions(hostile, List.of(hostile)),
                Part.folded("b", hostile, Part.prose(hostile))), Section.of("c", hostile));
        Document html = parsed(page.html());
        assertTrue(all(html, "script").isEmpty());
        assertTrue(all(html, "img").isEmpty());
        assertFalse(page.html().contains("\u001b") || page.html().contains("\u0000"));
        assertEquals(hostile.replace("\u0000\u001b", ""), all(html, "h1").get(0).getTextContent());
    }

    @Test
    void ids_are_checked_and_stand_once() {
        for (String id : List.of("", "Two", "2a", "a b", "a\"><script>", "ä", "-a")) {
            assertThrows(IllegalArgumentException.class, () -> Section.of(id, "x"), id);
        }
        assertThrows(IllegalArgumentException.class, () -> Part.folded("x y", "s"));
        assertThrows(IllegalArgumentException.class, () -> Page.of("t", "", Section.of("a", "x"), Section.of("a", "y")));
        assertThrows(IllegalArgumentException.class,
                () -> Page.of("t", "", Section.of("a", "x", Part.folded("", "s", Part.folded("a", "s")))));
    }

    @Test
    void a_chart_without_picture_shows_why_and_its_numbers_unfolded() throws Exception {
        Chart chart = new Chart("Prices", "price against mileage: 2 cars", "", TABLE, Optional.of("no picture: no font"));
        Document html = parsed(Page.of("t", "", Section.of("a", "x", Part.picture(chart))).html());
        Element figure = all(html, "figure").get(0);
        assertTrue(figure.getTextContent().contains("no picture: no font"));
        assertTrue(figure.getTextContent().contains("price against mileage: 2 cars"));
        assertEquals("open", all(html, "details").get(0).getAttribute("open"));
        assertEquals(0, all(html, "svg").size());
    }

    @Test
    void what_opens_the_page_stands_above_the_contents_and_not_in_them() {
        String html = Page.of("t", "", Section.of("short", "In short"), Section.of("a", "x"), Section.of("b", "y")).openedBy(1).html();
        int contents = html.indexOf("<nav");
        assertTrue(html.indexOf("In short") < contents && contents < html.indexOf("<section id=\"a\""), html);
        assertFalse(html.contains("#short"), html);
        assertThrows(IllegalArgumentException.class, () -> Page.of("t", "", Section.of("a", "x")).openedBy(2));
    }

    @Test
    void everything_but_the_title_and_the_lead_is_in_the_main_part_of_the_page() {
        String html = Page.of("t", "l", Section.of("short", "In short"), Section.of("a", "x"), Section.of("b", "y")).openedBy(1).html();
        int main = html.indexOf("<main>");
        assertTrue(html.indexOf("</header>") < main && main < html.indexOf("<section id=\"short\""), html);
        assertTrue(html.indexOf("<section id=\"b\"") < html.indexOf("</main>"), html);
    }

    @Test
    void a_section_of_which_nothing_is_left_on_paper_is_marked() {
        String html = Page.of("t", "", Section.of("a", "x", Part.prose("p"), Part.folded("f", "s", Part.prose("q"))),
                Section.of("b", "y", Part.rows(TABLE), Part.folded("g", "s", Part.prose("q"))),
                Section.of("c", "z", Part.prose("p"))).html();
        assertTrue(html.contains("<section id=\"a\" class=\"folds\">"), html);
        assertTrue(html.contains("<section id=\"b\">") && html.contains("<section id=\"c\">"), html);
    }

    @Test
    void each_printed_sheet_says_what_it_is_and_no_title_ends_the_style_sheet() {
        assertTrue(Page.of("File on it", "", Section.of("a", "x")).html()
                .contains("@bottom-left{content:\"File\\20 on\\20 it\\2e \\20 Statistical\\20 estimates\\2c \\20 no\\20 "
                        + "appraisal\\2e \""));
        String html = Page.of("a\"}</style>\n*{}", "", Section.of("a", "x")).html();
        assertTrue(html.contains("content:\"a\\22 \\7d \\3c \\2f style\\3e \\2a \\7b \\7d \\2e "), html);
        assertEquals(html.indexOf("</style>"), html.lastIndexOf("</style>"));
    }

    @Test
    void one_section_needs_no_contents_list() {
        assertFalse(Page.of("t", "", Section.of("a", "x")).html().contains("<nav"));
    }

    @Test
    void the_same_page_gives_the_same_text_in_any_language() {
        String here = SamplePage.of(30, 10, SampleCharts.six(60, 2)).html();
        Locale language = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            assertEquals(here, SamplePage.of(30, 10, SampleCharts.six(60, 2)).html());
        } finally {
            Locale.setDefault(language);
        }
    }
}
