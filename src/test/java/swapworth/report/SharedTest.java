package swapworth.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.listing.CarFacts;
import swapworth.project.Undertaking;
import swapworth.report.ProjectFile.Reader;

/** That a comparable is said to share with the finished car what it shares, and nothing else. */
class SharedTest {
    private static final CarFacts SWAP = CarFacts.of("Sivrette").body("Sivrette open").runningGear("six 3.2").build();

    @Test
    void a_car_shares_the_body_the_running_gear_both_or_neither() {
        Shared shared = Shared.with(SWAP, Optional.empty(), List.of(CarFacts.of("Galdrise").build()));
        assertEquals("body", shared.by(CarFacts.of("sivrette").runningGear("four 2.0").build()));
        assertEquals("body", shared.by(CarFacts.of("Sivrette Club").body("sivrette open").build()));
        assertEquals("running gear", shared.by(CarFacts.of("Velmarch").body("Velmarch saloon").runningGear("Six 3.2").build()));
        assertEquals("body and running gear", shared.by(CarFacts.of("Sivrette").runningGear("six 3.2").build()));
        assertEquals("neither body nor running gear", shared.by(
                CarFacts.of("Drisque").body("Drisque coupe").runningGear("four 2.0").build()));
        assertEquals("line of the factory equivalent: running gear", shared.by(CarFacts.of("Galdrise").runningGear("six 3.2").build()));
        assertEquals("line of the factory equivalent", shared.by(CarFacts.of("Galdrise").build()));
        assertEquals("neither body nor running gear", shared.by(CarFacts.of("Velmarch").build()), "what is not stated is not shared");
    }

    @Test
    void where_no_row_names_running_gears_the_line_that_gave_it_shares_it() {
        Shared shared = Shared.with(CarFacts.of("Sivrette").build(), Optional.of("Velmarch"), List.of());
        assertEquals("running gear", shared.by(CarFacts.of("Velmarch").build()));
        assertEquals("neither body nor running gear", shared.by(CarFacts.of("Galdrise").build()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"six 3.2", ""})
    void on_the_page_a_car_of_another_line_is_not_called_the_body_and_no_car_stands_twice(String gear,
            @TempDir Path folder) throws IOException {
        for (String name : List.of("lines.csv", "words.csv")) {
            Files.copy(Path.of("sample-listings", name), folder.resolve(name));
        }
        // Without its running gear lines.csv fills in that of the stock car; the line of the gear still says which one is in it.
        List<String> cars = Files.readAllLines(Path.of("sample-listings", "cars.csv"));
        Files.write(folder.resolve("cars.csv"),
                cars.stream().map(row -> row.contains(",finished,") ? row.replaceFirst("six 3.2", gear) : row).toList());
        // Few listings, most of them of the lines of the gear: then these are among the cars that tell most.
        List<String> all = Files.readAllLines(Path.of("sample-listings", "listings.csv"));
        StringBuilder few = new StringBuilder(all.get(0)).append('\n');
        int bodies = 0;
        int others = 0;
        for (String row : all.subList(1, all.size())) {
            boolean body = row.contains("Sivrette");
            boolean sound = row.contains("Velmarch") && row.contains(",clean,");
            if (body && bodies++ < 3 || sound && others++ < 30 || row.contains("Galdrise") && others++ < 12) {
                few.append(row).append('\n');
            }
        }
        Files.writeString(folder.resolve("listings.csv"), few);
        String html = ProjectFile.of(folder, Undertaking.of(folder), Reader.BUYER).html();
        String table = html.substring(html.indexOf("Comparables: the cars that tell most"));
        table = table.substring(0, table.indexOf("</table>"));
        Matcher row = Pattern.compile("<tr><t[dh][^>]*>(Sivrette|Velmarch|Galdrise)</t[dh]><td[^>]*>([^<]*)</td>").matcher(table);
        int velmarch = 0;
        int rows = 0;
        while (row.find()) {
            rows++;
            velmarch += row.group(1).equals("Velmarch") ? 1 : 0;
            assertEquals(row.group(1).equals("Sivrette") ? "body" : row.group(1).equals("Velmarch") ? "running gear"
                    : "line of the factory equivalent: running gear", row.group(2), table);
        }
        assertTrue(rows >= 6 && velmarch > 0, table);
        assertFalse(table.contains("compared for"), table);
    }
}
