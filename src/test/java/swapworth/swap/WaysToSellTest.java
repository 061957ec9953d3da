package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;
import swapworth.market.PriceModel;
import swapworth.market.TestCars;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Table;

/** Where to sell a finished swap, in words: what listings tell of it, and what is assumed. */
class WaysToSellTest {
    private static final SwapWorld WORLD = SwapWorld.ordinary(3);
    private static final FinishedCar CAR = FinishedCar.of("the swap", CarFacts.of("Line 00").body("shell 0").runningGear("gear 3")
            .modelYear(2013).mileage(TestCars.miles(70_000)).seller(Seller.PRIVATE).build()).with(BuiltBy.OWNER);

    private static Table ways(PriceModel model, Assumptions assumptions) {
        return assertInstanceOf(SwapValue.class, SwapValue.options().assuming(assumptions).value(CAR, model)).waysToSell().orElseThrow();
    }

    private static Assumptions with(Assumptions assumptions, String name, double middle, double spread) {
        Assumption a = assumptions.get(name);
        return assumptions.with(new Assumption(name, a.question(), middle, spread, a.unit(), "test", ""));
    }

    @Test
    void where_nobody_saw_a_price_of_a_level_of_trade_it_is_not_said_to_be_told_by_the_listings() {
        List<Car> cars = new ArrayList<>(WORLD.cars());
        PriceModel asks = PriceModel.fit(cars);
        assertTrue(asks.hasPricesAt(LevelOfTrade.PRIVATE_ASKING));
        assertFalse(asks.hasPricesAt(LevelOfTrade.TRADE_SOLD));
        assertTrue(String.join(" ", ways(asks, Assumptions.defaults()).notes()).contains("told by your listings, but for private sold,"
                + " trade sold, auction: of that they hold no price, and it is assumed; what others keep"));
        for (int i = 0; i < 2; i++) {
            CarFacts facts = SwapWorld.facts(i, i, 2012, 80_000).build();
            cars.add(TestCars.car(900 + i, facts, 9_000, PriceKind.SOLD));
            cars.add(TestCars.car(910 + i, facts.toBuilder().seller(Seller.AUCTION).build(), 8_000, PriceKind.SOLD));
        }
        assertTrue(String.join(" ", ways(PriceModel.fit(cars), Assumptions.defaults()).notes()).contains("told by your listings, but for"
                + " trade sold: of that"));
        cars.add(TestCars.car(920, SwapWorld.facts(0, 0, 2012, 80_000).seller(Seller.TRADE).build(), 9_500, PriceKind.SOLD));
        assertTrue(String.join(" ", ways(PriceModel.fit(cars), Assumptions.defaults()).notes()).contains("told by your listings; what"));
    }

    @Test
    void what_others_keep_is_shown_as_it_was_stated_and_each_way_has_its_own_time() {
        Assumptions offered = with(with(with(Assumptions.defaults(), "sell_commission", 2.5, 0.5), "sell_to_dealer", 12, 0),
                "swap_days_on_offer", 45, 0);
        List<List<Cell>> rows = ways(PriceModel.fit(WORLD.cars()), offered).rows();
        assertEquals(List.of("2 % give or take 1", "2.5 % give or take 0.5", "12 %", "7 % give or take 4", "net of it already"),
                rows.stream().map(row -> row.get(3).shown()).toList());
        assertEquals(List.of("half of such cars find a taker in 45 days, asked at their value",
                "half of such cars find a taker in 45 days, asked at their value; the dealer shows it", "at once",
                "until the day of the sale"), rows.subList(0, 4).stream().map(row -> row.get(7).shown()).toList());
    }

    @Test
    void each_way_brings_what_such_cars_bring_at_its_own_level_of_trade() {
        SwapValue value = assertInstanceOf(SwapValue.class, SwapValue.options().value(CAR, PriceModel.fit(WORLD.cars())));
        List<List<Cell>> rows = value.waysToSell().orElseThrow().rows();
        List<LevelOfTrade> levels = List.of(LevelOfTrade.PRIVATE_SOLD, LevelOfTrade.TRADE_SOLD, LevelOfTrade.TRADE_SOLD,
                LevelOfTrade.AUCTION);
        for (int w = 0; w < levels.size(); w++) {
            assertEquals(Quantiles.median(value.drawsAt(levels.get(w))), number(rows.get(w), 1), 0.01, levels.get(w).words());
        }
        assertTrue(number(rows.get(3), 1) < number(rows.get(0), 1), "an auction brings less, as is assumed");
    }

    // Two ways that keep as much in the middle: each leaves most about as often, for what one keeps tells nothing of the other.
    @Test
    void what_each_way_keeps_is_as_unsure_as_stated_and_unsure_by_itself() {
        PriceModel model = PriceModel.fit(WORLD.cars());
        Assumptions known = with(with(Assumptions.defaults(), "sell_commission", 30, 0), "sell_to_dealer", 30, 0);
        Assumptions unsure = with(with(Assumptions.defaults(), "sell_commission", 30, 15), "sell_to_dealer", 30, 15);
        assertEquals(0, number(ways(model, known).rows().get(2), 6), "of equal ones the first");
        List<List<Cell>> rows = ways(model, with(with(unsure, "sell_private_costs", 100, 0), "sell_auction_fee", 100, 0)).rows();
        assertEquals(1, number(rows.get(1), 6) / number(rows.get(2), 6), 0.15);
        assertTrue(width(rows.get(2)) > 1.1 * width(ways(model, known).rows().get(2)), rows.get(2).toString());
    }

    @Test
    void nobody_keeps_less_than_nothing_or_more_than_all() {
        PriceModel model = PriceModel.fit(WORLD.cars());
        List<Cell> row = ways(model, with(Assumptions.defaults(), "sell_to_dealer", 0, 60)).rows().get(2);
        assertTrue(high(row, 5) <= high(row, 2), row.toString());
        row = ways(model, with(Assumptions.defaults(), "sell_to_dealer", 100, 60)).rows().get(2);
        assertTrue(row.get(5).shown().startsWith("0 to "), row.toString());
    }

    private static double high(List<Cell> row, int column) {
        return Double.parseDouble(row.get(column).shown().replace(",", "").split(" to ")[1]);
    }

    private static double number(List<Cell> row, int column) {
        return Double.parseDouble(row.get(column).exact());
    }

    /** High over low of the range that is left. */
    private static double width(List<Cell> row) {
        String[] ends = row.get(5).shown().replace(",", "").split(" to ");
        return Double.parseDouble(ends[1]) / Double.parseDouble(ends[0]);
    }

    @Test
    void who_keeps_all_leaves_nothing_and_who_keeps_more_leaves_less() {
        PriceModel model = PriceModel.fit(WORLD.cars());
        double before = Double.POSITIVE_INFINITY;
        for (double kept : new double[] {0, 10, 50, 100}) {
            List<Cell> dealer = ways(model, with(Assumptions.defaults(), "sell_to_dealer", kept, 0)).rows().get(2);
            double leaves = number(dealer, 4);
            assertEquals(number(dealer, 1) * (1 - kept / 100), leaves, 1e-6 * number(dealer, 1));
            assertTrue(leaves < before);
            before = leaves;
        }
        assertEquals("0 to 0", ways(model, with(Assumptions.defaults(), "sell_to_dealer", 100, 0)).rows().get(2).get(5).shown());
    }
}
