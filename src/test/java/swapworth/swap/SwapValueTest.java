package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import swapworth.InOneLine;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.listing.Seller;
import swapworth.market.FairValue;
import swapworth.market.Figures;
import swapworth.market.PriceModel;
import swapworth.market.Subject;
import swapworth.market.TestCars;
import swapworth.market.ValueDraws;
import swapworth.statistics.Draws;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Table;

/** What a finished swap is worth: each part by hand where it can be, and what must not happen. */
class SwapValueTest {
    private static final SwapWorld WORLD = SwapWorld.ordinary(3);
    private static final PriceModel MODEL = PriceModel.fit(WORLD.cars());
    private static final CarFacts FACTS = CarFacts.of("Line 00").body("shell 0").runningGear("gear 3").modelYear(2013)
            .mileage(TestCars.miles(70_000)).gearMileage(TestCars.miles(40_000)).seller(Seller.PRIVATE).build();
    private static final FinishedCar CAR = FinishedCar.of("the swap", FACTS).with(BuiltBy.OWNER);
    private static final CarFacts FACTORY = SwapWorld.facts(3, 3, 2013, 70_000).build();

    private static SwapValue value(SwapOptions options, FinishedCar car) {
        return assertInstanceOf(SwapValue.class, options.value(car, MODEL));
    }

    private static Assumptions with(String name, double middle, double spread) {
        Assumption a = Assumptions.defaults().get(name);
        return Assumptions.defaults().with(new Assumption(name, a.question(), middle, spread, a.unit(), "test", ""));
    }

    private static Approach.Told told(SwapValue value, Approach.Kind kind) {
        return (Approach.Told) value.approaches().stream().filter(a -> a.kind() == kind).findFirst().orElseThrow();
    }

    @Test
    void a_loss_that_the_value_takes_off_stands_among_what_a_buyer_is_told() {
        FinishedCar lossy = CAR.with(SwapCost.unstated().withLosses(List.of(new SwapCost.Loss("air conditioning lost", 400, 0),
                new SwapCost.Loss("zone rule", 0, 0.025))));
        String told = value(SwapValue.options(), lossy).disclosure().text();
        assertTrue(told.contains("air conditioning lost: 400; zone rule: 2.5 %"), told);
        assertTrue(told.contains("nothing stated under this name; see the losses below"), told);
        assertFalse(value(SwapValue.options(), CAR).disclosure().text().contains("takes off"));
    }

    @Test
    void which_instrument_cluster_is_in_it_is_among_what_a_buyer_is_told_and_unknown_where_nobody_says() {
        assertTrue(InOneLine.of(value(SwapValue.options(), CAR).disclosure().text()).contains("instrument cluster, and what its odometer"
                + " reads unknown"));
        FinishedCar said = FinishedCar.of("the swap", FACTS.toBuilder().further(Map.of("cluster", "its own, 98,310 mi")).build());
        assertTrue(InOneLine.of(value(SwapValue.options(), said).disclosure().text()).contains("reads its own, 98,310 mi"));
    }

