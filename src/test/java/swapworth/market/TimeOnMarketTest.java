package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Listings;
import swapworth.listing.Outcome;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;
import swapworth.market.TestCars.Seen;
import swapworth.market.TimeOnMarket.Asked;
import swapworth.market.TimeOnMarket.Vanished;
import swapworth.statistics.Survival;
import swapworth.world.CarOfWorld;
import swapworth.world.SampleWorld;

/** How long cars of a known world are on offer, how their asks are cut, and what is paid. */
class TimeOnMarketTest {
    private static final SampleWorld WORLD = SampleWorld.withDefaults().withCarsPerLine(100).generate(602);
    private static final TimeOnMarket TIME = TimeOnMarket.of(PriceModel.fit(WORLD.joinedCars())).orElseThrow();

    @Test
    void the_two_curves_enclose_the_share_that_is_truly_sold() {
        // What a collector cannot see: how many days after it was first offered a car was truly sold; a kept one never is.
        List<CarOfWorld> cars = WORLD.cars();
        double n = 0;
        double sold = 0;
        assertEquals(TimeOnMarket.Clock.ON_OFFER, TIME.clock());
        for (TimeOnMarket.Offer offer : TIME.offers()) {
            if (offer.gapBefore() > 0) {
                CarOfWorld car = cars.stream().filter(c -> c.name().equals(offer.car())).findFirst().orElseThrow();
                n++;
                sold += car.fate() == CarOfWorld.Fate.SOLD && car.daysOnOffer() <= 40 ? 1 : 0;
            }
        }
        double unsold = 1 - sold / n;
        double longest = TIME.untilSale(Vanished.NOT_SOLD).at(40).orElseThrow();
        double shortest = TIME.untilSale(Vanished.SOLD).at(40).orElseThrow();
        assertTrue(shortest < unsold + 0.05 && unsold < longest + 0.05, shortest + " < " + unsold + " < " + longest);
        assertTrue(shortest < longest);
    }

    /** Weekly looks from the first of January on, then none for six weeks; a car is named by its first day, and whether it ended. */
    private static TimeOnMarket weekly(Path folder, int cameUp, String... further) throws IOException {
        StringBuilder rows = new StringBuilder("id,seen_on,vehicle,model_year,mileage_mi,price_usd,outcome,ended_on\n");
        Random random = new Random(8);
        List<String> offers = new ArrayList<>(List.of("stood,2026-01-01,,", "stood 2,2026-01-01,gone,2026-01-20"));
        for (int n = 0; n < cameUp; n++) {
            LocalDate day = LocalDate.of(2026, 1, 8).plusDays(7 * (n % 4));
            offers.add("came up " + n + "," + day + (n % 2 == 0 ? ",gone," + day.plusDays(10 + n) : ",,"));
        }
        offers.addAll(List.of(further));
        for (String offer : offers) {
            String[] cells = offer.split(",", -1);
            rows.append(cells[0]).append(',').append(cells[1]).append(",Line,").append(2012 + random.nextInt(8)).append(',')
                    .append(30_000 + random.nextInt(90_000)).append(',').append(9_000 + random.nextInt(5_000)).append(',')
                    .append(cells[2]).append(',').append(cells[3]).append('\n');
        }
        return TimeOnMarket.of(PriceModel.fit(Listings.read(Files.writeString(folder.resolve("listings.csv"), rows)).cars())).orElseThrow();
    }

    @Test
    void a_car_has_been_on_offer_since_a_day_between_two_looks_or_since_nobody_knows_when(@TempDir Path folder) throws IOException {
        TimeOnMarket time = weekly(folder, 12, "after a pause,2026-03-12,,", "no day,2026-01-15,sold,", "at last,2026-03-12,gone,");
        Map<String, TimeOnMarket.Offer> offers = time.offers().stream().collect(Collectors.toMap(TimeOnMarket.Offer::car, o -> o));
        assertEquals(0, offers.get("stood").gapBefore());
        assertEquals(7, offers.get("came up 3").gapBefore());
        assertEquals(0, offers.get("after a pause").gapBefore());
        assertEquals(0, offers.get("came up 2").gapAfter(), "the row tells its last day");
        assertEquals(7, offers.get("no day").gapAfter());
        assertEquals(0, offers.get("at last").gapAfter(), "no look came after");
        assertEquals(TimeOnMarket.Clock.ON_OFFER, time.clock());
        assertEquals(13, time.untilSale(Vanished.SOLD).size());
        String text = time.tables().get(0).text();
        assertTrue(text.contains("13 of 17 cars, each counted from the beginning of its offer"), text);
        assertTrue(text.contains("Left out are 4"), text);
    }

