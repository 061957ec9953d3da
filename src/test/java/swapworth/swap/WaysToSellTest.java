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

    // By hand: of ways that keep nothing the dealer's is the better by the step to his level; one that keeps all leaves nothing.
    @Test
    void who_keeps_all_leaves_nothing_and_who_keeps_more_leaves_less() {
        PriceModel model = PriceModel.fit(WORLD.cars());
        double before = Double.POSITIVE_INFINITY;
        for (double kept : new double[] {0, 10, 50, 100}) {
            List<Cell> dealer = ways(model, with(Assumptions.defaults(), "sell_to_dealer", kept, 0)).rows().get(2);
            double brings = Double.parseDouble(dealer.get(1).exact());
            double leaves = Double.parseDouble(dealer.get(4).exact());
            assertEquals(brings * (1 - kept / 100), leaves, 1e-6 * brings);
            assertTrue(leaves < before);
            before = leaves;
        }
        assertEquals("0 to 0", ways(model, with(Assumptions.defaults(), "sell_to_dealer", 100, 0)).rows().get(2).get(5).shown());
    }
}
