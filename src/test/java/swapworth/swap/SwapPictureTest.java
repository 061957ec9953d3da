package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import swapworth.chart.Chart;
import swapworth.chart.SwapCharts;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.market.PriceModel;
import swapworth.market.TestCars;
import swapworth.table.Cell;
import swapworth.table.Table;

/** The picture of a finished swap shows the rows of its tables, and no other figure. */
class SwapPictureTest {
    private static final PriceModel MODEL = PriceModel.fit(SwapWorld.ordinary(3).cars());
    private static final CarFacts FACTS = CarFacts.of("Line 00").body("shell 0").runningGear("gear 3").modelYear(2013)
            .mileage(TestCars.miles(70_000)).gearMileage(TestCars.miles(40_000)).build();
    private static final CarFacts FACTORY = SwapWorld.facts(3, 3, 2013, 70_000).build();
    private static final SwapOptions OPTIONS = SwapValue.options().withFactoryEquivalent(FACTORY);

    private static SwapValue value(SwapOptions options, CarFacts facts) {
        return assertInstanceOf(SwapValue.class, options.value(FinishedCar.of("the swap", facts).with(BuiltBy.OWNER), MODEL));
    }

    private static SeenSwap seen(double price) {
        return new SeenSwap("a", FACTS, BuiltBy.OWNER, price, SeenSwap.Kind.SOLD, LevelOfTrade.PRIVATE_SOLD, PriceIncludes.UNKNOWN,
                Optional.empty(), Optional.empty());
    }

    private static List<String> names(Chart chart) {
        return chart.data().rows().stream().map(r -> r.get(0).shown()).toList();
    }

    /** The medians of the rows of a table that tell, in the order of the table. */
    private static List<Double> medians(Table table) {
        return table.rows().stream().map(r -> r.get(1)).filter(c -> c != Cell.BLANK).map(c -> Math.rint(Double.parseDouble(c.exact())))
                .toList();
    }

    @Test
    void the_rows_are_those_of_the_approaches_and_of_what_stands_around_the_value() {
        SwapValue value = value(OPTIONS.withSeen(List.of(seen(15_000))), FACTS);
        Chart chart = SwapCharts.approaches(value, "USD");
        assertEquals(List.of("body and running gear", "cost", "position, stock to factory", "the approaches together",
                "reconciled: this one car", "stock car *", "factory at chassis mileage *", "factory at gear mileage *", "taken apart *"),
                names(chart));
        List<Double> tables = new ArrayList<>(medians(value.approachesTable()));
        tables.addAll(medians(value.brackets()));
        assertEquals(tables, medians(chart.data()));
        assertTrue(chart.svg().contains("price of this one car, * a middle price, USD"), "the kind of each range is said");
        assertFalse(chart.svg().contains("…"), "no name is cut");
    }

    @Test
    void without_swaps_seen_and_with_one_distance_nothing_stands_twice() {
        CarFacts one = CarFacts.of("Line 00").body("shell 0").runningGear("gear 3").modelYear(2013).mileage(TestCars.miles(70_000))
                .build();
        assertEquals(List.of("body and running gear", "cost", "position, stock to factory", "reconciled: this one car", "stock car *",
                "factory at chassis mileage *", "taken apart *"), names(SwapCharts.approaches(value(OPTIONS, one), "USD")));
    }
}
