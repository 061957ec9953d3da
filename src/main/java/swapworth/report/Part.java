package swapworth.report;

import static java.util.Objects.requireNonNull;

import java.util.List;
import swapworth.chart.Chart;
import swapworth.table.Table;

/**
 * One block of a {@link Page}. Every text in it is shown as it is, but for {@link Marked}, whose marks of Markdown become emphasis,
 * lists and tables; nothing in any of them is taken for HTML.
 */
public sealed interface Part {

    /**
     * The block as a fragment of HTML, for use in a document of another maker.
     *
     * @return elements without head and style
     */
    default String html() {
        return new PageHtml().of(this);
    }

    /**
     * A paragraph.
     *
     * @param text the words; an empty line begins a new paragraph
     */
    record Prose(String text) implements Part {
        /** Checks that nothing is missing. */
        public Prose {
            requireNonNull(text, "text");
        }
    }

    /**
     * Text with marks of Markdown (CommonMark and tables). HTML in it is shown as text, links lead to web and mail addresses only,
     * pictures give way to their words, and headings stand below those of sections.
     *
     * @param text the text
     */
    record Marked(String text) implements Part {
        /** Checks that nothing is missing. */
        public Marked {
            requireNonNull(text, "text");
        }
    }

    /**
     * A list of points.
     *
     * @param items the points
     */
    record Bullets(List<String> items) implements Part {
        /** Copies the list in. */
        public Bullets {
            items = List.copyOf(items);
        }
    }

    /**
     * A list of sentences, each of which leads to the section that it is from.
     *
     * @param items the sentences, at least one
     */
    record Pointers(List<Pointer> items) implements Part {
        /** Copies the list in. */
        public Pointers {
            items = List.copyOf(items);
            if (items.isEmpty()) {
                throw new IllegalArgumentException("no sentence that leads to a section");
            }
        }
    }

    /**
     * A sentence that leads to a section.
     *
     * @param sentence the sentence
     * @param to the section
     */
    record Pointer(String sentence, Section to) {
        /** Checks that nothing is missing. */
        public Pointer {
            requireNonNull(sentence, "sentence");
            requireNonNull(to, "to");
        }
    }

    /**
     * A table in a box of its own, which scrolls sideways where the page is too narrow.
     *
     * @param table the table
     */
    record Rows(Table table) implements Part {
        /** Checks that nothing is missing. */
        public Rows {
            requireNonNull(table, "table");
        }
    }

    /**
     * A picture with its title, and its numbers folded below; they stand open where there is no picture.
     *
     * @param chart the chart
     */
    record Picture(Chart chart) implements Part {
        /** Checks that nothing is missing. */
        public Picture {
            requireNonNull(chart, "chart");
        }
    }

    /**
     * Text that keeps its lines and spaces, in letters of equal width.
     *
     * @param text the text
     */
    record Verbatim(String text) implements Part {
        /** Checks that nothing is missing. */
        public Verbatim {
            requireNonNull(text, "text");
        }
    }

    /**
     * What a reader must not overlook, in a box.
     *
     * @param heading the heading of the box
     * @param items the cautions
     */
    record Cautions(String heading, List<String> items) implements Part {
        /** Copies the list in. */
        public Cautions {
            requireNonNull(heading, "heading");
            items = List.copyOf(items);
        }
    }

    /**
     * Blocks folded under one line; what is folded on the screen is left off the paper.
     *
     * @param id where a link to {@code #id} leads, and what it unfolds; empty for none
     * @param summary the line
     * @param parts the blocks
     */
    record Folded(String id, String summary, List<Part> parts) implements Part {
        /** Copies the list in and checks the id. */
        public Folded {
            requireNonNull(summary, "summary");
            parts = List.copyOf(parts);
            if (!id.isEmpty()) {
                Section.checkId(id);
            }
        }
    }

    /**
     * A paragraph.
     *
     * @param text the words; an empty line begins a new paragraph
     * @return the part
     */
    static Part prose(String text) {
        return new Prose(text);
    }

    /**
     * Text with marks of Markdown.
     *
     * @param text the text
     * @return the part
     */
    static Part marked(String text) {
        return new Marked(text);
    }

    /**
     * A list of points.
     *
     * @param items the points
     * @return the part
     */
    static Part bullets(List<String> items) {
        return new Bullets(items);
    }

    /**
     * A table.
     *
     * @param table the table
     * @return the part
     */
    static Part rows(Table table) {
        return new Rows(table);
    }

    /**
     * A chart.
     *
     * @param chart the chart
     * @return the part
     */
    static Part picture(Chart chart) {
        return new Picture(chart);
    }

    /**
     * Text that keeps its lines and spaces.
     *
     * @param text the text
     * @return the part
     */
    static Part verbatim(String text) {
        return new Verbatim(text);
    }

    /**
     * What a reader must not overlook.
     *
     * @param heading the heading of the box
     * @param items the cautions
     * @return the part
     */
    static Part cautions(String heading, List<String> items) {
        return new Cautions(heading, items);
    }

    /**
     * Blocks folded under one line.
     *
     * @param id where a link to {@code #id} leads; empty for none
     * @param summary the line
     * @param parts the blocks
     * @return the part
     */
    static Part folded(String id, String summary, Part... parts) {
        return new Folded(id, summary, List.of(parts));
    }
}
