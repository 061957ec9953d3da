package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** That the first look at a pair gives none away that comes to the points asked for. */
class CandidatesTest extends ReadingListings {
    private static final double LEAST = 5;
    private static final String[] NOTES = {"", "", "one owner", "a long note that two sellers seldom write alike", "rust"};

    @Test
    void the_same_pairs_reach_the_points_as_if_each_were_scored() {
        int reached = 0;
        for (int seed = 1; seed <= 6; seed++) {
            Advertisements line = line(new SplittableRandom(seed), 700);
            Orders orders = new Orders(line);
            PairScore first = new PairScore(line, orders);
            int[] carOf = IntStream.range(0, line.count()).toArray();
            for (PairScore score : new PairScore[] {first, first.learning(30, 10, carOf)}) {
                TreeSet<Long> expected = new TreeSet<>();
                for (int a = 0; a < line.count(); a++) {
                    for (int b = a + 1; b < line.count(); b++) {
                        if (isCompared(line, a, b) && !score.forbidden(a, b) && score.points(a, b) >= LEAST) {
                            expected.add((long) a << 32 | b);
                        }
                    }
                }
                TreeSet<Long> found = new TreeSet<>();
                Candidates.of(line, orders, score, LEAST, (a, b) -> {
                    if (score.points(a, b) >= LEAST) {
                        assertTrue(score.most(a, b, LEAST) >= LEAST);
                        found.add((long) a << 32 | b);
                    }
                });
                assertEquals(expected, found);
                reached += found.size();
            }
        }
        assertTrue(reached > 500, reached + " pairs");
    }

    /**
     * What candidates are said to be: equal mileages; within a model year equal prices, or mileages that lie near each other; such
     * mileages of a model year and a year of registration next to it.
     */
    private static boolean isCompared(Advertisements of, int a, int b) {
        boolean near = Math.abs(of.lastMiles[a] - of.lastMiles[b]) <= 3000;
        return of.lastMiles[a] == of.lastMiles[b]
                || of.year(a) == of.year(b) && (near || Math.round(of.lastPrice[a]) == Math.round(of.lastPrice[b]))
                || near && of.year(a) < 0 != of.year(b) < 0 && Math.abs(of.year(a) + of.year(b)) <= 1;
    }

    /** Advertisements of one or two sightings, every other one a car that has been driven on since its last one. */
    private Advertisements line(SplittableRandom random, int count) {
        StringBuilder text = new StringBuilder("id,seen_on,vehicle,trim,model_year,first_registered,mileage_mi,price_usd,region,note\n");
        String car = "";
        String region = "";
        int year = 0;
        int day = 0;
        int miles = 0;
        int price = 0;
        for (int i = 0; i < count; i++) {
            if (i % 2 == 0) {
                car = "Roadster," + pick(random, "", "S", "L") + ",";
                year = 2010 + random.nextInt(3);
                region = pick(random, "", "North", "South", "East");
                day = random.nextInt(300);
                miles = 5_000 + random.nextInt(140_000);
                price = 5000 + 50 * random.nextInt(200);
            } else {
                int days = random.nextInt(300);
                day += days;
                miles += random.nextInt(1 + 10 * days);
                price -= random.nextInt(3) * random.nextInt(400);
            }
            String years = random.nextInt(4) > 0 ? year + ",," : "," + (year + random.nextInt(3) - 1) + ",";
            for (int sighting = random.nextInt(5) == 0 ? 0 : 1; sighting < 2; sighting++) {
                text.append("id").append(i).append(',')
                        .append(random.nextInt(20) == 0 ? "" : LocalDate.of(2024, 1, 1).plusDays(day)).append(',').append(car).append(years)
                        .append(random.nextInt(20) == 0 ? "" : miles).append(',').append(price).append(',')
                        .append(random.nextInt(9) == 0 ? "West" : region).append(',').append(pick(random, NOTES)).append('\n');
                if (sighting == 0) {
                    day += random.nextInt(60);
                    miles += random.nextInt(3) * 400 - (random.nextInt(10) == 0 ? 900 : 0);
                    price -= 50 * random.nextInt(4);
                }
            }
        }
        ListingColumns columns = StoredListings.of(read(text.toString()).listings()).columns();
        int[] first = SameId.firsts(columns.id, columns.size());
        int[] begin = new int[count + 1];
        int at = 0;
        for (int row = 0; row < columns.size(); row++) {
            if (first[row] == row) {
                begin[at++] = row;
            }
        }
        begin[at] = columns.size();
        int[] rows = IntStream.range(0, columns.size()).toArray();
        for (int i = 0; i < at; i++) {
            columns.sortByDay(rows, begin[i], begin[i + 1]);
        }
        return new Advertisements(columns, new Advertisements.Rows(rows, Arrays.copyOf(begin, at + 1)),
                IntStream.range(0, at).toArray());
    }

    private static String pick(SplittableRandom random, String... words) {
        return words[random.nextInt(words.length)];
    }
}
