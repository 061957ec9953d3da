package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.CommandRun;

/** The sample by somebody who counts in kilometres: the same figures, all taken for km. */
class FolderInKmTest {
    private static final Pattern IN_MILES = Pattern.compile(".{0,40}\\b\\d[\\d,.]*(\\s|&nbsp;)(mi|miles)\\b.{0,20}");

    @TempDir
    private Path folder;

    @BeforeEach
    void kilometres() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("sample-listings"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".csv")).toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
        change("words.csv", "mileage unit,mi", "mileage unit,km");
        change("fees.csv", "per_mile", "per_km");
        // What the owner writes of the cluster is text of his own.
        change("cars.csv", "it shows 44,000 mi; the car's own showed 71,000 mi", "it shows 44,000 km; the car's own showed 71,000 km");
    }

    private void change(String file, String from, String to) throws IOException {
        String text = Files.readString(folder.resolve(file));
        assertTrue(text.contains(from), file);
        Files.writeString(folder.resolve(file), text.replace(from, to));
    }

    private String run(String... arguments) {
        CommandRun ran = CommandRun.of(arguments);
        assertEquals(0, ran.code(), ran.err());
        return ran.out();
    }

    /** An assumption is stated in the unit in which its row of assumptions.csv counts. */
    private static void noMiles(String text) {
        Matcher miles = IN_MILES.matcher(text.replaceAll("(per|each) 10,000 mi(les)?\\b", ""));
        assertEquals("", miles.find() ? miles.group() : "");
    }

    @Test
    void what_a_buyer_a_lender_and_an_insurer_read_gives_both_distances_in_km_as_they_were_written() throws IOException {
        for (String reader : List.of("buyer", "lender", "insurer")) {
            Path page = folder.resolve(reader + ".html");
            run("project", folder.toString(), "--for", reader, "--page", page.toString());
            String html = Files.readString(page);
            assertTrue(html.contains("71,000 km, read") && html.contains("44,000 km, recorded"), reader);
            noMiles(html);
        }
    }

    @Test
    void the_whole_folder_shows_no_distance_of_a_car_in_miles() throws IOException {
        Path page = folder.resolve("page.html");
        noMiles(run(folder.toString(), "--page", page.toString()));
        String html = Files.readString(page);
        assertTrue(html.contains("chassis at 71,000 km") && html.contains("a km for 38 km"), "caps and freight");
        assertTrue(html.contains("% per 10,000 km"), "terms of the model");
        noMiles(html);
    }

    @Test
    void the_rows_of_a_finished_swap_name_the_unit_in_their_header() throws IOException {
        Path rows = folder.resolve("rows.csv");
        noMiles(run("swap", folder.toString(), "--out", rows.toString()));
        List<String> lines = Files.readAllLines(rows);
        assertTrue(lines.get(0).contains(",mileage_km,gear_mileage_km,"), lines.get(0));
        assertTrue(lines.get(1).contains(",71000,44000,"), lines.get(1));
    }
}
