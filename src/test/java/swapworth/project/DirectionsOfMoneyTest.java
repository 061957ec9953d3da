package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.statistics.Quantiles;

/** Which way forecasts and alternatives move when one row is changed, in random ledgers: by that change, and by no chance beside it. */
class DirectionsOfMoneyTest {
    private static final int SEEDS = 4;
    @TempDir
    private Path folder;
    private List<String> rows = List.of();

    private void random(int seed) {
        Random random = new Random(seed);
        rows = new ArrayList<>();
        for (int k = 0; k < 4 + random.nextInt(5); k++) {
            rows.add(row("paid " + k, "part", "", "2026-0" + (3 + random.nextInt(5)) + "-11", "", 50 + random.nextInt(3000), 0, 0));
        }
        for (int k = 0; k < 3 + random.nextInt(4); k++) {
            double likely = 100 + random.nextInt(3000);
            rows.add(row("to come " + k, List.of("part", "labour", "inspection").get(random.nextInt(3)), "estimate", "2026-09-0" + (1 + k),
                    "2026-1" + random.nextInt(3) + "-05", likely, likely * (0.6 + 0.3 * random.nextDouble()),
                    likely * (1.2 + random.nextDouble())));
        }
        rows.add(row("left over", "part sold", "estimate", "2026-09-01", "2026-11-20", 900, 600, 1300));
    }

    private static String row(String note, String category, String status, String date, String due, double likely, double low,
            double high) {
        return String.format(Locale.ROOT, "%s,%s,%s,%s,%s,%s,%.2f,%s,%s", date, note, category, category.equals("part sold") ? "in" : "",
                status, due, likely, low > 0 ? String.format(Locale.ROOT, "%.2f", low) : "", high > 0 ? String.format(Locale.ROOT, "%.2f",
                        high) : "");
    }

    private Forecast forecast(String... more) throws IOException {
        List<String> all = new ArrayList<>(List.of("date,note,category,direction,status,due,amount,low,high"));
        all.addAll(rows);
        all.addAll(List.of(more));
        Files.write(folder.resolve("ledger.csv"), all);
        Files.writeString(folder.resolve("words.csv"), "column,word,means\n*,currency,USD\n");
        return Forecast.of(Ledger.read(folder.resolve("ledger.csv")));
    }

    private static double spread(double[] draws) {
        return Quantiles.of(draws, 0.9) - Quantiles.of(draws, 0.1);
    }

    @Test
    void what_is_paid_or_agreed_more_moves_every_draw_by_its_amount() throws IOException {
        for (int seed = 0; seed < SEEDS; seed++) {
            random(seed);
            double[] before = forecast().total();
            double[] paid = forecast(row("one more", "part", "", "2026-07-20", "", 500, 0, 0)).total();
            double[] agreed = forecast(row("one more", "part", "committed", "2026-07-20", "2026-10-03", 500, 0, 0)).total();
            for (int i = 0; i < before.length; i++) {
                assertEquals(before[i] + 500, paid[i], 1e-6, "seed " + seed);
                assertEquals(before[i] + 500, agreed[i], 1e-6, "seed " + seed);
            }
        }
    }

    @Test
    void a_higher_estimate_raises_every_draw_that_it_is_in() throws IOException {
        for (int seed = 0; seed < SEEDS; seed++) {
            random(seed);
            double[] before = new double[10_000];
            for (double likely : new double[] {500, 505, 600, 900, 2000}) {
                double[] now = forecast(row("one more", "labour", "estimate", "2026-07-20", "2026-10-03", likely, 0.8 * likely,
                        1.5 * likely)).total();
                for (int i = 0; i < now.length; i++) {
                    assertTrue(now[i] >= before[i], "seed " + seed + " at " + likely + ": " + now[i] + " after " + before[i]);
                }
                before = now;
            }
        }
    }

    @Test
    void a_wider_estimate_only_widens_and_a_later_day_of_the_same_amount_moves_no_total() throws IOException {
        for (int seed = 0; seed < SEEDS; seed++) {
            random(seed);
            double before = 0;
            for (double width : new double[] {0.1, 0.2, 0.4, 0.8}) {
                double now = spread(forecast(row("one more", "labour", "estimate", "2026-07-20", "2026-10-03", 2000, 2000 * (1 - width),
                        2000 * (1 + width))).total());
                assertTrue(now > before, "seed " + seed + " at " + width + ": " + now + " after " + before);
                before = now;
            }
            double[] soon = forecast().total();
            rows.replaceAll(r -> r.replace("2026-11-20", "2027-02-20"));
            assertArrayEquals(soon, forecast().total(), 1e-6);
            Collections.shuffle(rows, new Random(seed));
            assertArrayEquals(soon, forecast().total(), 1e-6);
        }
    }

    @Test
    void rows_of_one_name_are_drawn_each_by_itself() throws IOException {
        rows = List.of();
        String one = row("the same", "labour", "estimate", "2026-07-20", "2026-10-03", 1000, 500, 1800);
        double single = spread(forecast(one).total());
        assertTrue(spread(forecast(one, one).total()) < 1.95 * single);
    }

    private Alternatives alternatives(String... more) throws IOException {
        List<String> all = new ArrayList<>(List.of("alternative,item,amount,kind,month,until,low,likely,high,chance",
                "ours,cars,,cost,0,,6000,7000,9000,", "ours,work,,cost,3,,2000,3000,5000,", "ours,the car then,,resale,,,7000,9000,11000,",
                "theirs,a whole one,,cost,0,,14000,15000,16000,", "theirs,the car then,,resale,,,9000,11000,13000,"));
        all.addAll(List.of(more));
        Files.write(folder.resolve("alternatives.csv"), all);
        Files.writeString(folder.resolve("words.csv"), "column,word,means\n*,currency,USD\n");
        return Alternatives.withDefaults().read(folder.resolve("alternatives.csv"));
    }

    @Test
    void what_may_break_costs_no_less_when_it_is_likelier_or_dearer_and_no_other_way_moves() throws IOException {
        double[] other = alternatives().all().get(1).netCost();
        double[] before = alternatives().all().get(0).netCost();
        for (String broken : List.of("800,1000,1500,10 %", "800,1000,1500,10.5 %", "800,1000,1500,30 %", "900,1200,1700,30 %",
                "900,1200,1700,100 %")) {
            Alternatives now = alternatives("ours,engine fails,,cost,10,," + broken);
            double[] net = now.all().get(0).netCost();
            for (int i = 0; i < net.length; i++) {
                assertTrue(net[i] >= before[i] - 1e-9, broken + ": " + net[i] + " after " + before[i]);
            }
            before = net;
            assertArrayEquals(other, now.all().get(1).netCost());
        }
    }
}
