package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Listings;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;
import swapworth.market.TestCars.Seen;
import swapworth.statistics.Bound;

class EvidenceListTest {
    private final List<Car> cars = Listings.read(Path.of("sample-listings", "listings.csv")).cars();
    private final EvidenceList kept = EvidenceList.in(cars, List.of(), Integer.MAX_VALUE).evidence();
    private final EvidenceList made = EvidenceList.in(cars, List.of(), 0).evidence();

    @Test
    void rows_made_when_asked_for_say_what_kept_ones_say() {
        assertTrue(kept.size() > cars.size() / 2);
        assertEquals(kept, made);
        assertEquals(kept.undated(), made.undated());
    }

    @Test
    void the_flat_figures_are_those_of_the_whole_rows() {
        for (int i = 0; i < made.size(); i++) {
            Evidence whole = kept.get(i);
            assertEquals(whole.car(), made.car(i));
            assertEquals(whole.logPrice(), made.logPrice(i));
            assertEquals(whole.bound(), made.bound(i));
            assertEquals(whole.listing(), cars.get(made.car(i)).sightings().get(made.place(i)));
        }
    }

    private static int[] comparedWith(List<Seen> seen) {
        CarFacts facts = CarFacts.of("Line").modelYear(2016).seller(Seller.PRIVATE).build();
        List<Car> cars = List.of(TestCars.car(1, facts, 9_000), TestCars.car(2, facts, seen), TestCars.car(3, facts, 9_500));
        EvidenceList evidence = EvidenceList.in(cars, List.of()).evidence();
        assertEquals(seen.size() + 2, evidence.size());
        assertEquals(-1, evidence.comparedWith(0));
        assertEquals(-1, evidence.comparedWith(seen.size() + 1));
        return IntStream.rangeClosed(1, seen.size()).map(evidence::comparedWith).toArray();
    }

    @Test
    void prices_of_a_car_are_compared_with_the_one_before_and_bids_that_missed_with_its_last_price() {
        LocalDate day = LocalDate.of(2026, 3, 1);
        Seen ask = new Seen(day, PriceKind.ASKING, Seller.PRIVATE, 10_000);
        Seen bid = new Seen(day, PriceKind.BID_NOT_MET, Seller.AUCTION, 3_000);
        Seen bidOnTheYard = new Seen(day, PriceKind.BID_NOT_MET, Seller.TRADE, 4_000);
        Seen sale = new Seen(day, PriceKind.SOLD, Seller.PRIVATE, 9_500);
        Seen traded = new Seen(day, PriceKind.SOLD, Seller.TRADE, 9_800);
        assertArrayEquals(new int[] {-1}, comparedWith(List.of(ask)));
        assertArrayEquals(new int[] {-1}, comparedWith(List.of(bid)));
        assertArrayEquals(new int[] {-1, -1}, comparedWith(List.of(bid, bidOnTheYard)));
        assertArrayEquals(new int[] {-1, 1, 2}, comparedWith(List.of(ask, sale, traded)));
        assertArrayEquals(new int[] {3, -1, 2}, comparedWith(List.of(bid, ask, sale)));
        assertArrayEquals(new int[] {-1, 3, 1}, comparedWith(List.of(ask, bid, sale)));
        assertArrayEquals(new int[] {-1, 1, 2}, comparedWith(List.of(ask, sale, bid)));
        assertArrayEquals(new int[] {4, -1, 4, 2}, comparedWith(List.of(bid, ask, bidOnTheYard, sale)));
    }

    @Test
    void the_first_price_of_a_car_is_its_first_whatever_was_bid_before() {
        for (EvidenceList of : List.of(kept, made)) {
            Set<Integer> priced = of.stream().filter(e -> e.bound() == Bound.NONE).map(Evidence::car).collect(Collectors.toSet());
            assertEquals(priced, Arrays.stream(of.firstPrices()).mapToObj(of::car).collect(Collectors.toSet()));
            assertEquals(priced.size(), of.firstPrices().length);
        }
    }

    @Test
    void nobody_knows_the_day_or_who_is_still_on_offer_once_dates_are_taken_away() {
        EvidenceList undated = made.undated();
        assertTrue(undated.stream().allMatch(e -> e.subject().on().isEmpty()));
        for (int i = 0; i < undated.size(); i++) {
            assertEquals(made.logPrice(i), undated.logPrice(i));
            assertTrue(!undated.onOffer(i));
        }
    }
}
