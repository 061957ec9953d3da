package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumptions;
import swapworth.market.Answer;
import swapworth.statistics.RandomNumbers;

class ShadingTest {
    @TempDir
    Path folder;

    private static double[] values(int count, double sigma) {
        RandomNumbers random = RandomNumbers.of(3, "values");
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = 8000 * Math.exp(sigma * random.normal());
        }
        return values;
    }

    // Closed form: with X normal about 0 with spread a and one rival with spread b, E[X | b Z < -X] = -a^2 / sqrt(a^2 + b^2) x sqrt(2 /
    // pi): the mean of a skew normal (A. Azzalini, Scandinavian Journal of Statistics 12, 1985; from memory).
    @Test
    void one_rival_shades_by_the_mean_of_a_skew_normal() {
        double a = 0.2;
        double b = 0.15;
        Shading shading = Shading.of(values(200_000, a), Donors.assuming(false, "rival_bidders", 1, "rival_spread", 100 * b), 1, "test");
        assertEquals(-a * a / Math.sqrt(a * a + b * b) * Math.sqrt(2 / Math.PI), Math.log(shading.factor()), 0.003);
        assertEquals(0.5, shading.winning(), 0.005, "against one equal, half of the bids win");
    }

    @Test
    void a_car_that_is_worth_nothing_shades_no_bid() {
        for (double[] none : new double[][] {{}, {8000, 0}, {8000, -5}, {8000, Double.NaN}}) {
            assertEquals("a bid is shaded by draws of what the car is worth: at least one, each above 0",
                    assertThrows(IllegalArgumentException.class, () -> Shading.of(none, Assumptions.defaults(), 1, "")).getMessage());
        }
    }

    @Test
    void more_rivals_and_less_knowledge_shade_more_and_a_known_value_not_at_all() {
        double few = Shading.of(values(20_000, 0.2), Donors.assuming(false, "rival_bidders", 2), 1, "").factor();
        double many = Shading.of(values(20_000, 0.2), Donors.assuming(false, "rival_bidders", 8), 1, "").factor();
        double known = Shading.of(values(20_000, 0.001), Donors.assuming(false, "rival_bidders", 8), 1, "").factor();
        assertTrue(many < few && few < 1, few + " " + many);
        assertEquals(1, known, 0.002);
    }

    // By hand: a factor of 0.9 makes 6,000 into 5,400; with 10 % fees 5,454 and 4,909 are the highest bids.
    @Test
    void the_target_is_cut_before_the_search_and_both_bids_are_shown() throws IOException {
        Donors donors = new Donors(folder).file("cars.csv", "name,role,vehicle,seller,planned_bid,price_includes",
                "hit,donor,Velmarch,auction,4000,neither", "tidy,recipient,Sivrette,private,4000,neither");
        FeeSchedule schedule = FeeFiles.of(folder, "table,kind,percent", "premium,fee,10");
        Landed landed = Landed.of(donors.cars(), schedule, Optional.of(new BigDecimal("6000")),
                car -> car.name().equals("hit") ? Optional.of(new Answer.Told<>(new Shading(0.9, 0.2, "by hand"))) : Optional.empty());
        assertEquals(new BigDecimal("5454"), assertInstanceOf(HighestBid.class, landed.bids().get(0).answer()).bid());
        assertEquals(new BigDecimal("4909"), assertInstanceOf(HighestBid.class,
                landed.bids().get(0).shaded().orElseThrow().answer()).bid());
        assertTrue(landed.bids().get(1).shaded().isEmpty(), "nobody else bids for it");
        assertTrue(landed.bidTable().orElseThrow().text().contains("-10.0"), landed.bidTable().orElseThrow().text());
        assertEquals(Assumptions.defaults().get("rival_bidders").source(), "common practice, no source");
    }
}
