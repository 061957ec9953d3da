package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Airbags;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Condition;
import swapworth.listing.Keys;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Runs;
import swapworth.listing.Seller;
import swapworth.listing.Title;
import swapworth.table.Table;

/** A trim or a region that nobody stated is one of those that there are, and no average of them. */
class UnstatedFactsTest {
    private static final LocalDate DAY = LocalDate.of(2025, 3, 1);

    private static CarFacts.Builder car(int k) {
        return CarFacts.of("Sivrette").modelYear(2012 + k % 8).mileage(TestCars.miles(60_000 + 3_000 * k));
    }

    /** Cars of two kinds, 40 log points apart, beside which nothing scatters much. */
    private static PriceModel model(BiFunction<CarFacts.Builder, Boolean, CarFacts.Builder> kind) {
        SplittableRandom random = new SplittableRandom(3);
        List<Car> cars = new ArrayList<>();
        for (int k = 0; k < 24; k++) {
            boolean dear = k % 2 == 0;
            double price = 6_000 * Math.exp((dear ? 0.4 : 0) + 0.05 * (k % 8) - 0.01 * k + 0.04 * (random.nextDouble() - 0.5));
            cars.add(TestCars.car(k, kind.apply(car(k), dear).build(), price));
        }
        return PriceModel.fit(cars);
    }

    private static FairValue value(PriceModel model, CarFacts car) {
        return TestCars.fair(model.value(Subject.of(car, LevelOfTrade.PRIVATE_ASKING, DAY)));
    }

    private static void assertMayBe(FairValue unstated, FairValue... either) {
        for (FairValue one : either) {
            assertTrue(unstated.range(0.80).holds(one.median()), one.median() + " in " + unstated.range(0.80));
        }
    }

    @Test
    void a_car_without_a_trim_may_be_of_either_where_others_state_theirs() {
        PriceModel model = model((car, dear) -> car.trim(dear ? "Fitted" : "Plain"));
        FairValue unstated = value(model, car(9).build());
        assertMayBe(unstated, value(model, car(9).trim("Fitted").build()), value(model, car(9).trim("Plain").build()));
        assertEquals("to know its trim would narrow this range most", unstated.narrowedBy());
        assertEquals(unstated.median(), value(model, car(9).trim("Sport").build()).median(), 1e-6, "as one of a trim never seen");
    }

    @Test
    void a_car_without_a_region_may_stand_in_either_where_others_say_theirs() {
        PriceModel model = model((car, dear) -> car.region(dear ? "Norrowfen" : "Eastmarl"));
        assertMayBe(value(model, car(9).build()), value(model, car(9).region("Norrowfen").build()),
                value(model, car(9).region("Eastmarl").build()));
    }

    @Test
    void where_no_car_states_a_trim_none_is_missed() {
        PriceModel model = model((car, dear) -> car.title(dear ? Title.CLEAN : Title.SALVAGE));
        FairValue plain = value(model, car(9).title(Title.CLEAN).build());
        assertTrue(plain.range(0.80).high() / plain.range(0.80).low() < 1.25, plain.range(0.80).toString());
    }

    /** By hand: of three cars one states all, one nothing but its line, one its mileage and no age. */
    @Test
    void what_cars_do_not_state_is_counted_with_what_they_are_taken_for() {
        CarFacts all = car(9).trim("Plain").region("Eastmarl").title(Title.CLEAN).runs(Runs.DRIVES).damage(Set.of()).rust(Condition.SOUND)
                .paint(Condition.SOUND).interior(Condition.SOUND).mechanical(Condition.SOUND).records(Condition.SOUND).keys(Keys.YES)
                .airbags(Airbags.IN_PLACE).build();
        List<Car> cars = List.of(TestCars.car(0, all, 9_000), TestCars.car(1, CarFacts.of("Young").build(), 9_000),
                TestCars.car(2, CarFacts.of("Young").mileage(TestCars.miles(50_000)).build(), 9_000));
        Table open = OpenFacts.table(cars);
        Map<String, String> counted = open.rows().stream().collect(Collectors.toMap(r -> r.get(0).shown(), r -> r.get(1).shown()));
        assertEquals("1", counted.get("age and mileage"));
        assertEquals("1", counted.get("age, of a known mileage"));
        assertFalse(counted.containsKey("mileage, of a known age"));
        for (String fact : List.of("trim", "region", "title", "runs", "damage", "rust", "records", "keys", "airbags")) {
            assertEquals("2", counted.get(fact), fact);
        }
        assertTrue(open.csv().contains("title,2,3,") && open.csv().contains("title_unknown"), open.csv());
        assertEquals(List.of(), OpenFacts.table(List.of(TestCars.car(0, all, 9_000))).rows());
    }

