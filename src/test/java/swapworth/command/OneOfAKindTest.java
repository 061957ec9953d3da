package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.InOneLine;

/** A young folder, in which there is one of many things: what is one is told of as one. */
class OneOfAKindTest {
    private static final List<String> MANY = List.of("1 of the 1 car", "of 1 none", "not all of their", "lines and running gears");
    private static final Pattern ONE = Pattern.compile(
            "(?<![\\d.,:-])1 (other )?(cars|offers|swaps|days|prices|rows|parts|lines|times)\\b");

    @TempDir
    Path folder;
    private String text;
    private String page;

    @BeforeEach
    void files() throws IOException {
        StringBuilder rows = new StringBuilder("id,seen_on,vehicle,model_year,mileage_mi,price_usd,seller\n");
        for (int i = 0; i < 8; i++) {
            rows.append("ad ").append(i).append(",2026-01-04,Quorvane,").append(2011 + i).append(',').append(150_000 - 14_000 * i)
                    .append(',').append(4_000 + 1_100 * i + 170 * (i % 3)).append(",private\n");
        }
        rows.append("h1,2026-01-04,Hestrel,2015,80000,5000,private\nh2,2026-01-04,Hestrel,2016,70000,9000,private\n")
                .append("p1,2026-01-04,Pellowick,2016,70000,8000,private\nad 7,2026-01-11,Quorvane,2018,52000,11500,private\n");
        write("listings.csv", rows.toString());
        write("cars.csv", "name,role,vehicle,model_year,mileage_mi,planned_bid,price,seller,runs,damage\n"
                + "hit,donor,Hestrel,2016,71000,3000,,auction,drives,front\nopen,recipient,Quorvane,2014,100000,,7000,private,drives,\n"
                + "tired,recipient,Quorvane,2012,130000,,4000,private,drives,\nmine,finished,Quorvane,2014,100000,,,private,drives,\n");
        write("fees.csv", "table,kind,flat,per_day,free_days,seller\npremium,fee,300,,,auction\nyard,storage,,40,2,\n");
        write("partout.csv", "car,part,goes_to\nhit,engine,swap\nhit,wheels,sell\nopen,wheels,sell\n");
        write("parts.csv", "part,price,seen_on\nwheels,400,2026-01-04\n");
        write("swaps.csv", "vehicle,running_gear,model_year,mileage_mi,price_usd,price_kind\nQuorvane,six,2014,90000,12000,asking\n");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Path html = folder.resolve("page.html");
        PrintStream to = new PrintStream(out, true, StandardCharsets.UTF_8);
        assertEquals(0, Main.run(to, to, folder.toString(), "--page", html.toString()), out.toString(StandardCharsets.UTF_8));
        text = InOneLine.of(out.toString(StandardCharsets.UTF_8));
        page = InOneLine.of(Files.readString(html).replaceAll("<[^>]*>", " ").replace("&#39;", "'"));
    }

    private void write(String name, String content) throws IOException {
        Files.writeString(folder.resolve(name), content);
    }

    private static void hasNoneOfMany(String words) {
        assertFalse(ONE.matcher(words).find(), () -> ONE.matcher(words).results()
                .map(m -> words.substring(Math.max(0, m.start() - 60), Math.min(words.length(), m.end() + 30))).toList().toString());
        for (String many : MANY) {
            assertFalse(words.contains(many), many);
        }
    }

    @Test
    void no_sentence_of_the_terminal_or_the_page_tells_of_one_as_of_many() {
        hasNoneOfMany(text);
        hasNoneOfMany(page);
    }

    @Test
    void what_is_one_is_told_in_short() {
        for (String words : List.of("and 1 cannot be told", "by 1 car of its line", "by 1 offer of parts",
                "; 1 more cannot be compared, for not all of its parts, fees or gear are counted", "; 1 swap of other people")) {
            assertTrue(text.contains(words), words + " in " + text);
        }
        assertTrue(page.contains("40 a day for 1 day after 2 free"));
        assertTrue(page.contains("The 1 car seen more than once was cut."), "price cuts");
        assertTrue(page.contains("1 other car of this line"), "comparables");
    }
}
