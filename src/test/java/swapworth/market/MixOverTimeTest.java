package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;
import swapworth.world.SampleWorld;

/** What was collected may change with time as the market does; then a reader is told. The worlds are invented and stand still. */
class MixOverTimeTest {
    private static final int MONTHS = 12;

    /** What is collected of a car that is seen in one of the months. */
    private interface Collected {
        Fact of(int month, Random random);
    }

    private record Fact(String line, PriceKind kind, Seller seller) {
        static Fact asked(String line, Seller seller) {
            return new Fact(line, PriceKind.ASKING, seller);
        }
    }

    private static List<String> told(Collected collected, int perMonth, long seed) {
        Random random = new Random(seed);
        List<Car> cars = new ArrayList<>();
        for (int month = 0; month < MONTHS; month++) {
            for (int k = 0; k < perMonth; k++) {
                Fact fact = collected.of(month, random);
                int year = 2010 + random.nextInt(10);
                LocalDate day = LocalDate.of(2024, 1, 1).plusMonths(month).plusDays(random.nextInt(28));
                double age = 2024 + month / 12.0 - year;
                double log = Math.log(14_000) - 0.09 * age + (fact.line.equals("Brenn") ? 0.2 : 0) + 0.15 * random.nextGaussian()
                        + (fact.kind == PriceKind.SOLD ? -0.08 : 0) + (fact.seller == Seller.TRADE ? 0.1 : 0);
                CarFacts facts = CarFacts.of(fact.line).modelYear(year).mileage(TestCars.miles(60_000)).build();
                cars.add(TestCars.car(cars.size(), facts, List.of(new TestCars.Seen(day, fact.kind, fact.seller, Math.exp(log)))));
            }
        }
        return changes(cars);
    }

    private static List<String> changes(List<Car> cars) {
        return PriceModel.fit(cars).index().orElseThrow().cautions().stream().filter(c -> c.startsWith("What was collected")).toList();
    }

    private static String oneOf(List<String> all) {
        assertEquals(1, all.size(), all.toString());
        return all.get(0);
    }

    @Test
    void sales_after_asks_are_said_with_the_month_up_to_which() {
        String said = oneOf(told((month, random) -> new Fact(random.nextBoolean() ? "Abel" : "Brenn",
                month < 6 ? PriceKind.ASKING : PriceKind.SOLD, Seller.PRIVATE), 15, 1));
        assertTrue(said.startsWith("What was collected changed with time: up to 2024-06 100 % of the prices are at the level of trade "
                + "'private asking', in the other months 0 %. How the market moved between the two hangs on how far the levels of trade"),
                said);
    }

    @Test
    void private_asks_after_those_of_the_trade_are_said() {
        String said = oneOf(told((month, random) -> Fact.asked(random.nextBoolean() ? "Abel" : "Brenn",
                month < 6 ? Seller.TRADE : Seller.PRIVATE), 15, 2));
        assertTrue(said.contains("'private asking'") || said.contains("'trade asking'"), said);
    }

    @Test
    void one_line_after_another_is_said() {
        String said = oneOf(told((month, random) -> Fact.asked(month < 6 ? "Abel" : "Brenn",
                random.nextInt(3) == 0 ? Seller.TRADE : Seller.PRIVATE), 15, 3));
        assertTrue(said.contains("of the line '") && said.contains("hangs on how far the lines stand apart"), said);
    }

    @Test
    void a_mix_that_is_another_one_in_the_middle_months_is_said() {
        String said = oneOf(told((month, random) -> new Fact("Abel", month < 4 || month > 7 ? PriceKind.ASKING : PriceKind.SOLD,
                Seller.PRIVATE), 15, 4));
        assertTrue(said.contains("from 2024-05 to 2024-08 100 % of the prices are at the level of trade 'private sold'"), said);
    }

    /** Where enough prices of both levels stand in the same months the step between them is told, and the movement does not hang on it. */
    @Test
    void a_change_is_not_said_where_the_same_months_hold_both() {
        assertEquals(List.of(), told((month, random) -> new Fact("Abel",
                month < 6 || random.nextInt(5) < 2 ? PriceKind.ASKING : PriceKind.SOLD, Seller.PRIVATE), 30, 5));
    }

    @Test
    void a_mix_that_does_not_change_is_passed_over_in_twenty_collections_small_and_large_and_in_the_sample() {
        for (int seed = 0; seed < 20; seed++) {
            assertEquals(List.of(), told((month, random) -> new Fact(random.nextBoolean() ? "Abel" : "Brenn",
                    random.nextInt(4) == 0 ? PriceKind.SOLD : PriceKind.ASKING, random.nextInt(3) == 0 ? Seller.TRADE : Seller.PRIVATE),
                    seed % 2 == 0 ? 4 : 20, 100 + seed), "seed " + seed);
        }
        assertEquals(List.of(), changes(SampleWorld.generate(600).joinedCars()));
    }
}
