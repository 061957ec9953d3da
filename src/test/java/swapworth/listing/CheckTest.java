package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import swapworth.table.Table;

class CheckTest extends ReadingListings {

    private static final String FILE = "id,seen_on,vehicle,model_year,mileage_mi,price_usd,title,outcome,Boot\n"
            + "a,2024-01-01,Roadster,2010,50000,9000,clean,,wide\n"
            + "a,2024-02-01,Roadster,2010,50000,8550,clean,gone,\n"
            + "b,2024-01-01,Saloon,2012,40000,7000,murky,sold,\n"
            + "c,2024-01-01,Saloon,2012,40000,12.500,clean,,\n"
            + "d,2024-01-01,Saloon,2012,40000,0,clean,,\n"
            + ",,,,,,,,\n# a comment\n";

    @Test
    void the_counts_stand_first_and_add_up() {
        Check check = Check.of(read(FILE));
        assertTrue(check.text().startsWith("Rows of the files\n"
                + "  6 rows: 3 used, 1 set aside, 1 rejected, 1 blank; beside them 1 comment line.\n"
                + "  2 cars. Prices in USD, distances in mi.\n"), check.text());
    }

    @Test
    void each_table_that_has_rows_is_shown() {
        assertEquals(List.of("Rows of the files", "Questions", "Columns", "Words that were not understood",
                "Rejected: could not be read",
                "Set aside: read, but not for use", "Model lines", "Price cuts"), Check.of(read(FILE)).tables().stream()
                .map(Table::title).toList());
    }

    @Test
    void columns_say_what_they_were_taken_for() {
        String csv = Check.of(read(FILE)).columns().csv();
        assertTrue(csv.contains("listings.csv,mileage_mi,mileage,mi,5,5\r\n"), csv);
        assertTrue(csv.contains("listings.csv,price_usd,price,USD,5,5\r\n"), csv);
        assertTrue(csv.contains("listings.csv,Boot,a further column,,1,5\r\n"), csv);
    }

    @Test
    void cuts_and_histories_are_told_by_car() {
        Check check = Check.of(read(FILE));
        assertEquals("car,line,seen,seen_again,before,after,change\r\na,Roadster,2024-01-01,2024-02-01,9000,8550,-5\r\n",
                check.priceCuts().csv());
        assertEquals("car,line,sightings,first_seen,last_seen,days_on_offer,first_price,last_price,cuts,outcome\r\n"
                + "a,Roadster,2,2024-01-01,2024-02-01,31,9000,8550,1,gone\r\n"
                + "b,Saloon,1,2024-01-01,2024-01-01,0,7000,7000,0,sold\r\n", check.cars().csv());
    }

    // By hand: 8,000 francs at 1.05 are 8,400; 8,300 are 8,715, which is 3.75 % more. 11,500 to 11,000 is 4.35 % less.
    @Test
    void a_rate_that_moved_is_no_price_cut() {
        write("rates.csv", "date,from,to,rate\n2025-01-01,CHF,EUR,1.10\n2025-03-01,CHF,EUR,1.05\n");
        ListingsRead read = read("id,seen_on,vehicle,model_year,mileage_km,price,currency\nbase,2025-01-20,Roadster,2011,90000,7000,EUR\n"
                + "base2,2025-01-21,Roadster,2012,91000,7100,EUR\nbase3,2025-01-21,Roadster,2012,99000,7100,EUR\n"
                + "base4,2025-01-21,Roadster,2014,41000,9100,EUR\nbase5,2025-01-21,Roadster,2015,39000,9900,EUR\n"
                + "up,2025-01-20,Roadster,2010,80000,8000,CHF\nup,2025-03-20,Roadster,2010,80000,8300,CHF\n"
                + "down,2025-01-20,Roadster,2013,50000,11500,CHF\ndown,2025-03-20,Roadster,2013,50000,11000,CHF\n");
        Car up = read.cars().stream().filter(car -> car.name().equals("up")).findFirst().orElseThrow();
        assertEquals(3.75, up.priceChanges().get(0).percent(), 1e-9);
        assertEquals(8_400, up.priceChanges().get(0).before(), 1e-9);
        assertEquals(List.of(), up.priceCuts());
        Car down = read.cars().stream().filter(car -> car.name().equals("down")).findFirst().orElseThrow();
        assertEquals(-100 * 500 / 11_500.0, down.priceCuts().get(0).percent(), 1e-9);
    }

    @Test
    void the_note_on_joins_says_what_a_pair_needs() {
        String note = Check.of(read(FILE)).joins().notes().toString();
        assertTrue(note.contains("7 points, or 5 where neither has another partner within 1.5 points of it"), note);
    }

    @Test
    void a_line_counts_its_cars_and_how_they_ended() {
        assertEquals("line,cars,sightings,first_seen,last_seen,sold,withdrawn,gone,open\r\n"
                + "Roadster,1,2,2024-01-01,2024-02-01,0,0,1,0\r\nSaloon,1,1,2024-01-01,2024-01-01,1,0,0,0\r\n",
                Check.of(read(FILE)).lines().csv());
    }

    @Test
    void a_word_a_letter_away_from_a_known_one_has_a_hint() {
        String csv = Check.of(read("vehicle,year,price,title\nA,2010,1000,clena\nA,2011,1000,clean\nA,2012,1000,murky\n")).words().csv();
        assertTrue(csv.startsWith("column,word,rows,first_seen,known_words,did_you_mean\r\n"), csv);
        assertTrue(csv.contains("title,clena,1,listings.csv:2,\"clean, rebuilt, salvage, parts only\",clean\r\n"), csv);
        assertTrue(csv.contains("title,murky,1,listings.csv:4,\"clean, rebuilt, salvage, parts only\",\r\n"), csv);
    }
}
