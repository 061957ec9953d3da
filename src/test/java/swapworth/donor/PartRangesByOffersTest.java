package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.PriceKind;
import swapworth.statistics.Mixture;
import swapworth.world.PartsWorld;

/** Markets drawn from what is assumed of parts: fourteen kinds, one or a few offers of each, and one more of each to be told. */
class PartRangesByOffersTest {
    private static final int WORLDS = 100;
    private static final List<String> KINDS = PartsWorld.names().subList(0, 14);

    @TempDir
    Path folder;

    /** Scales of what is assumed: of how kinds differ, of how lines differ, and of the scatter, whose logarithm is normal about it. */
    private static double scale(String name, Random random) {
        Assumption a = Assumptions.defaults().get(name);
        return a.middle() * (a.spread() == 0 ? Math.abs(random.nextGaussian()) : Math.exp(a.spread() * random.nextGaussian()));
    }

    private static double student4(Random random) {
        double squares = 0;
        for (int k = 0; k < 4; k++) {
            squares += Math.pow(random.nextGaussian(), 2) / 4;
        }
        return random.nextGaussian() / Math.sqrt(squares);
    }

    // Of 300 such worlds 76.7 / 92.5, 80.5 / 95.4 and 80.0 / 95.2 were held (one offer: the scatter shows in no difference). 100 worlds
    // scatter by one and a half points and by one; three times as much is allowed.
    @ParameterizedTest
    @CsvSource({"1, 77, 92.5", "2, 80, 95", "4, 80, 95"})
    void ranges_hold_one_more_part_of_each_kind(int offers, double in80, double in95) throws Exception {
        double[] held = new double[2];
        for (int world = 0; world < WORLDS; world++) {
            Random random = new Random(1000 * offers + world);
            double spread = scale("spread_part_names", random);
            double line = Math.log(300) + scale("spread_part_lines", random) * random.nextGaussian();
            double scatter = scale("part_error", random);
            Map<String, Double> levels = new HashMap<>();
            List<String> rows = new ArrayList<>(List.of("part,vehicle,running_gear,mileage_mi,price,price_kind"));
            for (String kind : KINDS) {
                levels.put(kind, line + spread * random.nextGaussian());
                for (int k = 0; k < offers; k++) {
                    rows.add(kind + ",sivrette,four,60000," + Math.exp(levels.get(kind) + scatter * student4(random)) + ",sold");
                }
            }
            PartsMarket market = PartsMarket.fit(new Donors(folder).file("parts.csv", rows.toArray(String[]::new)).offers(),
                    Map.of("sivrette", "four"), Optional.empty(), Assumptions.defaults());
            for (String kind : KINDS) {
                Mixture told = market.predicted(new PartsMarket.Wanted(PartCatalogue.get().kind(kind).orElseThrow(), "sivrette", "four",
                        OptionalDouble.of(60_000)), PriceKind.SOLD).orElseThrow();
                double one = levels.get(kind) + scatter * student4(random);
                held[0] += one >= told.quantile(0.1) && one <= told.quantile(0.9) ? 100.0 / (WORLDS * KINDS.size()) : 0;
                held[1] += one >= told.quantile(0.025) && one <= told.quantile(0.975) ? 100.0 / (WORLDS * KINDS.size()) : 0;
            }
        }
        assertEquals(in80, held[0], 4.5, Arrays.toString(held));
        assertEquals(in95, held[1], 3, Arrays.toString(held));
    }
}