    @Test
    void where_too_few_cars_came_up_while_one_looked_all_count_from_their_first_sighting_and_the_table_says_what_is_missing(
            @TempDir Path folder) throws IOException {
        TimeOnMarket time = weekly(folder, 8);
        assertEquals(TimeOnMarket.Clock.SINCE_FIRST_SEEN, time.clock());
        assertEquals(10, time.untilSale(Vanished.SOLD).size());
        String text = time.tables().get(0).text().replaceAll("\\s+", " ");
        assertTrue(text.contains("may lie above or below what is shown, and beyond its range"), text);
    }

    @Test
    void cars_asked_above_fair_value_stay_longer() {
        Survival above = TIME.untilSale(Asked.ABOVE, Vanished.SOLD);
        Survival below = TIME.untilSale(Asked.BELOW, Vanished.SOLD);
        double later = above.median().orElseThrow();
        double sooner = below.median().orElseThrow();
        assertTrue(later > sooner + 3, later + " against " + sooner);
    }

    @Test
    void cuts_have_the_size_and_the_timing_of_the_world() {
        // The world cuts 3 to 6 % at a time, and 2 to 4 % with a repost, for the first time after two to three weeks.
        TimeOnMarket.Cuts cuts = TIME.cuts().orElseThrow();
        assertTrue(cuts.percent() > 3 && cuts.percent() < 6, cuts.toString());
        assertTrue(cuts.firstAfterDays() > 7 && cuts.firstAfterDays() < 30, cuts.toString());
    }

    @Test
    void what_is_paid_comes_from_the_pairs_and_without_them_from_the_assumptions() {
        TimeOnMarket.Paid own = TIME.paid().get(0);
        double truth = 100 * Math.expm1(WORLD.truths().effect("level_private_sold"));
        assertEquals(Seller.PRIVATE, own.seller());
        assertTrue(own.pairs() > 30, own.toString());
        assertEquals(truth, own.percent(), 2, own.toString());
        TimeOnMarket none = TimeOnMarket.of(PriceModel.fit(TestCars.line("Abel", 12_000, 25, 1))).orElseThrow();
        assertEquals(0, none.paid().get(0).pairs());
        assertEquals(-6, none.paid().get(0).percent(), 1e-9);
        // Eight of ten of a normal law lie within 1.2816 of its spread: the assumption's, log points, about ln 0.94.
        double spread = Assumptions.defaults().logSpread("level_private_sold");
        assertEquals(100 * (0.94 * Math.exp(-1.2816 * spread) - 1), none.paid().get(0).low80(), 1e-6);
        assertEquals(100 * (0.94 * Math.exp(1.2816 * spread) - 1), none.paid().get(0).high80(), 1e-6);
        assertTrue(none.tables().get(2).text().contains("assumption"), none.tables().get(2).text());
    }

    /** What is paid privately and at dealers where ten cars of thirty are sold 40 days later for a share of the ask. */
    private static List<TimeOnMarket.Paid> paid(Seller asked, Seller sold, double share) {
        Random random = new Random(3);
        List<Car> cars = new ArrayList<>();
        for (int n = 0; n < 30; n++) {
            CarFacts facts = CarFacts.of("Line").modelYear(2012 + random.nextInt(10))
                    .mileage(TestCars.miles(30_000 + random.nextInt(90_000))).build();
            LocalDate day = LocalDate.of(2026, 1, 15).plusDays(n);
            double ask = Math.rint(120 * Math.exp(0.1 * random.nextGaussian())) * 100;
            List<Seen> seen = new ArrayList<>(List.of(new Seen(day, PriceKind.ASKING, asked, ask)));
            if (n < 10) {
                seen.add(new Seen(day.plusDays(40), PriceKind.SOLD, sold, share * ask));
            }
            cars.add(TestCars.car(n, facts, seen));
        }
        return TimeOnMarket.of(PriceModel.fit(cars)).orElseThrow().paid();
    }