    @Test
    void the_order_of_the_rows_moves_no_price_of_a_body_with_a_running_gear() {
        List<Car> cars = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            boolean roadster = i % 2 == 0;
            String trim = i % 6 < 4 ? "Plain" : "Fitted";
            cars.add(TestCars.car(i, CarFacts.of(roadster ? "Orvane" : "Ostel").body(roadster ? "open" : "saloon")
                    .runningGear(roadster ? "four" : "six").trim(trim).modelYear(2010 + i % 7).mileage(TestCars.miles(60_000 + 3_000 * i))
                    .seller(Seller.PRIVATE).build(), (roadster ? 9_000 : 13_000) * (trim.equals("Plain") ? 1 : 1.4)
                            * Math.exp(0.1 * Math.sin(5 * i))));
        }
        FinishedCar swap = FinishedCar.of("the swap", CarFacts.of("Orvane").body("open").runningGear("six").modelYear(2013)
                .mileage(TestCars.miles(70_000)).seller(Seller.PRIVATE).build());
        List<String> told = new ArrayList<>();
        for (int first : List.of(0, 4, 5)) {
            List<Car> turned = new ArrayList<>(cars);
            Collections.rotate(turned, -first);
            told.add(assertInstanceOf(SwapValue.class, SwapValue.options().value(swap, PriceModel.fit(turned))).pairs().toString());
        }
        assertEquals(told.get(0), told.get(1));
        assertEquals(told.get(0), told.get(2));
    }

    private static FinishedCar withGearOf(FinishedCar car, String line) {
        return new FinishedCar(car.name(), car.facts(), Optional.of(line), car.gearYear(), car.builtBy(), car.papers(), car.optionsKept(),
                car.optionsLost(), car.faults(), car.cost(), car.recipient(), car.donor());
    }

    @Test
    void a_car_that_names_the_line_of_its_gear_is_valued_by_the_gear_of_that_line() {
        FinishedCar unnamed = FinishedCar.of("the swap", FACTS.withoutGear()).with(BuiltBy.OWNER);
        double named = value(SwapValue.options(), withGearOf(unnamed, FACTORY.vehicle())).median();
        assertTrue(value(SwapValue.options(), CAR).range(0.80).holds(named), Double.toString(named));
        assertTrue(Math.abs(value(SwapValue.options(), unnamed).median() / named - 1) > 0.05);
    }

    @Test
    void what_no_value_can_rest_on_is_refused_at_once_and_a_swap_told_twice_counts_once() {
        assertThrows(IllegalArgumentException.class, () -> UnsureAmount.stated(Double.POSITIVE_INFINITY, 0.2, "me"));
        assertThrows(IllegalArgumentException.class, () -> UnsureAmount.drawn(new double[0], "me"));
        assertThrows(IllegalArgumentException.class, () -> UnsureAmount.drawn(new double[] {1, Double.NaN}, "me"));
        assertThrows(IllegalArgumentException.class, () -> UnsureAmount.drawn(new double[] {1, -1}, "me"));
        assertThrows(IllegalArgumentException.class, () -> new SwapCost.Loss("all", Double.POSITIVE_INFINITY, 0));
        assertThrows(IllegalArgumentException.class, () -> SwapValue.options().weighted(Map.of(), "none"));
        assertThrows(IllegalArgumentException.class, () -> SwapValue.options().with(MODEL.draws(1, 1)));
        SwapValue told = value(SwapValue.options(), CAR);
        for (double none : new double[] {0, 1, Double.NaN}) {
            assertThrows(IllegalArgumentException.class, () -> told.range(none));
            assertThrows(IllegalArgumentException.class, () -> told.level(none));
        }
        SeenSwap seen = new SeenSwap("a", FACTS, BuiltBy.OWNER, 15_000, SeenSwap.Kind.SOLD, LevelOfTrade.PRIVATE_SOLD,
                PriceIncludes.UNKNOWN, Optional.empty(), Optional.empty());
        assertEquals(value(SwapValue.options().withSeen(List.of(seen)), CAR).median(),
                value(SwapValue.options().withSeen(List.of(seen, seen)), CAR).median());
    }

    private static SeenSwap seen(String name, double price) {
        return new SeenSwap(name, FACTS, BuiltBy.OWNER, price, SeenSwap.Kind.SOLD, LevelOfTrade.PRIVATE_SOLD, PriceIncludes.UNKNOWN,
                Optional.empty(), Optional.empty());
    }

    @Test
    void what_swaps_are_called_moves_no_value() {
        // "Aa" and "BB", "C1" and "BP" have one String.hashCode each: such names must not be one car's luck
        double plain = value(SwapValue.options().withSeen(List.of(seen("a", 15_000), seen("b", 16_000))), CAR).median();
        for (String[] names : new String[][] {{"Aa", "BB"}, {"C1", "BP"}, {"x", "y"}}) {
            double called = value(SwapValue.options().withSeen(List.of(seen(names[0], 15_000), seen(names[1], 16_000))), CAR).median();
            assertEquals(1, called / plain, 0.01, names[0]);
        }
    }

    @Test
    void several_prices_of_one_swap_are_one_swap_its_sale_else_its_last_price() {
        SeenSwap asked = new SeenSwap("a", FACTS, BuiltBy.OWNER, 19_000, SeenSwap.Kind.ASKED, LevelOfTrade.PRIVATE_ASKING,
                PriceIncludes.UNKNOWN, Optional.of(LocalDate.of(2025, 6, 1)), Optional.empty());
        double sold = value(SwapValue.options().withSeen(List.of(seen("a", 15_000))), CAR).median();
        assertEquals(sold, value(SwapValue.options().withSeen(List.of(seen("a", 15_000), asked)), CAR).median());
        assertEquals(sold, value(SwapValue.options().withSeen(List.of(asked, seen("a", 15_000))), CAR).median());
    }

    private static SeenSwap of(int year, SeenSwap swap) {
        return swap.with(Situation.changed(FACTS, b -> b.modelYear(year)));
    }

    @Test
    void swaps_of_one_name_whose_years_lie_further_apart_than_one_are_two_as_if_they_had_two_names() {
        double two = value(SwapValue.options().withSeen(List.of(seen("a", 15_000), of(2010, seen("b", 16_000)))), CAR).median();
        double same = value(SwapValue.options().withSeen(List.of(seen("a", 15_000), of(2010, seen("a", 16_000)))), CAR).median();
        assertEquals(1, same / two, 0.01);
    }

    @Test
    void a_year_that_is_off_by_one_or_not_stated_makes_no_other_swap() {
        // as the ids of a file: one line, and one model year to within one
        SeenSwap unstated = seen("a", 12_000).with(CarFacts.of(FACTS.vehicle()).build());
        List<SeenSwap> rows = new ArrayList<>(List.of(unstated, of(2014, seen("a", 14_000)), seen("a", 15_000)));
        double last = value(SwapValue.options().withSeen(List.of(seen("a", 15_000))), CAR).median();
        assertEquals(last, value(SwapValue.options().withSeen(rows), CAR).median());
        Collections.reverse(rows);
        assertEquals(last, value(SwapValue.options().withSeen(rows), CAR).median());
    }

    @Test
    void two_finished_cars_on_one_state_of_the_market_have_each_its_own_luck() {
        ValueDraws market = MODEL.draws(4000, 1);
        SwapValue one = value(SwapValue.options().with(market), CAR);
        SwapValue other = value(SwapValue.options().with(market), FinishedCar.of("another", FACTS).with(BuiltBy.OWNER));
        double[] ownOfOne = luck(one);
        double[] ownOfOther = luck(other);
        double together = Draws.covariance(ownOfOne, ownOfOther)
                / Math.sqrt(Draws.covariance(ownOfOne, ownOfOne) * Draws.covariance(ownOfOther, ownOfOther));
        // four standard errors of no correlation in 4,000 draws
        assertEquals(0, together, 4 / Math.sqrt(4000));
        assertEquals(value(SwapValue.options().with(market), CAR).median(), one.median());
    }

    private static double[] luck(SwapValue value) {
        double[] price = value.draws();
        double[] level = value.levelDraws();
        return IntStream.range(0, price.length).mapToDouble(i -> Math.log(price[i] / level[i])).toArray();
    }

    @Test
    void two_approaches_of_one_call_are_equal_and_print_what_they_tell() {
        SwapOptions net = SwapValue.options();
        Approach.Told one = told(value(net, CAR), Approach.Kind.COST);
        Approach.Told same = told(value(net, CAR), Approach.Kind.COST);
        assertEquals(one, same);
        assertEquals(one.hashCode(), same.hashCode());
        assertFalse(one.equals(told(value(net, FinishedCar.of("another", FACTS)), Approach.Kind.COST)));
        assertEquals("cost: 10,000, 80 % range 10,000 to 10,000, 25 % of what is unsure about the middle price held by assumptions",
                new Approach.Told(Approach.Kind.COST, new double[] {10_000, 10_000}, new double[] {10_000, 10_000}, 0.25,
                        new FairValue.HeldBy("none", 0), List.of()).toString());
        assertThrows(IllegalArgumentException.class, () -> new Approach.Told(Approach.Kind.COST, new double[2], new double[1], 0,
                new FairValue.HeldBy("none", 0), List.of()));
    }

    @Test
    void draws_of_another_model_are_refused() {
        PriceModel another = PriceModel.fit(MODEL.cars());
        SwapOptions onAnother = SwapValue.options().with(another.draws(200, 1));
        assertThrows(IllegalArgumentException.class, () -> onAnother.value(CAR, MODEL));
        assertTrue(another.drew(another.draws(100, 1)) && !MODEL.drew(another.draws(100, 1)));
    }

    @Test
    void the_assumption_that_holds_most_is_named_by_what_it_says() {
        SwapValue value = value(SwapValue.options().withFactoryEquivalent(FACTORY), CAR);
        for (Assumption a : Assumptions.defaults().all()) {
            String words = value.largestAssumption().assumption();
            assertFalse(words.equals(a.name()), words);
            value.approaches().stream().filter(Approach.Told.class::isInstance).map(Approach.Told.class::cast)
                    .forEach(t -> assertFalse(t.largest().assumption().equals(a.name()), t.largest().assumption()));
        }
    }

    private static double median(double[] values) {
        return Quantiles.of(values, 0.5);
    }

    private static double[] level(CarFacts facts) {
        ValueDraws draws = MODEL.draws(4000, 1);
        return draws.level(Subject.of(facts, LevelOfTrade.PRIVATE_ASKING, SwapWorld.DAY));
    }

    private static CarFacts inLine00(int gear, CarFacts like) {
        return CarFacts.of("Line 00").body("shell 0").runningGear("gear " + gear).powerKw(SwapWorld.power(gear))
                .modelYear(like.modelYear().getAsInt()).mileage(like.mileage().orElseThrow()).seller(Seller.PRIVATE).build();
    }

    // The same cars and prices as in WORLD, but the line of the stock car is listed with a second running gear too.
    @Test
    void a_stock_car_whose_line_is_listed_with_two_running_gears_has_that_of_the_recipient_else_that_of_most_cars() {
        List<Car> cars = new ArrayList<>();
        for (Car car : WORLD.cars()) {
            CarFacts f = car.facts();
            CarFacts same = f.vehicle().equals("Line 01") ? inLine00(1, f) : f;
            cars.add(TestCars.car(cars.size(), same, car.sightings().get(0).price().amount()));
        }
        cars.add(TestCars.car(cars.size(), inLine00(1, FACTS), 9000));
        PriceModel model = PriceModel.fit(cars);
        SwapOptions options = SwapValue.options().withFactoryEquivalent(FACTORY);
        SwapValue most = assertInstanceOf(SwapValue.class, options.value(CAR, model));
        assertEquals(3, most.weights().size(), most.basis());
        assertEquals(Optional.of("gear 1"), most.stock().runningGear());
        assertTrue(InOneLine.of(most.brackets().text()).contains("the running gear 'gear 1', as most cars of the line 'Line 00' have"));
        CarFacts recipient = SwapWorld.facts(0, 0, 2013, 70_000).build();
        SwapValue told = assertInstanceOf(SwapValue.class, options.value(CAR.madeOf(recipient), model));
        assertEquals(recipient.runningGear(), told.stock().runningGear());
        assertTrue(InOneLine.of(told.brackets().text()).contains("'gear 0', as the row of the recipient says"));
        double alone = median(value(SwapValue.options(), CAR).stockDraws().orElseThrow());
        assertEquals(1, median(told.stockDraws().orElseThrow()) / alone, 0.03);
    }

    @Test
    void the_giver_of_the_gear_has_that_gear_where_its_line_is_listed_with_two() {
        List<Car> cars = new ArrayList<>(WORLD.cars());
        for (int k = 0; k < 3; k++) {
            cars.add(TestCars.car(cars.size(), CarFacts.of("Line 33").body("shell 3").runningGear("gear 1").modelYear(2012)
                    .powerKw(SwapWorld.power(1)).mileage(TestCars.miles(70_000 + 9000 * k)).seller(Seller.PRIVATE).build(),
                    7000 + 300 * k));
        }
        SwapOptions options = SwapValue.options();
        double plain = median(told(value(options, withGearOf(CAR, "Line 33")), Approach.Kind.COST).level());
        double mixed = median(told(assertInstanceOf(SwapValue.class, options.value(withGearOf(CAR, "Line 33"), PriceModel.fit(cars))),
                Approach.Kind.COST).level());
        assertEquals(1, mixed / plain, 0.05);
    }

    @Test
    void a_swap_that_stands_among_the_listings_does_not_silence_those_of_swaps_csv() {
        List<Car> cars = new ArrayList<>(WORLD.cars());
        cars.add(TestCars.car(cars.size(), FACTS, 12_000));
        SwapValue listed = assertInstanceOf(SwapValue.class, SwapValue.options().withFactoryEquivalent(FACTORY)
                .withSeen(List.of(seen(1, 12_500, BuiltBy.OWNER), seen(2, 13_000, BuiltBy.SHOP))).value(CAR, PriceModel.fit(cars)));
        assertEquals(3, listed.weights().size());
        assertTrue(listed.basis().contains("2 swaps seen"), listed.basis());
    }

    @Test
    void how_it_was_found_names_a_sale_of_the_car_itself_the_approaches_that_told_and_the_swaps_seen() {
        String alone = value(SwapValue.options(), CAR).howFound();
        assertTrue(alone.startsWith("no car like this is in the owner's listings")
                && !alone.contains("the stock car and the car that"), alone);
        SwapOptions seen = SwapValue.options().withFactoryEquivalent(FACTORY).withSeen(List.of(seen(1, 12_500, BuiltBy.OWNER)));
        String three = value(seen, CAR).howFound();
        assertTrue(three.startsWith("The price is put together from") && three.contains("the stock car and the car that the maker sold")
                && three.contains("1 swap seen that other people made, 0 of them sold, 1 with this body and this running gear"), three);
        String sold = value(seen.withOffers(List.of(OwnOffer.sold(12_900, SwapWorld.DAY), OwnOffer.refused(11_000))), CAR).howFound();
        assertTrue(sold.startsWith("this very car was sold, for 12,900 on 2026-06-01") && sold.contains("1 time, counts too"), sold);
    }

    @Test
    void the_words_of_one_approach_speak_of_no_other() {
        CarFacts other = CarFacts.of("Line 90").body("shell 0").runningGear("gear 3").modelYear(2013).mileage(TestCars.miles(70_000))
                .build();
        SwapValue one = value(SwapValue.options(), FinishedCar.of("alone", other).with(BuiltBy.OWNER));
        String all = one.tables().stream().map(t -> InOneLine.of(t.text())).collect(Collectors.joining("\n"));
        assertEquals(1, one.weights().size());
        assertFalse(all.contains("the other approaches") || all.contains("how far the approaches differ") || all.contains("swaps seen tell")
                || all.contains("From the stock car"), all);
    }

    @Test
    void draws_belong_to_the_states_of_the_market() {
        SwapValue value = value(SwapValue.options().withFactoryEquivalent(FACTORY), CAR);
        double[] stock = level(SwapWorld.facts(0, 0, 2013, 70_000).build());
        assertEquals(4000, value.draws().length);
        double correlation = Draws.covariance(stock, value.levelDraws())
                / Math.sqrt(Draws.covariance(stock, stock) * Draws.covariance(value.levelDraws(), value.levelDraws()));
        assertTrue(correlation > 0.1, "correlation with the stock car's draws: " + correlation);
        ValueDraws joint = MODEL.draws(4000, 1);
        assertArrayEquals(value.draws(), value(SwapValue.options().withFactoryEquivalent(FACTORY).with(joint), CAR).draws(), 0);
    }

    @Test
    void an_owner_is_told_what_a_price_of_the_trade_or_of_an_auction_is_not() {
        assertFalse(value(SwapValue.options(), CAR).result().text().contains("At this level"));
        assertTrue(InOneLine.of(value(SwapValue.options().with(LevelOfTrade.TRADE_SOLD), CAR).result().text()).contains("one that buys"
                + " it from you to sell it again pays less"));
        assertTrue(InOneLine.of(value(SwapValue.options().with(LevelOfTrade.AUCTION), CAR).result().text()).contains("the auction's fee for"
                + " sellers comes off"));
    }

    // By hand: such a swap less the stock car, draw by draw.
    @Test
    void what_the_change_adds_is_told_beside_it_on_the_same_draws() {
        SwapValue value = value(SwapValue.options().withFactoryEquivalent(FACTORY), CAR);
        double[] stock = value.stockDraws().orElseThrow();
        double[] added = value.addedDraws().orElseThrow();
        for (int i = 0; i < added.length; i++) {
            assertEquals(value.levelDraws()[i] - stock[i], added[i], 1e-9);
        }
        double[] sorted = Arrays.stream(added).sorted().toArray();
        assertTrue(InOneLine.of(value.brackets().text()).contains("What the change adds to the stock car, draw by draw: "
                + Figures.rounded(Quantiles.ofSorted(sorted, 0.5)) + ", 80 % range " + Figures.range(SwapValue.range(sorted, 0.80))),
                value.brackets().text());
    }

    // By hand: stock + position (factory - stock), draw by draw, where the position is known.
    @Test
    void a_known_position_lies_between_stock_and_factory() {
        FinishedCar same = FinishedCar.of("the swap", FACTS.toBuilder().gearMileage(TestCars.miles(70_000)).build());
        double[] found = told(value(SwapValue.options().withFactoryEquivalent(FACTORY).assuming(with("swap_position", 0.4, 0)), same),
                Approach.Kind.POSITION).level();
        double[] stock = level(SwapWorld.facts(0, 0, 2013, 70_000).build());
        double[] factory = level(SwapWorld.facts(3, 3, 2013, 70_000).build());
        for (int i = 0; i < 100; i++) {
            assertEquals(stock[i] + 0.4 * (factory[i] - stock[i]), found[i], 1e-6 * found[i]);
        }
    }

    // By hand: (stock - removed + gear + 0.25 work - 400) x (1 - 3 %), amounts stated without spread.
    @Test
    void cost_adds_up() {
        SwapCost cost = SwapCost.unstated().withGear(UnsureAmount.stated(3000, 0, "stated")).withWork(UnsureAmount.stated(2000, 0,
                "stated"))
                .withRemoved(UnsureAmount.stated(700, 0, "stated"))
                .withLosses(List.of(new SwapCost.Loss("air conditioning", 400, 0), new SwapCost.Loss("zone rule", 0, 0.03)));
        double[] found = told(value(SwapValue.options().assuming(with("swap_work_share", 0.25, 0)), CAR.with(cost)), Approach.Kind.COST)
                .level();
        double[] stock = level(SwapWorld.facts(0, 0, 2013, 70_000).build());
        for (int i = 0; i < 100; i++) {
            assertEquals((stock[i] - 700 + 3000 + 500 - 400) * 0.97, found[i], 1e-6 * found[i]);
        }
    }

    // By hand: the logarithm of the price moves from chassis to running-gear mileage by the share.
    @Test
    void the_effect_of_mileage_is_shared_between_chassis_and_running_gear() {
        Assumptions half = with("swap_mileage_share", 0.3, 0).with(new Assumption("swap_built_by_owner",
                Assumptions.defaults().get("swap_built_by_owner").question(), 0, 0, "%", "test", ""));
        double[] found = told(value(SwapValue.options().assuming(half), CAR), Approach.Kind.BODY_AND_GEAR).level();
        double[] chassis = level(FACTS.toBuilder().powerKw(SwapWorld.power(3)).build());
        double[] gear = level(FACTS.toBuilder().powerKw(SwapWorld.power(3)).mileage(TestCars.miles(40_000)).build());
        for (int i = 0; i < 100; i++) {
            assertEquals(Math.exp(0.7 * Math.log(chassis[i]) + 0.3 * Math.log(gear[i])), found[i], 1e-6 * found[i]);
        }
    }

    @Test
    void a_pair_seen_many_times_agrees_with_the_ordinary_fair_value() {
        List<Car> cars = new ArrayList<>(WORLD.cars());
        Random random = new Random(5);
        for (int k = 0; k < 40; k++) {
            double miles = 30_000 + random.nextInt(80_000);
            CarFacts facts = FACTS.toBuilder().powerKw(SwapWorld.power(3)).modelYear(2009 + k % 9).mileage(TestCars.miles(miles)).build();
            double log = 9.9 - 0.09 * (facts.ageOn(SwapWorld.DAY).orElseThrow() - 13) - 0.04 * (miles / 10_000 - 7)
                    + 0.12 * random.nextGaussian();
            cars.add(TestCars.car(1000 + k, facts, Math.exp(log)));
        }
        PriceModel model = PriceModel.fit(cars);
        CarFacts facts = FACTS.toBuilder().powerKw(SwapWorld.power(3)).gearMileage(TestCars.miles(70_000)).build();
        SwapValue value = assertInstanceOf(SwapValue.class, SwapValue.of(FinishedCar.of("often seen", facts).with(BuiltBy.OWNER), model));
        FairValue fair = assertInstanceOf(FairValue.class, model.value(Subject.of(facts, LevelOfTrade.PRIVATE_ASKING, SwapWorld.DAY)));
        Approach.Told own = told(value, Approach.Kind.BODY_AND_GEAR);
        assertTrue(fair.level(0.80).holds(median(own.level())), fair + " against " + median(own.level()));
        assertEquals(Math.log(fair.median()), Math.log(median(own.level())), 0.02);
    }

    @Test
    void nothing_known_of_the_running_gear_gives_no_value_but_what_is_missing() {
        List<Car> cars = WORLD.cars().stream().filter(c -> c.facts().runningGear().equals(Optional.of("gear 0"))).toList();
        CarFacts facts = CarFacts.of("Line 00").body("shell 0").runningGear("nobody's six").modelYear(2013).mileage(TestCars.miles(70_000))
                .build();
        NoSwapValue no = assertInstanceOf(NoSwapValue.class, SwapValue.of(FinishedCar.of("unknown", facts), PriceModel.fit(cars)));
        assertEquals(3, no.approaches().size());
        assertTrue(no.needed().size() >= 2 && no.needed().size() <= 3, no.needed().toString());
        assertTrue(no.needed().get(0).contains("nobody's six"), no.needed().toString());
        assertTrue(no.tables().get(0).text().contains("cannot tell"));
        SwapAnswer none = no;
        assertEquals("no approach can value the finished car 'unknown'; needed: " + String.join("; ", no.needed()),
                none.answer().map(SwapValue::median).match(m -> "a value", why -> why.reason() + "; needed: " + why.needed()));
        assertEquals(no, none.<Object>match(v -> v, n -> n));
        SwapAnswer some = value(SwapValue.options(), CAR);
        assertEquals(some, some.answer().orElseThrow());
        assertEquals(some, some.<Object>match(v -> v, n -> n));
    }

    @Test
    void the_order_of_what_was_seen_does_not_matter() {
        List<OwnOffer> offers = new ArrayList<>(List.of(OwnOffer.refused(9000, SwapWorld.DAY),
                OwnOffer.refused(9800, SwapWorld.DAY.plusDays(20)),
                OwnOffer.noTaker(16_000, 45, SwapWorld.DAY.plusDays(30)), OwnOffer.noTaker(14_500, 30, SwapWorld.DAY.plusDays(60))));
        double[] first = value(SwapValue.options().withOffers(offers), CAR).draws();
        Random random = new Random(1);
        for (int k = 0; k < 5; k++) {
            Collections.shuffle(offers, random);
            assertArrayEquals(first, value(SwapValue.options().withOffers(offers), CAR).draws(), 0, "order " + k);
        }
    }

    @Test
    void refused_offers_bound_the_owners_value_and_move_the_price_toward_the_buyers_side() {
        double before = value(SwapValue.options(), CAR).median();
        SwapValue high = value(SwapValue.options().withOffers(List.of(OwnOffer.refused(1.3 * before, SwapWorld.DAY))), CAR);
        SwapValue low = value(SwapValue.options().withOffers(List.of(OwnOffer.refused(0.6 * before, SwapWorld.DAY))), CAR);
        assertTrue(high.median() > before && low.median() < before, low.median() + " " + before + " " + high.median());
        assertEquals(Optional.of(1.3 * before), high.ownersValueAbove());
    }

    @Test
    void standing_without_a_taker_lowers_the_price_the_more_the_longer() {
        double before = value(SwapValue.options(), CAR).median();
        double month = value(SwapValue.options().withOffers(List.of(OwnOffer.noTaker(before, 30, SwapWorld.DAY))), CAR).median();
        double year = value(SwapValue.options().withOffers(List.of(OwnOffer.noTaker(before, 365, SwapWorld.DAY))), CAR).median();
        assertTrue(year < month && month < before, year + " " + month + " " + before);
    }

    @Test
    void a_sale_leaves_little_doubt() {
        double before = value(SwapValue.options(), CAR).median();
        SwapValue sold = value(SwapValue.options().with(LevelOfTrade.PRIVATE_SOLD)
                .withOffers(List.of(OwnOffer.sold(1.1 * before, SwapWorld.DAY))), CAR);
        assertEquals(1.1 * before, sold.median(), 0.03 * before);
        assertTrue(sold.range(0.80).high() / sold.range(0.80).low() < 1.2, sold.range(0.80).toString());
    }

    private static SeenSwap seen(int number, double price, BuiltBy by) {
        return new SeenSwap("seen " + number, FACTS, by, price, SeenSwap.Kind.ASKED, LevelOfTrade.PRIVATE_ASKING, PriceIncludes.NEITHER,
                Optional.of(SwapWorld.DAY), Optional.empty());
    }

    @Test
    void swaps_that_were_seen_narrow_the_range_and_lower_the_share_of_assumptions() {
        SwapValue before = value(SwapValue.options().withFactoryEquivalent(FACTORY), CAR);
        double price = 1.6 * before.median();
        List<SeenSwap> seen = java.util.stream.IntStream.range(0, 6).mapToObj(k -> seen(k, price * (1 + 0.02 * k), BuiltBy.OWNER)).toList();
        SwapValue after = value(SwapValue.options().withFactoryEquivalent(FACTORY).withSeen(seen), CAR);
        assertTrue(after.median() > before.median());
        assertTrue(after.level(0.80).high() / after.level(0.80).low() < before.level(0.80).high() / before.level(0.80).low());
        assertTrue(after.priorShare() < before.priorShare(), after.held());
        String all = InOneLine.of(after.tables().get(0).text() + after.approachesTable().text() + after.grids().get(0).text());
        assertTrue(all.contains("The 6 swaps seen of this body and this running gear tell of a price that is +")
                && all.contains("the approaches together") && all.contains("swaps of this body and running gear that were seen"), all);
    }

    // By hand: five swaps of the assumed scatter, and as many as there are less one of the seen.
    @Test
    void swaps_like_it_tell_how_far_single_ones_scatter() {
        double middle = value(SwapValue.options(), CAR).median();
        List<SeenSwap> near = new ArrayList<>();
        List<SeenSwap> far = new ArrayList<>();
        for (int k = 0; k < 10; k++) {
            near.add(seen(k, middle * Math.exp(0.01 * (k % 2 == 0 ? 1 : -1)), BuiltBy.OWNER));
            far.add(seen(k, middle * Math.exp(0.6 * (k % 2 == 0 ? 1 : -1)), BuiltBy.OWNER));
        }
        SwapValue calm = value(SwapValue.options().withSeen(near), CAR);
        double assumed = Math.sqrt(Draws.covariance(calm.situation().departure, calm.situation().departure));
        SwapValue wild = value(SwapValue.options().withSeen(far), CAR);
        assertEquals(Math.sqrt((5 + 10 * 0.01 * 0.01 / (assumed * assumed)) / 14), calm.worked().alike.scatter(), 0.02);
        assertEquals(Math.sqrt((5 + 10 * 0.6 * 0.6 / (assumed * assumed)) / 14), wild.worked().alike.scatter(), 0.2);
        assertTrue(calm.range(0.80).high() / calm.range(0.80).low() < wild.range(0.80).high() / wild.range(0.80).low());
    }

    @Test
    void swaps_of_another_pair_teach_the_approaches() {
        SwapValue before = value(SwapValue.options().withFactoryEquivalent(FACTORY), CAR);
        CarFacts other = CarFacts.of("Line 11").body("shell 1").runningGear("gear 3").modelYear(2013).mileage(TestCars.miles(60_000))
                .seller(Seller.PRIVATE).build();
        List<SeenSwap> seen = java.util.stream.IntStream.range(0, 6).mapToObj(k -> new SeenSwap("other " + k, other, BuiltBy.OWNER,
                16_000 + 200 * k, SeenSwap.Kind.ASKED, LevelOfTrade.PRIVATE_ASKING, PriceIncludes.NEITHER, Optional.of(SwapWorld.DAY),
                Optional.of("Line 33"))).toList();
        SwapValue after = value(SwapValue.options().withFactoryEquivalent(FACTORY).withSeen(seen), CAR);
        for (Approach.Kind kind : List.of(Approach.Kind.BODY_AND_GEAR, Approach.Kind.POSITION)) {
            assertTrue(told(after, kind).priorShare() < told(before, kind).priorShare(), kind.toString());
        }
    }

    private static double logVariance(SwapValue value) {
        double[] log = java.util.Arrays.stream(value.levelDraws()).map(Math::log).toArray();
        return Draws.covariance(log, log);
    }

    // By hand: the same swap with each assumption as good as certain in turn, all else as it was.
    @Test
    void no_assumption_is_said_to_hold_more_than_the_variance_falls_by_without_it() {
        SwapOptions options = SwapValue.options().withFactoryEquivalent(FACTORY);
        SwapValue whole = value(options, CAR);
        double before = logVariance(whole);
        for (String name : List.of("swap_position", "swap_work_share", "swap_work_cost", "swap_gear_share", "swap_mileage_share",
                "swap_built_by_owner", "swap_approach_spread")) {
            Assumption a = Assumptions.defaults().get(name);
            boolean scale = name.equals("swap_approach_spread");
            Assumptions certain = with(name, scale ? 0.001 : a.middle(), 0);
            double falls = 1 - logVariance(value(options.assuming(certain), CAR)) / before;
            double said = whole.reconciled().held().parts().getOrDefault(a.words(), 0.0);
            assertTrue(said <= falls + 0.03, name + " is said to hold " + said + ", without it the variance falls by " + falls);
        }
        double pairs = whole.reconciled().held().parts().get("how far a body and a running gear depart together");
        PriceModel additive = PriceModel.options().with(with("spread_pairs", 0.001, 0)).fit(WORLD.cars());
        double falls = 1 - logVariance((SwapValue) options.value(CAR, additive)) / before;
        assertTrue(pairs > 0.02 && pairs <= falls + 0.03, pairs + " " + falls);
        assertTrue(whole.largestAssumption().share() <= whole.priorShare() && whole.priorShare() < 1, whole.held());
    }

    // The model has no sales: what sold swaps tell of an asking price rests on the step between the two, which is assumed.
    @Test
    void what_swaps_seen_must_be_carried_over_by_is_counted_where_it_is_an_assumption() {
        SwapOptions options = SwapValue.options().withSeen(java.util.stream.IntStream.range(0, 30).mapToObj(k -> new SeenSwap("sold "
                + k, FACTS, BuiltBy.OWNER, 15_000 + 100 * (k % 7), SeenSwap.Kind.SOLD, LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER,
                Optional.of(SwapWorld.DAY), Optional.empty())).toList());
        SwapValue sold = value(options, CAR);
        Assumption step = Assumptions.defaults().get("level_private_sold");
        PriceModel certain = PriceModel.options().with(with(step.name(), step.middle(), 0.001)).fit(WORLD.cars());
        double falls = 1 - logVariance((SwapValue) options.value(CAR, certain)) / logVariance(sold);
        double said = sold.reconciled().held().parts().get("level of trade: private sold");
        assertTrue(said > 0.05 && said <= falls + 0.03, said + " is said, without it the variance falls by " + falls);
    }

    @Test
    void an_amount_that_is_stated_and_may_be_off_is_an_assumption() {
        SwapCost cost = SwapCost.unstated().withGear(UnsureAmount.stated(5000, 0.3, "stated"));
        Map<Approach.Kind, Double> alone = Map.of(Approach.Kind.COST, 1.0);
        String words = Assumptions.defaults().get("swap_stated_spread").words();
        assertTrue(value(SwapValue.options().weighted(alone, "a test"), CAR.with(cost)).reconciled().held().parts().get(words) > 0.2);
        assertEquals(0, value(SwapValue.options().weighted(alone, "a test"), CAR).reconciled().held().parts().get(words));
    }

    @Test
    void what_would_narrow_it_is_what_such_rows_do() {
        SwapOptions options = SwapValue.options().withFactoryEquivalent(FACTORY);
        SwapValue before = value(options, CAR);
        Table narrowing = before.narrowing();
        List<Double> said = narrowing.rows().stream().map(row -> Double.parseDouble(row.get(1).exact())).toList();
        double middle = median(before.levelDraws());
        // They scatter as assumed, so that they teach nothing of the scatter.
        double spread = Math.exp(Math.sqrt(Draws.covariance(before.reconciled().departure(), before.reconciled().departure())));
        List<SeenSwap> seen = List.of(seen(1, middle / spread, BuiltBy.OWNER), seen(2, middle, BuiltBy.OWNER),
                seen(3, middle * spread, BuiltBy.OWNER));
        assertTrue(narrowing.rows().get(0).get(0).shown().startsWith("swaps like this one"), narrowing.text());
        assertEquals(1 - logVariance(value(options.withSeen(seen), CAR)) / logVariance(before), said.get(0), 0.06);
        String line = narrowing.rows().get(1).get(0).shown().replaceAll(".*'(.*)'.*", "$1");
        CarFacts like = WORLD.cars().stream().map(Car::facts).filter(f -> f.vehicle().equals(line)).findFirst().orElseThrow();
        CarFacts facts = FACTS.inFormOf(like);
        double expected = median(level(facts));
        List<Car> cars = new ArrayList<>(WORLD.cars());
        for (int k = -1; k < 2; k++) {
            cars.add(TestCars.car(3000 + k, facts, expected * Math.exp(0.04 * k)));
        }
        double done = 1 - logVariance((SwapValue) options.value(CAR, PriceModel.fit(cars))) / logVariance(before);
        assertEquals(done, said.get(1), 0.06, line);
    }

    @Test
    void the_user_may_weight_by_reason_and_the_result_says_so() {
        SwapValue value = value(SwapValue.options().withFactoryEquivalent(FACTORY).weighted(Map.of(Approach.Kind.POSITION, 1.0),
                "the club's sales are better than my listings"), CAR);
        assertEquals(1, value.weights().get(Approach.Kind.POSITION), 1e-12);
        assertTrue(InOneLine.of(value.tables().get(0).text()).contains("the club's sales are better than my listings"));
    }

    @Test
    void both_mileages_are_printed_apart_and_never_as_one() {
        String all = value(SwapValue.options().withFactoryEquivalent(FACTORY), CAR).tables().stream().map(Table::text)
                .collect(Collectors.joining());
        assertTrue(all.contains("70,000 mi, read") && all.contains("40,000 mi, read"));
        assertFalse(all.contains("55,000"), "the mean of the two");
    }

    @Test
    void rollers_in_the_listings_stand_for_the_recipient_without_its_gear() {
        List<Car> cars = new ArrayList<>(WORLD.cars());
        for (int k = 0; k < 6; k++) {
            cars.add(TestCars.car(2000 + k, SwapWorld.facts(0, 0, 2013, 70_000).runs(Runs.NO_ENGINE).build(), 4000 + 100 * k));
        }
        SwapValue value = assertInstanceOf(SwapValue.class, SwapValue.of(CAR, PriceModel.fit(cars)));
        assertTrue(told(value, Approach.Kind.COST).remarks().stream().anyMatch(r -> r.contains("6 cars without an engine")));
    }

    @Test
    void the_grids_multiply_out_to_the_value() {
        SwapValue value = value(SwapValue.options().withFactoryEquivalent(FACTORY), CAR);
        for (Table table : value.tables()) {
            if (table.title().startsWith("From the")) {
                double product = Double.parseDouble(table.rows().get(0).get(4).exact());
                for (int r = 1; r < table.rows().size(); r++) {
                    product *= Double.parseDouble(table.rows().get(r).get(1).exact());
                }
                assertEquals(value.median(), product, 1e-6 * value.median(), table.title());
            }
        }
    }

    // By hand: the shell at what the price model has of it, whatever its removed parts would bring, and three quarters of the gear.
    @Test
    void taken_apart_the_shell_brings_what_a_car_without_an_engine_sells_for() {
        SwapCost cost = SwapCost.unstated().withGear(UnsureAmount.stated(3000, 0, "stated"));
        SwapOptions net = SwapValue.options().assuming(with("swap_gear_net", 0.75, 0));
        SwapValue value = value(net, CAR.with(cost));
        double[] shell = MODEL.draws(4000, 1).level(Subject.of(value.stock().toBuilder().runs(Runs.NO_ENGINE).build(),
                LevelOfTrade.PRIVATE_SOLD, SwapWorld.DAY));
        double[] apart = value.takenApartDraws().orElseThrow();
        for (int i = 0; i < 100; i++) {
            assertEquals(shell[i] + 0.75 * 3000, apart[i], 1e-6 * apart[i]);
        }
        assertArrayEquals(apart, value(net, CAR.with(cost.withRemoved(UnsureAmount.stated(100, 0, "stated")))).takenApartDraws()
                .orElseThrow());
    }

    @Test
    void the_grid_from_the_factory_equivalent_names_what_differs() {
        String body = value(SwapValue.options().withFactoryEquivalent(FACTORY), CAR).grids().get(1).text();
        assertTrue(body.contains("the recipient's body in place of the factory's"), body);
        CarFacts sameBody = SwapWorld.facts(0, 1, 2013, 70_000).build();
        String line = value(SwapValue.options().withFactoryEquivalent(sameBody), CAR).grids().get(1).text();
        assertTrue(line.contains("the line 'Line 00' in place of 'Line 01', and this running gear in place of its own"), line);
        assertFalse(line.contains("body in place"), line);
    }

    // By hand: where a dearer car finds as many takers, half are taken in 60 days at any price, and in 90 days 1 - 0.5^1.5 = 65 %.
    @Test
    void what_to_ask_stands_with_how_long_the_car_then_waits_until_it_is_sold() {
        PriceModel indifferent = PriceModel.options().with(with("swap_takers_left", 1, 0)).fit(WORLD.cars());
        SwapValue flat = assertInstanceOf(SwapValue.class, SwapValue.options().value(CAR, indifferent));
        for (List<Cell> row : flat.selling().orElseThrow().rows()) {
            assertEquals(List.of("60", "29", "65", "88"), row.subList(2, 6).stream().map(Cell::shown).toList());
        }
        SwapValue value = value(SwapValue.options(), CAR);
        List<List<Cell>> rows = value.selling().orElseThrow().rows();
        assertEquals(value.median(), Double.parseDouble(rows.get(1).get(0).exact()), 1e-6 * value.median());
        for (int k = 1; k < rows.size(); k++) {
            double less = Double.parseDouble(rows.get(k - 1).get(2).exact());
            assertTrue(Double.parseDouble(rows.get(k).get(2).exact()) > 1.2 * less, rows.toString());
        }
        assertEquals(Optional.empty(), value(SwapValue.options().withOffers(List.of(OwnOffer.sold(12_000, SwapWorld.DAY))), CAR).selling());
    }

    private static double number(List<Cell> row, int column) {
        return Double.parseDouble(row.get(column).exact());
    }

    // By hand: what is left is what is brought less a known share; of two ways that bring the same the one that keeps less leaves most.
    @Test
    void each_way_to_sell_leaves_what_it_brings_less_what_others_keep() {
        Assumptions known = with("sell_commission", 10, 0);
        for (String kept : List.of("sell_private_costs", "sell_to_dealer", "sell_auction_fee")) {
            Assumption a = Assumptions.defaults().get(kept);
            known = known.with(new Assumption(kept, a.question(), 20, 0, a.unit(), "test", ""));
        }
        SwapValue value = value(SwapValue.options().assuming(known), CAR);
        List<List<Cell>> rows = value.waysToSell().orElseThrow().rows();
        assertEquals(List.of("privately", "on commission with a dealer", "to a dealer", "at auction, without a reserve",
                "taken apart, body and running gear"), rows.stream().map(row -> row.get(0).shown()).toList());
        assertEquals(Quantiles.median(value.soldDraws()), number(rows.get(0), 1), 0.01);
        double[] keeps = {0.2, 0.1, 0.2, 0.2, 0};
        for (int w = 0; w < keeps.length; w++) {
            assertEquals((1 - keeps[w]) * number(rows.get(w), 1), number(rows.get(w), 4), 0.02, rows.get(w).toString());
        }
        assertEquals(number(rows.get(1), 1), number(rows.get(2), 1), "a dealer sells it for the same");
        assertEquals(0, number(rows.get(2), 6), "and keeps twice as much where he buys it");
        assertEquals(100, rows.stream().mapToDouble(row -> number(row, 6)).sum(), 1e-6);
        assertEquals(Optional.empty(),
                value(SwapValue.options().withOffers(List.of(OwnOffer.sold(12_000, SwapWorld.DAY))), CAR).waysToSell());
    }

    @Test
    void what_others_keep_moves_no_value() {
        SwapValue before = value(SwapValue.options(), CAR);
        before.waysToSell();
        SwapValue after = value(SwapValue.options().assuming(with("sell_commission", 40, 0)), CAR);
        assertArrayEquals(before.draws(), after.draws(), 0);
        assertEquals(before.priorShare(), after.priorShare(), 0);
        assertEquals(before.waysToSell().orElseThrow().rows().get(0).subList(0, 6),
                after.waysToSell().orElseThrow().rows().get(0).subList(0, 6), "no other way");
    }

    @Test
    void no_sale_is_shown_as_surer_than_draws_can_tell() {
        PriceModel quick = PriceModel.options().with(with("swap_days_on_offer", 1, 0)).fit(WORLD.cars());
        SwapValue value = assertInstanceOf(SwapValue.class, SwapValue.options().value(CAR, quick));
        assertEquals("> 99", value.selling().orElseThrow().rows().get(0).get(5).shown());
    }

    @Test
    void two_pairs_never_seen_depart_each_by_its_own() {
        ValueDraws draws = MODEL.draws(4000, 1);
        Subject own = Subject.of(FACTS, LevelOfTrade.PRIVATE_ASKING, SwapWorld.DAY);
        CarFacts other = CarFacts.of("Line 11").body("shell 1").runningGear("gear 3").modelYear(2013).mileage(TestCars.miles(70_000))
                .build();
        Subject another = Subject.of(other, LevelOfTrade.PRIVATE_ASKING, SwapWorld.DAY);
        double[] level = draws.level(own);
        double shared = Draws.covariance(level, draws.level(another));
        double apart = Draws.covariance(level, draws.levelOfAnotherPair(another, 5));
        assertTrue(apart < shared, apart + " against " + shared);
        CarFacts seen = SwapWorld.facts(1, 1, 2013, 70_000).build();
        Subject known = Subject.of(seen, LevelOfTrade.PRIVATE_ASKING, SwapWorld.DAY);
        assertArrayEquals(draws.level(known), draws.levelOfAnotherPair(known, 5), 0);
    }
}