    @Test
    void what_no_car_states_is_said_to_be_told_by_the_assumption_and_not_by_such_cars() {
        CarFacts silent = CarFacts.of("Young").ageYears(5).mileage(TestCars.miles(50_000)).build();
        CarFacts clean = silent.toBuilder().title(Title.CLEAN).build();
        Map<String, String> taken = OpenFacts.table(List.of(TestCars.car(0, silent, 9_000), TestCars.car(1, clean, 9_000))).rows().stream()
                .collect(Collectors.toMap(r -> r.get(0).shown(), r -> r.get(3).shown()));
        assertTrue(taken.get("title").contains("learned from such cars"), taken.get("title"));
        for (String fact : List.of("runs", "damage", "rust", "paint", "interior", "mechanical", "records")) {
            assertTrue(taken.get(fact).contains("no car states it") && taken.get(fact).contains("is assumed ("), taken.get(fact));
        }
        assertTrue(taken.get("runs").endsWith("(runs_unknown)") && taken.get("rust").endsWith("(condition_unknown)"), taken.toString());
    }

    @Test
    void each_fact_is_counted_by_itself_and_an_age_in_years_is_an_age() {
        CarFacts car = CarFacts.of("Young").ageYears(5).trim("Plain").build();
        Map<String, String> counted = OpenFacts.table(List.of(TestCars.car(0, car, 9_000),
                TestCars.car(1, car(9).region("Eastmarl").build(), 9_000), TestCars.car(2, car(9).region("Eastmarl").build(), 9_000)))
                .rows().stream().collect(Collectors.toMap(r -> r.get(0).shown(), r -> r.get(1).shown()));
        assertEquals("1", counted.get("region"));
        assertEquals("2", counted.get("trim"));
        assertEquals("1", counted.get("mileage, of a known age"));
        assertFalse(counted.containsKey("age and mileage"));
    }

    private static final LocalDate SEEN_ON = LocalDate.of(2026, 6, 1);

    /** Twenty cars of 2 and 3 years that run 10,000 miles a year, four of 30 years, and so many that state neither age nor mileage. */
    private static List<Car> young(int silent) {
        List<Car> cars = new ArrayList<>();
        for (int n = 0; n < 20 + silent; n++) {
            int age = 2 + n % 2;
            CarFacts.Builder facts = CarFacts.of("Young");
            if (n < 20) {
                facts.ageYears(age).mileage(TestCars.miles(10_000 * age));
            }
            cars.add(TestCars.car(n, facts.build(), 20_000 * Math.exp(-0.15 * age + 0.02 * (n % 5 - 2))));
        }
        for (int n = 0; n < 4; n++) {
            cars.add(TestCars.car(100 + n, CarFacts.of("Old").ageYears(30).mileage(TestCars.miles(300_000)).build(), 3_000));
        }
        return cars;
    }

    private static Measures.Measured neither(List<Car> cars, String line) {
        return new Measures(EvidenceList.in(cars, List.of()).stock(), Assumptions.defaults()).of(line, Double.NaN, Double.NaN);
    }

    @Test
    void a_car_that_states_neither_age_nor_mileage_is_taken_for_the_middle_one_and_no_further_off_than_others_lie_apart() {
        // Half of twenty cars are of 2 years and half of 3: the middle is 2.5, half the range from 16 to 84 % half a year, held at one.
        Measures.Measured young = neither(young(1), "Young");
        assertEquals(2.5, young.age(), 1e-9);
        assertEquals(25_000, young.miles(), 1e-6);
        assertEquals(1, young.unsureYears(), 1e-9);
        assertTrue(young.unsureMiles() > 0 && young.unsureMiles() <= 10_000, young.toString());
        // Four cars are too few to say of what age such cars are: the middle of all 24 is 3, the twelfth and the thirteenth youngest.
        assertEquals(3, neither(young(1), "Old").age(), 1e-9);
        // Nothing states an age or a mileage: the assumptions, 8 years give or take 4 at 11,000 miles a year.
        Measures.Measured assumed = neither(List.of(TestCars.car(1, CarFacts.of("Line").build(), 9_000)), "Line");
        assertEquals(8, assumed.age(), 1e-9);
        assertEquals(88_000, assumed.miles(), 1e-6);
        assertEquals(4, assumed.unsureYears(), 1e-9);
        assertEquals(44_000, assumed.unsureMiles(), 1e-6);
    }

    @Test
    void cars_that_state_neither_age_nor_mileage_do_not_bend_the_slopes_of_those_that_do() {
        Subject asked = Subject.of(CarFacts.of("Young").ageYears(6).mileage(TestCars.miles(60_000)).seller(Seller.PRIVATE).build(),
                LevelOfTrade.PRIVATE_ASKING, SEEN_ON);
        double without = TestCars.fair(PriceModel.fit(young(0)).value(asked)).median();
        assertEquals(without, TestCars.fair(PriceModel.fit(young(10)).value(asked)).median(), 0.02 * without);
    }
}