    // Source: of 100,000 sets of five from a normal law, the next one lies between the tenth and ninetieth quantile of the five, definition
    // 7, in 56 % (numpy); by Student's law with 4 degrees of freedom, 1.533206 s (1 + 1 / 5)^(1/2) about the mean, in 80 %.
    @Test
    void five_pairs_tell_less_of_the_next_sale_than_of_themselves() {
        double[] shares = {0.90, 0.91, 0.94, 0.95, 0.96};
        List<Car> cars = new ArrayList<>();
        for (int n = 0; n < 30; n++) {
            LocalDate day = LocalDate.of(2026, 1, 15).plusDays(n);
            CarFacts facts = CarFacts.of("Line").modelYear(2012 + n % 10).mileage(TestCars.miles(30_000 + 3_000 * n)).build();
            List<Seen> seen = new ArrayList<>(List.of(new Seen(day, PriceKind.ASKING, Seller.PRIVATE, 10_000)));
            if (n < shares.length) {
                seen.add(new Seen(day.plusDays(40), PriceKind.SOLD, Seller.PRIVATE, 10_000 * shares[n]));
            }
            cars.add(TestCars.car(n, facts, seen));
        }
        TimeOnMarket.Paid paid = TimeOnMarket.of(PriceModel.fit(cars)).orElseThrow().paid().get(0);
        double half = 1.533206 * Math.sqrt(6.7 * 1.2);
        assertEquals(-6, paid.percent(), 1e-9);
        assertEquals(-6.8 - half, paid.low80(), 1e-4);
        assertEquals(-6.8 + half, paid.high80(), 1e-4);
    }

    @ParameterizedTest(name = "asked {0}, sold {1}: private {2}, trade {3}")
    @CsvSource({"PRIVATE, PRIVATE, 10, 0", "TRADE, TRADE, 0, 10", "TRADE, UNKNOWN, 0, 10", "PRIVATE, UNKNOWN, 10, 0",
        "UNKNOWN, TRADE, 0, 10", "UNKNOWN, UNKNOWN, 10, 0", "UNKNOWN, PRIVATE, 10, 0", "PRIVATE, AUCTION, 0, 0",
        "UNKNOWN, AUCTION, 0, 0", "TRADE, AUCTION, 0, 0", "PRIVATE, TRADE, 0, 0", "TRADE, PRIVATE, 0, 0"})
    void a_sale_answers_the_ask_of_the_same_kind_of_seller_alone(Seller asked, Seller sold, int byPrivate, int byTrade) {
        List<TimeOnMarket.Paid> paid = paid(asked, sold, 0.7);
        assertEquals(List.of(Seller.PRIVATE, Seller.TRADE), paid.stream().map(TimeOnMarket.Paid::seller).toList());
        assertEquals(List.of(byPrivate, byTrade), paid.stream().map(TimeOnMarket.Paid::pairs).toList());
        paid.stream().filter(p -> p.pairs() > 0).forEach(p -> assertEquals(-30, p.percent(), 1e-9));
    }

    @Test
    void where_nothing_is_sold_the_table_says_that_it_cannot_tell_and_what_would() {
        String none = TimeOnMarket.of(PriceModel.fit(TestCars.line("Abel", 12_000, 25, 1))).orElseThrow().tables().get(0).text();
        assertTrue(none.contains("No car seen on offer is known to be sold since") && none.contains("outcome and ended_on"), none);
        assertTrue(none.contains("none sold"), none);
        assertTrue(none.contains("not watched so long"), none);
        assertFalse(none.contains("not reached"), none);
        String some = TIME.tables().get(0).text();
        assertEquals(some.contains("not reached"), some.contains("Not reached: while you watched"), some);
    }

    @Test
    void a_vanished_car_is_sold_in_one_curve_only_and_auctions_are_in_none() {
        long gone = TIME.offers().stream().filter(o -> o.gapBefore() > 0 && o.outcome() == Outcome.GONE).count();
        assertTrue(gone > 0);
        assertEquals(gone, TIME.untilSale(Vanished.SOLD).endings() - TIME.untilSale(Vanished.NOT_SOLD).endings());
        assertTrue(TIME.offers().size() < WORLD.cars().size(), "some cars are only at auctions");
        assertInstanceOf(Answer.NotTold.class, TimeOnMarket.of(PriceModel.fit(WORLD.joinedCars().stream()
                .filter(c -> c.facts().seller() == Seller.AUCTION).toList())));
    }
}
