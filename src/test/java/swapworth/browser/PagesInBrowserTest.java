package swapworth.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.command.Main;
import swapworth.notebook.NotebookRun;
import swapworth.notebook.Notebooks;

/** The folder's page, the pages of all notebooks and their index in a real browser, narrow and wide, light and dark. */
class PagesInBrowserTest {

    private static final Path SAMPLE = Path.of("sample-listings");
    /** WCAG 2.1, success criterion 1.4.3: text and its ground differ at least so much. */
    private static final double LEAST_CONTRAST = 4.5;
    /** The narrowest telephones in use; common practice, no source. */
    private static final int NARROWEST = 360;
    /** An A4 sheet of 210 mm between margins of 14 mm, in pixels of 1/96 inch. */
    private static final int WIDTH_OF_A4 = 688;

    @TempDir
    static Path folder;

    private static final Map<String, Unfolded> UNFOLDED = new HashMap<>();
    private static Optional<Browser> browser = Optional.empty();
    private static List<Path> pages = List.of();

    @BeforeAll
    static void open() throws IOException {
        browser = Browser.open();
        if (browser.isEmpty()) {
            return;
        }
        List<Path> made = new ArrayList<>();
        PrintStream nowhere = new PrintStream(java.io.OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
        Path page = folder.resolve("folder.html");
        assertEquals(0, Main.run(nowhere, nowhere, SAMPLE.toString(), "--page", page.toString()));
        made.add(page);
        try (Stream<Path> files = Files.list(Path.of("notebooks"))) {
            List<Path> notebooks = files.filter(f -> f.toString().endsWith(".jsh")).sorted().toList();
            Notebooks.about(SAMPLE, folder).run(notebooks).stream().map(NotebookRun::page).forEach(made::add);
        }
        made.add(folder.resolve("index.html"));
        pages = made;
    }

    @AfterAll
    static void close() {
        browser.ifPresent(Browser::close);
    }

    private static Browser browser() {
        assumeTrue(browser.isPresent(), "no chromium with its driver on this machine: the pages are not looked at");
        return browser.get();
    }

    @Test
    void ask_for_nothing_outside_and_complain_of_nothing() {
        Browser browser = browser();
        for (Path page : pages) {
            browser.show(page, 1280, "light");
            assertEquals(List.of(), browser.outsideRequests(page), page.toString());
            assertEquals(List.of(), browser.complaints(), page.toString());
        }
    }

    /**
     * A page with all that is folded open: a long page takes seconds to lay out, so what several tests ask of one width is asked at once.
     *
     * @param beyond what reaches beyond the right edge
     * @param most the width that all of it takes
     * @param cut remarks and reasons of which something is not seen
     */
    private record Unfolded(List<String> beyond, Number most, List<String> cut) {
    }

    private static Unfolded unfolded(Path page, int width) {
        return UNFOLDED.computeIfAbsent(page + " at " + width, key -> {
            Browser browser = browser();
            browser.show(page, width, "light");
            browser.ask("document.querySelectorAll('details').forEach(d => d.open = true); return true");
            List<String> beyond = browser.ask("""
                    const limit = document.documentElement.clientWidth + 1;
                    if (document.documentElement.scrollWidth <= limit) return [];
                    return [...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > limit
                        && !e.closest('.wide') && !e.closest('pre')).slice(0, 3).map(e => e.outerHTML.slice(0, 80));""");
            Number most = browser.ask("return document.documentElement.scrollWidth");
            return new Unfolded(beyond, most, browser.ask("""
                    return [...document.querySelectorAll('td.t')].filter(td => td.textContent
                        && (td.getBoundingClientRect().right > td.closest('.wide').getBoundingClientRect().right + 1
                            || td.scrollWidth > td.clientWidth + 1)).slice(0, 3).map(td => td.outerHTML.slice(0, 80));"""));
        });
    }

    @Test
    void never_scroll_sideways_on_a_narrow_screen() {
        browser();
        for (Path page : pages) {
            for (int width : new int[] {NARROWEST, 1280}) {
                Unfolded seen = unfolded(page, width);
                assertEquals(List.of(), seen.beyond(), page + " at " + width);
                assertTrue(seen.most().intValue() <= width, page + " at " + width + ": " + seen.most());
            }
        }
    }

    @Test
    void fit_the_paper_with_whatever_is_unfolded() {
        Browser browser = browser();
        for (Path page : pages) {
            // Chromium shrinks all sheets to the widest table.
            browser.print(page, WIDTH_OF_A4);
            List<String> wide = browser.ask("""
                    document.querySelectorAll('details').forEach(d => d.open = true);
                    return [...document.querySelectorAll('table')].map(t => [t.getBoundingClientRect().width, t.getAttribute('aria-label')])
                        .filter(([width]) => width > document.documentElement.clientWidth + 1).slice(0, 5).map(String);""");
            assertEquals(List.of(), wide, page.toString());
        }
    }

    @Test
    void have_no_word_smaller_than_twelve_pixels_on_a_narrow_screen() {
        Browser browser = browser();
        for (Path page : pages) {
            browser.show(page, NARROWEST, "light");
            List<String> small = browser.ask("""
                    document.querySelectorAll('details').forEach(d => d.open = true);
                    const small = new Map();
                    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
                    while (walker.nextNode()) {
                        const e = walker.currentNode.parentElement;
                        if (!walker.currentNode.textContent.trim() || e.closest('title,desc,style')) continue;
                        const style = getComputedStyle(e);
                        if (style.display === 'none') continue;
                        const size = parseFloat(style.fontSize) * (e.ownerSVGElement ? e.getScreenCTM().a : 1);
                        if (size < 11.99) small.set(size.toFixed(1), size.toFixed(1) + ' ' + e.outerHTML.slice(0, 80));
                    }
                    return [...small.values()].slice(0, 5);""");
            assertEquals(List.of(), small, page.toString());
        }
    }

    @Test
    void show_car_price_value_range_and_position_at_once_on_a_narrow_screen() {
        Browser browser = browser();
        browser.show(pages.get(0), NARROWEST, "light");
        for (String section : List.of("in-play", "on-offer", "listings")) {
            // What stands right of the last letter is white.
            List<String> seen = browser.ask("""
                    document.querySelectorAll('details').forEach(d => d.open = true);
                    const first = document.querySelector('#SECTION .wide');
                    const box = first.getBoundingClientRect();
                    return [...first.querySelectorAll('thead th')]
                        .map(th => [th.textContent.trim().replaceAll('\u00a0', ' '), th.getBoundingClientRect()])
                        .filter(([label, at]) => at.left >= box.left - 1 && at.right <= box.right + 6 && label !== 'remarks')
                        .sort((one, other) => one[1].left - other[1].left).map(([label]) => label);""".replace("SECTION", section));
            String price = section.equals("in-play") ? "price or bid" : "price";
            assertEquals(List.of("car", price, "fair value", "80 % range", "position"), seen.stream().limit(5).toList(), section);
        }
    }

    @Test
    void never_cut_a_remark_or_a_reason() {
        browser();
        for (Path page : pages) {
            for (int width : new int[] {NARROWEST, 1280}) {
                assertEquals(List.of(), unfolded(page, width).cut(), page + " at " + width);
            }
        }
    }

    @Test
    void have_words_for_every_picture_heads_on_every_table_and_headings_in_order() {
        Browser browser = browser();
        for (Path page : pages) {
            browser.show(page, 1280, "light");
            List<String> faults = browser.ask("""
                    const faults = [];
                    for (const image of document.images) {
                        if (!image.alt) faults.push('no words: ' + image.src.slice(0, 60));
                        if (!image.naturalWidth) faults.push('not decoded: ' + image.src.slice(0, 60));
                    }
                    for (const svg of document.querySelectorAll('svg:not(svg svg)')) {
                        const label = svg.getAttribute('aria-label') || (svg.querySelector('title') || {}).textContent || '';
                        if (svg.getAttribute('role') !== 'img' || label.length < 20) faults.push('svg: ' + svg.outerHTML.slice(0, 80));
                    }
                    for (const table of document.querySelectorAll('table')) {
                        if (!table.querySelector('thead th')) faults.push('no head: ' + table.outerHTML.slice(0, 80));
                    }
                    let before = 0;
                    for (const heading of document.querySelectorAll('h1,h2,h3,h4,h5,h6')) {
                        const level = +heading.tagName[1];
                        if (level > before + 1) faults.push(heading.outerHTML.slice(0, 80));
                        before = level;
                    }
                    if (document.querySelectorAll('h1').length !== 1) faults.push('h1');
                    return faults;""");
            assertEquals(List.of(), faults, page.toString());
        }
    }

    @Test
    void can_be_read_in_light_and_dark() {
        Browser browser = browser();
        for (Path page : pages) {
            for (String scheme : List.of("light", "dark")) {
                browser.show(page, 1280, scheme);
                List<String> faint = browser.ask("const least = " + LEAST_CONTRAST + ";" + """
                        const canvas = document.createElement('canvas').getContext('2d', {willReadFrequently: true});
                        const known = new Map();
                        const rgba = colour => {
                            if (!known.has(colour)) {
                                canvas.clearRect(0, 0, 1, 1);
                                canvas.fillStyle = colour;
                                canvas.fillRect(0, 0, 1, 1);
                                known.set(colour, [...canvas.getImageData(0, 0, 1, 1).data]);
                            }
                            return known.get(colour);
                        };
                        const light = c => c.slice(0, 3).map(v => v / 255)
                            .map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
                            .reduce((sum, v, i) => sum + v * [0.2126, 0.7152, 0.0722][i], 0);
                        const grounds = new Map();
                        const ground = e => {
                            if (!e) return rgba(getComputedStyle(document.body).backgroundColor);
                            if (!grounds.has(e)) {
                                const c = rgba(getComputedStyle(e).backgroundColor);
                                grounds.set(e, c[3] > 250 ? c : ground(e.parentElement));
                            }
                            return grounds.get(e);
                        };
                        document.querySelectorAll('details').forEach(d => d.open = true);
                        const seen = new Map();
                        const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
                        while (walker.nextNode()) {
                            const e = walker.currentNode.parentElement;
                            if (!walker.currentNode.textContent.trim() || e.closest('title,desc,style')) continue;
                            const style = getComputedStyle(e);
                            if (style.display === 'none' || style.visibility === 'hidden') continue;
                            const ink = rgba(e.closest('svg') ? style.fill : style.color);
                            const pair = [light(ink), light(ground(e))].sort((a, b) => b - a);
                            const contrast = (pair[0] + 0.05) / (pair[1] + 0.05);
                            if (contrast < least) seen.set(style.fill + style.color, contrast.toFixed(2) + ' ' + e.outerHTML.slice(0, 80));
                        }
                        return [...seen.values()].slice(0, 5);""");
                assertEquals(List.of(), faint, page + " " + scheme);
            }
        }
    }
}
