package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.CommandRun;
import swapworth.InOneLine;

class SwapCommandTest {
    @TempDir
    private Path folder;
    private String err = "";

    private String run(int code, String... arguments) {
        CommandRun ran = CommandRun.of(arguments);
        err = ran.err();
        assertEquals(code, ran.code(), err);
        return ran.out();
    }

    @Test
    void swap_values_the_finished_car_of_the_sample() throws IOException {
        Path page = folder.resolve("page.html");
        Path rows = folder.resolve("rows.csv");
        String text = run(0, "swap", "sample-listings", "--level", "private sold", "--page", page.toString(), "--out", rows.toString());
        assertTrue(text.contains("private sold") && text.contains("reconciled") && text.contains("71,000 mi, read"), text);
        String html = Files.readString(page);
        assertTrue(html.contains("The finished swap") && html.contains("Sell a swap with both distances written down"));
        assertTrue(Files.readString(rows).startsWith("name,vehicle,value,low_80,high_80,"), Files.readString(rows));
        // To the cent, and with what it rests on.
        assertTrue(Files.readString(rows).matches("(?s).*\nthe swap,Sivrette,\\d+(\\.\\d{1,2})?,.*,private sold,2026-10-30,\"3 of 3"
                + " approaches, 85 cars of the line 'Sivrette', 307 in the listings, .*"), Files.readString(rows));
    }

    @Test
    void swap_without_a_finished_car_says_what_is_needed() throws IOException {
        run(1, "swap", folder.toString());
        assertTrue(err.contains("listings.csv"));
        Files.writeString(folder.resolve("listings.csv"), "vehicle,model_year,mileage_mi,price_usd\nSivrette,2014,88000,9800\n");
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle\nmine,donor,Sivrette\n");
        run(1, "swap", folder.toString());
        assertTrue(err.contains("no car of the role 'finished'"));
    }

    @Test
    void swap_says_what_is_missing_where_nothing_is_known_of_the_gear() throws IOException {
        Files.writeString(folder.resolve("listings.csv"),
                "vehicle,model_year,mileage_mi,price_usd\nSivrette,2014,88000,9800\n"
                        + "Sivrette,2016,71000,11900\nVelmarch,2018,54000,17400\n");
        Files.writeString(folder.resolve("cars.csv"),
                "name,role,vehicle,running_gear,model_year,mileage\nmine,finished,Sivrette,eight,2016,71000\n");
        String text = run(0, "swap", folder.toString());
        assertTrue(text.contains("cannot tell") && text.contains("Needed most: three listings of cars with the running gear 'eight'"),
                text);
    }

    @Test
    void a_swap_seen_that_counts_nowhere_is_named_with_the_reason() throws IOException {
        Files.writeString(folder.resolve("listings.csv"), "vehicle,model_year,mileage_mi,price_usd,running_gear\n"
                + "Sivrette,2014,88000,9800,four\nSivrette,2016,71000,11900,four\nVelmarch,2018,54000,17400,six\n");
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,running_gear,gear_line,model_year,mileage,work_value,donor\n"
                + "mine,finished,Sivrette,six,Velmarch,2016,71000,4000,hit\nhit,donor,Velmarch,,,2018,60000,,\n");
        Files.writeString(folder.resolve("partout.csv"), "car,part,goes_to,price\nhit,engine,swap,2500\nhit,gearbox,swap,900\n");
        Files.writeString(folder.resolve("swaps.csv"), "id,vehicle,running_gear,model_year,mileage_mi,price_usd,price_kind\n"
                + "like mine,Sivrette,six,2015,80000,14000,asking\nodd one,Pellowick,six,2013,101000,8900,asking\n");
        String text = InOneLine.of(run(0, "swap", folder.toString()));
        assertTrue(text.contains("1 swap seen"), text);
        assertTrue(text.contains("Swap 'odd one' is not used: no approach that swaps of another body or running gear speak of can tell."),
                text);
        assertTrue(!text.contains("Swap 'like mine' is not used"), text);
    }
}
