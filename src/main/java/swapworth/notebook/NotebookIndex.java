package swapworth.notebook;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.stream.Stream;
import swapworth.report.Page;
import swapworth.report.Part;
import swapworth.report.Section;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Html;
import swapworth.table.Table;

/** The index of all pages of notebooks in a folder, whichever run wrote them; it knows them by a mark in their heads. */
final class NotebookIndex {
    /** The name of the index, without its ending. */
    static final String NAME = "index";
    private static final String TITLE = "<title>";
    private static final String MARK = "<meta name=\"swapworth-notebook\" content=\"";
    private static final int LINES_OF_HEAD = 20;

    private NotebookIndex() {
    }

    /** A page with the mark by which the index knows it, which holds what the index says of it. */
    static String marked(String html, String says) {
        return html.replaceFirst(TITLE, Matcher.quoteReplacement(MARK + Html.escape(says) + "\">\n" + TITLE));
    }

    /** The index of what is there after some runs. */
    static Page of(Path pages, List<NotebookRun> runs) throws IOException {
        Table.Builder table = Table.titled("Pages of notebooks").columns(Column.words("notebook"), Column.sentences("what it tells"));
        List<NotebookRun> failed = runs.stream().filter(r -> r.failure().isPresent()).toList();
        if (!failed.isEmpty()) {
            table.note(failed.size() + " of " + runs.size() + " did not run to the end this time.");
        }
        for (Path page : pages(pages)) {
            head(page).ifPresent(head -> table.row(Cell.words(head.title).linked(address(page)),
                    Cell.words(head.says + older(page, failed))));
        }
        for (NotebookRun run : failed) {
            if (!Files.exists(run.page())) {
                table.row(Cell.words(run.title()), Cell.words("No page: " + firstLine(run)));
            }
        }
        return Page.of("Notebooks", "", Section.of("notebooks", "", Part.rows(table.build())));
    }

    private static String older(Path page, List<NotebookRun> failed) {
        return failed.stream().filter(r -> !r.isWritten() && r.page().equals(page)).findFirst()
                .map(r -> " From an earlier run; this time: " + firstLine(r)).orElse("");
    }

    private static String firstLine(NotebookRun run) {
        return run.failure().flatMap(f -> f.lines().findFirst()).orElse("");
    }

    private static List<Path> pages(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(f -> f.toString().endsWith(".html") && Files.isRegularFile(f)).sorted().toList();
        }
    }

    /** What the head of a page says of a notebook. */
    private record Head(String title, String says) {
    }

    /** The head of a page of a notebook; nothing for any other file. */
    private static Optional<Head> head(Path page) {
        List<String> lines = new ArrayList<>();
        try (BufferedReader in = Files.newBufferedReader(page)) {
            for (String line = in.readLine(); line != null && lines.size() < LINES_OF_HEAD; line = in.readLine()) {
                lines.add(line);
            }
        } catch (IOException e) {
            // What cannot be read as text is no page of ours.
            return Optional.empty();
        }
        return between(lines, MARK, "\">").flatMap(says -> between(lines, TITLE, "</title>").map(title -> new Head(title, says)));
    }

    private static Optional<String> between(List<String> lines, String before, String behind) {
        return lines.stream().filter(l -> l.startsWith(before) && l.endsWith(behind)).findFirst()
                .map(l -> plain(l.substring(before.length(), l.length() - behind.length())));
    }

    /** Undoes {@link Html#unbroken}. */
    private static String plain(String escaped) {
        return escaped.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&#39;", "'").replace("&amp;", "&")
                .replace('\u00a0', ' ');
    }

    /** The address of a page beside the index. */
    private static String address(Path page) {
        try {
            return "./" + new URI(null, null, "/" + page.getFileName(), null).getRawPath().substring(1);
        } catch (URISyntaxException e) {
            throw new IllegalArgumentException(page + " has no address", e);
        }
    }
}
