package swapworth.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** That a file read piece by piece is the file, from whichever line. */
class FileTextTest {

    @TempDir
    Path folder;

    @Test
    void each_line_begins_where_a_plain_count_of_line_ends_says() {
        SplittableRandom random = new SplittableRandom(4);
        StringBuilder text = new StringBuilder();
        List<Integer> starts = new ArrayList<>(List.of(0));
        for (int i = 0; i < 40_000; i++) {
            text.append("caf\u00e9 \ud83d\ude97".repeat(random.nextInt(3)));
            String end = List.of("\n", "\r\n", "\r").get(random.nextInt(3));
            // A lone return before a line feed would be one line end of two characters.
            text.append(end.equals("\r") ? "\rx" : end);
            starts.add(text.length() - (end.equals("\r") ? 1 : 0));
        }
        FileText file = FileText.of("x.csv", text.toString());
        FileText.Place first = new FileText.Place(0, 1);
        for (int line = 1; line < starts.size(); line += 1 + random.nextInt(4_000)) {
            FileText.Place place = file.lineAfter(first, line);
            assertEquals(line, place.line());
            assertEquals(text.substring(0, starts.get(line - 1)).getBytes(StandardCharsets.UTF_8).length, place.offset());
            assertEquals(text.substring(starts.get(line - 1)), all(file.from(place)));
        }
        assertTrue(file.endsAt(file.lineAfter(first, 1_000_000)));
    }

    @Test
    void rows_behind_a_broken_one_deep_in_a_large_file_are_read_and_lines_keep_their_numbers() {
        StringBuilder text = new StringBuilder("# made for a test\nid,price\n");
        for (int i = 0; i < 60_000; i++) {
            text.append(i == 30_000 ? "c" + i + ",\"12\" in\n" : "c" + i + ",caf\u00e9 " + i + "\r\n");
        }
        CsvSource source = CsvSource.read(written(text.toString().getBytes(StandardCharsets.UTF_8)));
        assertEquals(59_999, source.rows().size());
        assertEquals(1, source.rejected().size());
        assertEquals(30_003, source.rejected().get(0).line());
        assertTrue(source.rejected().get(0).rawText().startsWith("c30000,\"12\" in"), source.rejected().toString());
        assertEquals(60_002, source.rows().get(59_998).line());
        assertEquals("caf\u00e9 59999", source.rows().get(59_998).cell(1));
    }

    @Test
    void a_wrong_byte_deep_in_a_large_file_is_named_with_its_line() {
        byte[] bytes = "id,price\nc1,900\r\n".repeat(50_000).getBytes(StandardCharsets.UTF_8);
        int at = bytes.length - 17 * 5 + 3;
        bytes[at] = (byte) 0xe9;
        UnusableFileException refused = assertThrows(UnusableFileException.class, () -> CsvSource.read(written(bytes)));
        assertTrue(refused.getMessage().contains("line 99991"), refused.getMessage());
    }

    @Test
    void a_wrong_byte_in_a_comment_above_the_header_is_named_with_its_line() {
        byte[] bytes = "# made for a test\n# caf_\nid,price\nc1,900\n".getBytes(StandardCharsets.UTF_8);
        bytes[23] = (byte) 0xe9;
        UnusableFileException refused = assertThrows(UnusableFileException.class, () -> CsvSource.read(written(bytes)));
        assertTrue(refused.getMessage().contains("line 2"), refused.getMessage());
    }

    @Test
    void a_header_behind_long_comments_and_a_byte_order_mark_is_found() {
        String text = "\ufeff" + "# made for a test \ufffd\n".repeat(5_000) + "sep=;\nid;price\nc1;900\n";
        CsvSource source = CsvSource.read(written(text.getBytes(StandardCharsets.UTF_8)));
        assertEquals(List.of("id", "price"), source.header());
        assertEquals(5_003, source.rows().get(0).line());
        assertEquals(List.of("c1", "900"), source.rows().get(0).cells());
    }

    @Test
    void a_header_longer_than_the_first_bytes_is_read_whole() {
        StringBuilder header = new StringBuilder("a,b;c");
        for (int i = 0; i < 1_500; i++) {
            header.append(";column number ").append(i);
        }
        CsvSource source = CsvSource.read(written((header + "\n1;2\n").getBytes(StandardCharsets.UTF_8)));
        assertEquals(';', source.separator());
        assertEquals(1_502, source.header().size());
    }

    private Path written(byte[] bytes) {
        try {
            return Files.write(folder.resolve("listings.csv"), bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String all(Reader reader) {
        try (reader) {
            StringBuilder text = new StringBuilder();
            char[] piece = new char[1000];
            for (int size = reader.read(piece, 3, 997); size >= 0; size = reader.read(piece, 3, 997)) {
                text.append(piece, 3, size);
            }
            return text.toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void what_comes_through_a_pipe_is_read_once_and_whole() throws IOException, InterruptedException {
        Path pipe = folder.resolve("pipe");
        try {
            assumeTrue(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0, "this machine makes no pipes");
        } catch (IOException e) {
            assumeTrue(false, "this machine makes no pipes");
        }
        String rows = "a,b\n" + "1,\"x\ny\"\n".repeat(30_000);
        Thread writer = new Thread(() -> {
            try {
                Files.writeString(pipe, rows);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        writer.start();
        CsvSource source = CsvSource.read(pipe);
        writer.join();
        assertEquals(List.of("a", "b"), source.header());
        assertEquals(30_000, source.rows().size());
    }
}
