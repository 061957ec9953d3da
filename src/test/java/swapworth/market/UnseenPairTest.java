package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;
import swapworth.market.TestCars.Seen;

/**
 * A body with a running gear that no car has: simulated worlds of six bodies and four gears, of which twelve pairs are seen, with
 * pairs that depart from the sum of body and gear by half, once and twice the spread that is assumed.
 */
class UnseenPairTest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);
    private static final int BODIES = 6;
    private static final int GEARS = 4;
    private static final double SCATTER = 0.12;

    /** A world with its true effects. */
    private record World(double[] body, double[] gear, double[][] pair, List<Car> cars, boolean[][] seen) {

        static World of(long seed, double pairSpread) {
            Random random = new Random(seed);
            double[] body = random.doubles(BODIES, -0.5, 0.5).toArray();
            double[] gear = new double[GEARS];
            double[][] pair = new double[BODIES][GEARS];
            boolean[][] seen = new boolean[BODIES][GEARS];
            for (int g = 0; g < GEARS; g++) {
                gear[g] = 0.5 * Math.log(power(g) / 100) + 0.1 * random.nextGaussian();
            }
            List<Car> cars = new ArrayList<>();
            for (int b = 0; b < BODIES; b++) {
                for (int g = 0; g < GEARS; g++) {
                    pair[b][g] = pairSpread * random.nextGaussian();
                    // Each body on its own gear and on the next: a ring that links all of them.
                    seen[b][g] = g == b % GEARS || g == (b + 1) % GEARS;
                }
            }
            for (int b = 0; b < BODIES; b++) {
                for (int g = 0; g < GEARS; g++) {
                    for (int k = 0; k < 8 && seen[b][g]; k++) {
                        CarFacts facts = facts(b, g, 2008 + random.nextInt(10), 20_000 + random.nextInt(100_000));
                        double error = SCATTER * random.nextGaussian();
                        cars.add(TestCars.car(cars.size(), facts, Math.exp(level(body, gear, pair, b, g, facts) + error)));
                    }
                }
            }
            return new World(body, gear, pair, cars, seen);
        }

        private static double level(double[] body, double[] gear, double[][] pair, int b, int g, CarFacts facts) {
            double age = facts.ageOn(DAY).orElseThrow();
            return 9.5 + body[b] + gear[g] + pair[b][g] - 0.09 * (age - 13) - 0.04 * (facts.mileage().orElseThrow().miles() / 10_000 - 7);
        }

        double level(int b, int g, CarFacts facts) {
            return level(body, gear, pair, b, g, facts);
        }
    }

    private static double power(int gear) {
        return 90 + 40 * gear;
    }

    private static CarFacts facts(int body, int gear, int year, double miles) {
        return CarFacts.of("Line " + body + gear).body("shell " + body).runningGear("gear " + gear).powerKw(power(gear))
                .modelYear(year).mileage(TestCars.miles(miles)).seller(swapworth.listing.Seller.PRIVATE).build();
    }

    /** Shares of unseen pairs whose true level lies in the 80 % range of the level, and whose price lies in that of the price. */
    private static double[] covered(int worlds, double timesAssumed) {
        double assumed = Assumptions.defaults().get("spread_pairs").middle();
        int n = 0;
        int level = 0;
        int price = 0;
        for (int w = 0; w < worlds; w++) {
            World world = World.of(900 + w, timesAssumed * assumed);
            PriceModel model = PriceModel.fit(world.cars());
            Random random = new Random(w);
            for (int b = 0; b < BODIES; b++) {
                for (int g = 0; g < GEARS; g++) {
                    if (!world.seen()[b][g]) {
                        CarFacts facts = facts(b, g, 2013, 70_000);
                        FairValue value = TestCars.fair(model.value(Subject.of(facts, LevelOfTrade.PRIVATE_ASKING, DAY)));
                        double truth = world.level(b, g, facts);
                        n++;
                        level += value.level(0.80).holds(Math.exp(truth)) ? 1 : 0;
                        price += value.range(0.80).holds(Math.exp(truth + SCATTER * random.nextGaussian())) ? 1 : 0;
                    }
                }
            }
        }
        return new double[] {100.0 * level / n, 100.0 * price / n};
    }

    @ParameterizedTest
    @CsvSource({"0.5, 80", "1, 76", "2, 55"})
    void ranges_of_unseen_pairs_hold_what_the_assumption_lets_them(double timesAssumed, double least) {
        check(6, timesAssumed, least);
    }

    @Tag("full")
    @ParameterizedTest
    @CsvSource({"0.5, 80", "1, 76", "2, 55"})
    void ranges_of_unseen_pairs_hold_over_many_worlds(double timesAssumed, double least) {
        check(60, timesAssumed, least);
    }

    private static void check(int worlds, double timesAssumed, double least) {
        double[] covered = covered(worlds, timesAssumed);
        assertTrue(covered[0] >= least, "levels held: " + covered[0] + " %");
        assertTrue(covered[1] >= least, "prices held: " + covered[1] + " %");
    }

    @Test
    void a_pair_that_nothing_links_has_no_value() {
        List<Car> cars = new ArrayList<>();
        for (int k = 0; k < 20; k++) {
            CarFacts facts = CarFacts.of("Line " + k % 2).body("shell " + k % 2).runningGear("gear " + k % 2).modelYear(2010 + k % 5)
                    .mileage(TestCars.miles(50_000 + 1000 * k)).seller(swapworth.listing.Seller.PRIVATE).build();
            cars.add(TestCars.car(k, facts, 9000 + 100 * k));
        }
        CarFacts swapped = CarFacts.of("Line 0").body("shell 0").runningGear("gear 1").modelYear(2012)
                .mileage(TestCars.miles(60_000)).build();
        CannotTell no = assertInstanceOf(CannotTell.class,
                PriceModel.fit(cars).value(Subject.of(swapped, LevelOfTrade.PRIVATE_ASKING, DAY)));
        assertTrue(no.reason().contains("nothing links the two"), no.reason());
        assertEquals(10, no.carsOfLine());
    }

    @Test
    void the_remark_names_the_assumption() {
        World world = World.of(7, 0.1);
        FairValue value = TestCars.fair(PriceModel.fit(world.cars())
                .value(Subject.of(facts(0, 3, 2013, 70_000), LevelOfTrade.PRIVATE_ASKING, DAY)));
        assertTrue(value.remarks().stream().anyMatch(r -> r.contains("spread_pairs")), value.remarks().toString());
    }

    @Test
    void a_pair_that_another_line_shows_is_not_said_to_be_nowhere() {
        List<Car> cars = new ArrayList<>();
        for (int k = 0; k < 20; k++) {
            CarFacts facts = CarFacts.of(k % 2 == 0 ? "Sivrette" : "Sivrette S").body("open").runningGear(k % 2 == 0 ? "four" : "six")
                    .modelYear(2010 + k % 5).mileage(TestCars.miles(50_000 + 1000 * k)).seller(swapworth.listing.Seller.PRIVATE).build();
            cars.add(TestCars.car(k, facts, 9000 + 100 * k + 3000 * (k % 2)));
        }
        CarFacts swapped = CarFacts.of("Sivrette").body("open").runningGear("six").modelYear(2012).mileage(TestCars.miles(60_000)).build();
        String remarks = TestCars.fair(PriceModel.fit(cars).value(Subject.of(swapped, LevelOfTrade.PRIVATE_ASKING, DAY))).remarks()
                .toString();
        assertTrue(remarks.contains("is in the files as another line alone") && remarks.contains("spread_pairs"), remarks);
        assertTrue(!remarks.contains("no other car"), remarks);
    }

    /** Cars of one body with the gears four and six, cars of another with four alone, and of that one car with six, seen several times. */
    private static List<Car> oneOfItsPair(List<Seen> seen) {
        Random random = new Random(3);
        List<Car> cars = new ArrayList<>();
        for (int n = 0; n < 40; n++) {
            CarFacts facts = CarFacts.of(n < 30 ? "Line" : "Other").runningGear(n < 20 || n >= 30 ? "four" : "six")
                    .modelYear(2012 + random.nextInt(10)).mileage(TestCars.miles(30_000 + random.nextInt(90_000))).build();
            cars.add(TestCars.car(n, facts, (n < 30 ? 12_000 : 9_000) * Math.exp(0.1 * random.nextGaussian())));
        }
        CarFacts alone = CarFacts.of("Other").runningGear("six").modelYear(2016).mileage(TestCars.miles(60_000)).build();
        cars.add(TestCars.car(40, alone, seen));
        return cars;
    }

    @Test
    void a_car_that_was_asked_sold_and_bid_for_is_no_other_car_of_its_own_pair() {
        Seen ask = new Seen(DAY, PriceKind.ASKING, Seller.PRIVATE, 16_000);
        List<Seen> prices = List.of(ask, new Seen(DAY.plusDays(5), PriceKind.SOLD, Seller.PRIVATE, 15_500),
                new Seen(DAY.plusDays(6), PriceKind.BID_NOT_MET, Seller.AUCTION, 5_000));
        for (int n = 1; n <= prices.size(); n++) {
            List<Car> cars = oneOfItsPair(prices.subList(0, n));
            PriceModel model = PriceModel.fit(cars);
            Car alone = cars.get(40);
            assertEquals(n, model.pricesOfPair(alone.facts()));
            assertEquals(PairStanding.SEEN, model.pair(alone.facts()));
            for (Judgement judgement : model.judgeAll()) {
                boolean saidToBeAlone = judgement.remarks().stream()
                        .anyMatch(remark -> remark.startsWith("no other car in the files has this body with this running gear"));
                assertEquals(judgement.car().equals(alone.name()), saidToBeAlone, n + " prices: " + judgement);
            }
        }
    }

    @Test
    void the_only_car_of_a_line_has_no_other_car_of_its_line_however_often_it_was_seen() {
        Seen ask = new Seen(DAY, PriceKind.ASKING, Seller.PRIVATE, 30_000);
        for (List<Seen> seen : List.of(List.of(ask), List.of(ask, new Seen(DAY.plusDays(5), PriceKind.SOLD, Seller.PRIVATE, 28_500)))) {
            List<Car> cars = new ArrayList<>(TestCars.line("Line", 12_000, 30, 1));
            cars.add(TestCars.car(900, CarFacts.of("Other").modelYear(2016).mileage(TestCars.miles(60_000)).build(), seen));
            Valuation valuation = PriceModel.fit(cars).judge(cars.get(30).latest()).valuation();
            assertEquals("no other car of the line 'Other' is in the files",
                    assertInstanceOf(CannotTell.class, valuation, valuation.toString()).reason());
        }
    }
}
