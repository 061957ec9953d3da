package swapworth.report;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import swapworth.reading.OutputFile;
import java.util.Set;

/**
 * One HTML page that stands alone: its style is inside, it needs no script, no network and no other file, and it forbids itself
 * all of them. It reads on a wide screen, on a phone and on paper, in light and in dark.
 *
 * @param title the title
 * @param lead what a reader in a hurry needs to know; empty for none
 * @param sections the sections, in order
 * @param opening how many of them stand above the list of contents, because they are read before all else
 */
public record Page(String title, String lead, List<Section> sections, int opening) {

    /** Copies the list in and checks that no id appears twice. */
    public Page {
        requireNonNull(title, "title");
        requireNonNull(lead, "lead");
        sections = List.copyOf(sections);
        if (opening < 0 || opening > sections.size()) {
            throw new IllegalArgumentException("a page of " + sections.size() + " sections cannot open with " + opening);
        }
        Set<String> seen = new HashSet<>();
        for (Section section : sections) {
            claim(seen, section.id());
            claimAll(seen, section.parts());
        }
    }

    private static void claimAll(Set<String> seen, List<Part> parts) {
        for (Part part : parts) {
            if (part instanceof Part.Folded folded) {
                if (!folded.id().isEmpty()) {
                    claim(seen, folded.id());
                }
                claimAll(seen, folded.parts());
            }
        }
    }

    private static void claim(Set<String> seen, String id) {
        if (!seen.add(id)) {
            throw new IllegalArgumentException("two places of the page have the id '" + id + "'");
        }
    }

    /**
     * A page.
     *
     * @param title the title
     * @param lead what a reader in a hurry needs to know; empty for none
     * @param sections the sections, in order
     * @return the page
     */
    public static Page of(String title, String lead, Section... sections) {
        return new Page(title, lead, List.of(sections), 0);
    }

    /**
     * A page.
     *
     * @param title the title
     * @param lead what a reader in a hurry needs to know; empty for none
     * @param sections the sections, in order
     * @return the page
     */
    public static Page of(String title, String lead, List<Section> sections) {
        return new Page(title, lead, sections, 0);
    }

    /**
     * The same page with some sections above the list of contents.
     *
     * @param count how many of the first ones
     * @return a copy
     */
    public Page openedBy(int count) {
        return new Page(title, lead, sections, count);
    }

    /**
     * The page as an HTML 5 document. The same page gives the same text on every machine.
     *
     * @return the document
     */
    public String html() {
        return new PageHtml().of(this);
    }

    /**
     * Writes the page, in UTF-8. Whoever reads the file finds the old page or the whole new one, never half of one: it is written
     * under another name in the same folder and then moved.
     *
     * @param file where to; a file that is there is replaced
     * @throws IOException if the folder or the file cannot be written; what was there before is then untouched
     */
    public void write(Path file) throws IOException {
        OutputFile.write(file, html());
    }
}
