package swapworth.report;

import static java.util.Objects.requireNonNull;

import java.util.List;

/**
 * A part of a {@link Page} with a heading, listed in its contents.
 *
 * @param id where a link to {@code #id} leads: lower-case Latin letters, digits and hyphens, a letter first
 * @param heading the heading; empty for none, and then the contents do not list it
 * @param parts the blocks below it
 */
public record Section(String id, String heading, List<Part> parts) {

    /** Copies the list in and checks the id. */
    public Section {
        checkId(id);
        requireNonNull(heading, "heading");
        parts = List.copyOf(parts);
    }

    /**
     * A section.
     *
     * @param id where a link to {@code #id} leads
     * @param heading the heading
     * @param parts the blocks below it
     * @return the section
     */
    public static Section of(String id, String heading, Part... parts) {
        return new Section(id, heading, List.of(parts));
    }

    /** An id is ours, never a stranger's text, so it needs no escaping. */
    static void checkId(String id) {
        boolean fine = !id.isEmpty() && id.charAt(0) >= 'a' && id.charAt(0) <= 'z';
        for (int i = 0; fine && i < id.length(); i++) {
            char c = id.charAt(i);
            fine = c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '-';
        }
        if (!fine) {
            throw new IllegalArgumentException("'" + id + "' is no id: lower-case letters, digits and hyphens, a letter first");
        }
    }
}
