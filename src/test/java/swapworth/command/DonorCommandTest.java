package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.InOneLine;

class DonorCommandTest {
    @TempDir
    Path folder;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... arguments) {
        return Main.run(new PrintStream(out, true, StandardCharsets.UTF_8), new PrintStream(err, true, StandardCharsets.UTF_8), arguments);
    }

    @Test
    void landed_shows_every_line_and_the_highest_bid_for_a_target() throws IOException {
        Files.writeString(folder.resolve("cars.csv"),
                "name,vehicle,seller,planned_bid,price_includes,runs\nhit,Velmarch,auction,2000,neither,drives\n");
        Files.writeString(folder.resolve("fees.csv"),
                "table,kind,from,to,flat,percent\npremium,fee,0,1999,230,\npremium,fee,2000,,285,\ntax,tax,,,,5\n");
        Path lines = folder.resolve("lines-out.csv");
        assertEquals(0, run("landed", folder.toString(), "--target", "2400", "--out", lines.toString(), "--page",
                folder.resolve("page.html").toString()), err.toString());
        String text = out.toString(StandardCharsets.UTF_8);
        assertTrue(text.contains("2,385.00"), text);
        // By hand: 2,014 + 285 + 100.70 = 2,399.70; one more passes 2,400.
        assertTrue(text.contains("2,014.00") && text.contains("2,399.70"), text);
        assertTrue(Files.readString(lines).contains("hit,landed cost,,2385"), Files.readString(lines));
        assertTrue(Files.readString(lines).contains("hit,highest bid,,2014,\"within 2,400.00; landed 2,399.70\""),
                Files.readString(lines));
        assertTrue(Files.readString(folder.resolve("page.html")).contains("What each car costs at the door"));
    }

    @Test
    void the_highest_bid_shaded_or_not_is_told_to_machines_too_and_so_is_that_there_is_none() throws IOException {
        Path lines = folder.resolve("bids.csv");
        assertEquals(0, run("landed", "sample-listings", "--target", "6000", "--out", lines.toString()));
        assertTrue(Files.readString(lines).matches("(?s).*\nfront hit,highest bid,,4350,\"within [^\n]*\nfront hit,shaded bid,,3\\d\\d0,"
                + ".*"), Files.readString(lines));
        assertEquals(0, run("landed", "sample-listings", "--target", "1", "--out", lines.toString()));
        assertTrue(Files.readString(lines).contains("front hit,highest bid,,,no bid that can be made is as low as 1"),
                Files.readString(lines));
    }

    @Test
    void without_listings_costs_are_counted_in_the_currency_of_the_cars() throws IOException {
        Files.writeString(folder.resolve("cars.csv"), "name,vehicle,price\na,Velmarch,EUR 2000\nb,Velmarch,2500 \u20ac\nc,Velmarch,3000\n");
        Files.writeString(folder.resolve("fees.csv"), "table,kind,from,to,flat,percent\npremium,fee,,,200,\n");
        assertEquals(0, run("landed", folder.toString()), err.toString());
        String text = out.toString(StandardCharsets.UTF_8);
        assertTrue(text.contains("2,200.00") && text.contains("2,700.00") && text.contains("3,200.00"), text);
        assertTrue(text.contains("EUR") && !text.contains("USD") && !text.contains("Without a price"), text);
        out.reset();
        assertEquals(0, run(folder.toString()), err.toString());
        assertTrue(out.toString(StandardCharsets.UTF_8).contains("Landed cost of each car, EUR"), out.toString(StandardCharsets.UTF_8));
    }

    @Test
    void a_target_that_no_bid_fits_is_answered_with_the_reason() {
        String sample = Path.of("sample-listings").toString();
        for (String target : new String[] {"1", "50", "300", "250000"}) {
            assertEquals(0, run("landed", sample, "--target", target), err.toString(StandardCharsets.UTF_8));
        }
        String text = out.toString(StandardCharsets.UTF_8);
        assertTrue(text.contains("no bid that can be made is as low as 1"), text);
        assertTrue(text.contains("in the yard, more than 300"), text);
    }

    @Test
    void beside_the_highest_bids_stands_what_such_cars_go_for() throws IOException {
        Path page = folder.resolve("bids.html");
        assertEquals(0, run("landed", Path.of("sample-listings").toString(), "--target", "6000", "--page", page.toString()));
        String text = out.toString(StandardCharsets.UTF_8);
        int bids = text.indexOf("Highest bid within a target");
        int worth = text.indexOf("Cars in play, USD");
        assertTrue(bids >= 0 && worth > bids && text.indexOf("Landed cost of") > worth, text);
        assertTrue(Files.readString(page).contains("What such cars go for"));
        assertTrue(Files.readString(page).contains("no appraisal, no offer and no advice"), "beside a value stands what it is not");
    }

    @Test
    void landed_without_its_files_says_what_is_needed() {
        assertEquals(1, run("landed", folder.toString()));
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("there is no cars.csv"), err.toString(StandardCharsets.UTF_8));
    }

    @Test
    void partout_shows_what_the_parts_bring_with_and_without_listings() throws IOException {
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,runs,damage\nhit,donor,Velmarch,drives,front\n");
        Files.writeString(folder.resolve("partout.csv"), "car,part,goes_to\nhit,engine,swap\nhit,wheels,sell\nhit,left door,sell\n");
        Files.writeString(folder.resolve("parts.csv"), "part,price\nengine,2000\nwheels,300\nalloys,280\n");
        Path parts = folder.resolve("parts-out.csv");
        Path page = folder.resolve("page.html");
        assertEquals(0, run("partout", folder.toString(), "--out", parts.toString(), "--page", page.toString()),
                err.toString(StandardCharsets.UTF_8));
        String text = out.toString(StandardCharsets.UTF_8);
        assertTrue(text.contains("What the parts of hit bring") && text.contains("left door (no price: no offer in parts.csv names it"),
                text);
        assertTrue(Files.readString(parts).contains("hit,wheels,1,"), Files.readString(parts));
        assertTrue(Files.readString(page).contains("Catalysts are not counted"));
        assertEquals(0, run("partout", Path.of("sample-listings").toString()), err.toString(StandardCharsets.UTF_8));
        assertTrue(out.toString(StandardCharsets.UTF_8).contains("What the parts of front hit bring"));
    }

    @Test
    void a_part_that_is_gone_is_not_asked_for_a_price() throws IOException {
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,runs,damage\nhit,donor,Velmarch,drives,front\n");
        Files.writeString(folder.resolve("partout.csv"),
                "car,part,goes_to,state,chance_good\nhit,bonnet,sell,gone,\nhit,radio,sell,,0\nhit,wheels,sell,,\nhit,left door,sell,,\n");
        Files.writeString(folder.resolve("parts.csv"), "part,price\nwheels,300\nalloys,280\n");
        assertEquals(0, run("partout", folder.toString()), err.toString(StandardCharsets.UTF_8));
        String text = InOneLine.of(out.toString(StandardCharsets.UTF_8));
        assertTrue(text.contains("Not in the sum: bonnet (gone); radio (gone); left door (no price: no offer"), text);
    }

    @Test
    void partout_without_its_file_says_what_is_needed() throws IOException {
        Files.writeString(folder.resolve("cars.csv"), "name,vehicle\nhit,Velmarch\n");
        assertEquals(1, run("partout", folder.toString()));
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("there is no partout.csv"), err.toString(StandardCharsets.UTF_8));
    }
}
