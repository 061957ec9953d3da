package swapworth.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class UnusableFileTest {

    @TempDir
    Path folder;

    private void refused(byte[] bytes, String... parts) throws IOException {
        Path file = folder.resolve("mine.csv");
        Files.write(file, bytes);
        refused(file, parts);
    }

    private static void refused(Path file, String... parts) {
        String message = assertThrows(UnusableFileException.class, () -> CsvSource.read(file)).getMessage();
        for (String part : parts) {
            assertTrue(message.contains(part), message);
        }
    }

    private void refused(String text, String... parts) throws IOException {
        refused(text.getBytes(StandardCharsets.UTF_8), parts);
    }

    @Test
    void a_missing_file_is_refused_with_its_path() {
        refused(folder.resolve("none.csv"), "none.csv", "no such file");
    }

    @Test
    void a_folder_is_refused_as_no_file() {
        refused(folder, "folder");
    }

    @Test
    void an_empty_file_is_refused() throws IOException {
        refused("", "mine.csv: the file is empty");
        refused("\ufeff", "the file is empty");
    }

    @Test
    void a_file_of_blank_lines_and_comments() throws IOException {
        refused("\n# nothing\n  \n", "needed: a header line");
    }

    @Test
    void a_file_in_latin_1_names_the_line_and_says_what_to_do() throws IOException {
        refused("vehicle,note\nA,fine\nB,caf\u00e9\n".getBytes(StandardCharsets.ISO_8859_1), "line 3", "0xE9",
                "save it as UTF-8");
        refused("vehicle,note\r\nA,fine\r\nB,\u00fcber\r\n".getBytes(Charset.forName("windows-1252")), "line 3", "0xFC");
    }

    @Test
    void a_replacement_character_that_was_typed_is_fine() throws IOException {
        Path file = folder.resolve("fine.csv");
        Files.writeString(file, "a,b\n\ufffd,1\n");
        assertTrue(CsvSource.read(file).rows().get(0).cell(0).equals("\ufffd"));
    }

    @Test
    void a_file_in_utf_16() throws IOException {
        refused("\ufeffvehicle,price\n".getBytes(StandardCharsets.UTF_16LE), "UTF-16");
    }

    @Test
    void a_file_that_one_may_not_read() throws IOException {
        Path file = folder.resolve("closed.csv");
        Files.writeString(file, "a,b\n1,2\n");
        // Where the tests run as root everything may be read.
        assumeTrue(file.toFile().setReadable(false) && !Files.isReadable(file));
        refused(file, "closed.csv", "no permission to read it");
    }

    @Test
    void a_workbook_is_refused_and_told_how_to_save_it() throws IOException {
        refused(new byte[] {'P', 'K', 3, 4, 20, 0}, "workbook", "CSV UTF-8");
    }

    @Test
    void two_columns_of_one_name() throws IOException {
        refused("price,vehicle,Price\n1,2,3\n", "line 1", "'Price' stands twice");
    }

    @Test
    void a_header_of_nameless_columns() throws IOException {
        refused("\"\",\"\"\n1,2\n", "no name of a column");
        refused(";;;\n;;;\n", "needed: a header line");
    }

    @Test
    void separators_alone_above_the_header_are_a_blank_line() {
        for (String above : List.of(";;;\n,,\n", ",,\r\n;;\r\n", "\t\t\n\n")) {
            CsvSource source = CsvSource.of("mine.csv", above + "a;b\n1;2\n");
            assertEquals(List.of("a", "b"), source.header());
            assertEquals(4, source.rows().get(0).line());
        }
    }

    @Test
    void a_title_above_the_header_is_named_and_what_to_do_about_it() {
        String message = missing("\nMy cars 2026;;;\nname;price\nx;1\n");
        assertTrue(message.endsWith("found the columns My cars 2026. Line 2 must be the header, which names the columns: if it is a title,"
                + " remove it, or begin it with #"), message);
        assertEquals(1, CsvSource.of("mine.csv", "# My cars 2026;;;\nname;price\nx;1\n").rows().size());
    }

    @Test
    void a_file_that_begins_with_its_first_row_is_told_that_the_header_is_missing() {
        String message = missing("Roadster;2014;9000\nRoadster;2013;8000\n");
        assertTrue(message.endsWith("'2014' is no name. If it is a row already, write the header above it"), message);
    }

    private static String missing(String text) {
        CsvSource source = CsvSource.of("mine.csv", text);
        return assertThrows(UnusableFileException.class, () -> source.neededColumns("vehicle", "price")).getMessage();
    }

    @Test
    void a_broken_header_is_refused() throws IOException {
        refused("a,\"b\n1,2\n", "line 1", "header");
    }

    @Test
    void a_header_of_too_many_columns() throws IOException {
        refused("a,".repeat(3000) + "b\n", "line 1", "2000 cells");
    }

    @Test
    void more_than_a_thousand_broken_rows() throws IOException {
        refused("a,b\n" + "1,\"x\" y\n".repeat(1001), "more than 1,000 rows", "line 1002");
    }

    @Test
    void fifty_megabytes_on_one_line_fail_fast() throws IOException {
        byte[] bytes = new byte[50_000_000];
        Arrays.fill(bytes, (byte) 'x');
        Files.write(folder.resolve("long.csv"), bytes);
        assertTimeoutPreemptively(Duration.ofSeconds(20), () -> refused(folder.resolve("long.csv"), "line 1",
                "1,048,576 characters"));
    }

    @Test
    void a_missing_column_lists_those_that_were_found() {
        String message = assertThrows(UnusableFileException.class,
                () -> CsvSource.of("mine.csv", "a,b\n1,2\n").neededColumns("price")).getMessage();
        assertTrue(message.contains("'price' is missing; found the columns a, b"), message);
    }
}
