package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Listings;
import swapworth.listing.Title;

/** Steps that the listings put against the usual order are named, and those that chance may have turned are not. */
class AgainstOrderTest {

    /** Cars of one line, a third of each title, errors of a tenth. */
    private static List<AgainstOrder> found(int cars, double rebuilt, double salvage, long seed) {
        Random random = new Random(seed);
        List<Car> all = new ArrayList<>();
        for (int i = 0; i < cars; i++) {
            Title title = List.of(Title.CLEAN, Title.REBUILT, Title.SALVAGE).get(i % 3);
            double factor = title == Title.CLEAN ? 1 : title == Title.REBUILT ? rebuilt : salvage;
            int year = 2008 + random.nextInt(12);
            double miles = 12_000 * (2026 - year) * (0.7 + 0.6 * random.nextDouble());
            all.add(TestCars.car(i, CarFacts.of("Velmarch").modelYear(year).mileage(TestCars.miles(miles)).title(title).build(),
                    12_000 * factor * Math.exp(0.08 * (year - 2014) + 0.1 * random.nextGaussian())));
        }
        return PriceModel.fit(all).againstOrder();
    }

    @Test
    void a_salvage_title_that_brings_more_than_a_rebuilt_one_is_named_with_its_range() {
        AgainstOrder one = found(60, 0.55, 0.70, 1).get(0);
        assertEquals(List.of("title: salvage", "title: rebuilt"), List.of(one.worse(), one.better()));
        assertTrue(one.low80() > 0 && one.low80() < one.percent() && one.percent() < one.high80() && one.chance() > 0.9, one.toString());
        assertTrue(one.sentence().startsWith("'title: salvage' stands " + Math.round(10 * one.percent()) / 10.0
                + " % above 'title: rebuilt' by these prices (80 % range +"), one.sentence());
        assertTrue(one.sentence().contains("; 20 and 20 prices tell of them), against the usual order"), one.sentence());
    }

    @Test
    void titles_in_the_usual_order_are_passed_over() {
        for (long seed = 1; seed <= 10; seed++) {
            assertEquals(List.of(), found(60, 0.75, 0.6, seed), "seed " + seed);
        }
    }

    @Test
    void nothing_is_said_of_a_step_that_no_price_tells_of() {
        List<Car> clean = new ArrayList<>(TestCars.line("Velmarch", 11_000, 20, 1));
        assertEquals(List.of(), PriceModel.fit(clean).againstOrder());
    }

    /** Source: the truths of the sample world, in which a salvage title takes 33.3 % off and a rebuilt one 34.2 %. */
    @Test
    void the_titles_of_the_sample_stand_against_the_order_as_they_do_in_truth() {
        List<AgainstOrder> sample = PriceModel.fit(Listings.read(Path.of("sample-listings/listings.csv")).cars()).againstOrder();
        assertEquals(List.of("title: salvage"), sample.stream().map(AgainstOrder::worse).toList());
        double truth = 100 * Math.expm1(-0.405681 + 0.418706);
        assertTrue(sample.get(0).percent() - truth < 2 * (sample.get(0).high80() - sample.get(0).percent()), sample.toString());
    }
}
