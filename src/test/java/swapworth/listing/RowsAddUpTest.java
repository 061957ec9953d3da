package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import swapworth.reading.RowProblem;

/** Used, set aside, rejected and blank add up to the rows, whatever a file holds. */
class RowsAddUpTest extends ReadingListings {

    private static final String[] CELLS = {"9000", "12.500", "$8,000 OBO", "", "0", "-1", "abc", "2010", "2024-01-05",
            "03/04/2024", "85k",
        "Roadster", "Saloon", "a1", "a2", "=1+1", "<b>x</b>", "n/a", "1E5", "50000 km", "auction", "x\u0007y", "\u00e9", "340t",
        "'",
        "two words", "1,000"};

    @Test
    void one_line_rows_add_up_in_two_hundred_files() {
        Random random = new Random(7);
        for (int world = 0; world < 200; world++) {
            int lines = random.nextInt(60);
            StringBuilder text = new StringBuilder("id,seen_on,vehicle,model_year,mileage_mi,price_usd,seller,damage\n");
            for (int i = 0; i < lines; i++) {
                text.append(line(random)).append('\n');
            }
            ListingsRead read = read(text.toString());
            assertEquals(lines, read.counts().rows() + read.counts().comments(), text::toString);
            agrees(read);
        }
    }

    /** One physical line: a good row, a random one, a blank, a comment, or one with too many cells. */
    private static String line(Random random) {
        int kind = random.nextInt(10);
        if (kind == 0) {
            return random.nextBoolean() ? "" : ",,,";
        }
        if (kind == 1) {
            return "# left out";
        }
        if (kind < 5) {
            return "c" + random.nextInt(20) + ",2024-01-" + (10 + random.nextInt(15)) + ",Roadster," + (2005 + random.nextInt(10))
                    + ","
                    + random.nextInt(200_000) + "," + (3000 + random.nextInt(9000)) + ",private,none";
        }
        StringBuilder row = new StringBuilder("row");
        int cells = kind == 9 ? 9 : random.nextInt(8);
        for (int i = 0; i < cells; i++) {
            row.append(',').append(quoted(CELLS[random.nextInt(CELLS.length)], random));
        }
        return row.toString();
    }

    private static String quoted(String cell, Random random) {
        return cell.indexOf(',') >= 0 || random.nextInt(4) == 0 ? "\"" + cell + "\"" : cell;
    }

    @Test
    void broken_quotes_lose_no_line() {
        Random random = new Random(11);
        for (int world = 0; world < 100; world++) {
            int lines = 1 + random.nextInt(40);
            StringBuilder text = new StringBuilder("id,vehicle,model_year,price_usd,seller\n");
            for (int i = 0; i < lines; i++) {
                String quote = random.nextInt(8) == 0 ? "\"" : "";
                text.append("c").append(i).append(",Roadster,2010,").append(9000 + i).append(',').append(quote)
                        .append("private\n");
            }
            ListingsRead read = read(text.toString());
            assertEquals(lines, read.counts().rows(), text::toString);
            assertEquals(text.chars().filter(c -> c == '"').count(), read.counts().rejected(), text::toString);
            agrees(read);
        }
    }

    private static void agrees(ListingsRead read) {
        assertEquals(read.counts().used(), read.listings().size());
        assertEquals(read.counts().setAside(), read.setAside().size());
        assertEquals(read.counts().rejected(), read.rejected().size());
        assertEquals(read.counts().used(), read.cars().stream().mapToInt(car -> car.sightings().size()).sum());
        Set<Integer> lines = new HashSet<>();
        for (Listing listing : read.listings()) {
            assertTrue(lines.add(listing.origin().line()));
        }
        for (RowProblem problem : read.setAside()) {
            assertTrue(lines.add(problem.line()));
        }
        for (RowProblem problem : read.rejected()) {
            assertTrue(lines.add(problem.line()));
        }
    }
}
