package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.Listing;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;

/** A bid that missed the reserve: the car is worth more to its seller, nobody knows how much more. */
class MissedBidTest {

    private static List<Car> withBids(double bid, int bids) {
        List<Car> cars = new ArrayList<>(TestCars.line("Aral Siv", 11_000, 14, 4));
        for (int i = 0; i < 4; i++) {
            cars.add(TestCars.car(700 + i, "Aral Siv", 2016 + i, 60_000 - 4_000 * i, 8_500 + 900 * i, PriceKind.SOLD,
                    Seller.AUCTION));
        }
        for (int i = 0; i < bids; i++) {
            cars.add(TestCars.car(800 + i, "Aral Siv", 2017, 58_000 + 2_000 * i, bid, PriceKind.BID_NOT_MET, Seller.AUCTION));
        }
        return cars;
    }

    private static double valueAtAuction(List<Car> cars) {
        Listing like = TestCars.car(950, "Aral Siv", 2017, 60_000, 9_000, PriceKind.SOLD, Seller.AUCTION).latest();
        return TestCars.fair(PriceModel.fit(cars).judge(like).valuation()).median();
    }

    @Test
    void a_low_bid_tells_nothing_and_a_higher_one_pulls_the_value_up() {
        double none = valueAtAuction(withBids(1, 0));
        double low = valueAtAuction(withBids(500, 2));
        assertEquals(1, low / none, 0.005);
        double before = low;
        for (double bid = 2_000; bid <= 12_000; bid += 2_000) {
            double value = valueAtAuction(withBids(bid, 2));
            assertTrue(value > before * 0.999, bid + ": " + value + " after " + before);
            before = value;
        }
        assertTrue(before > 1.05 * none, before + " for " + none);
    }

    @Test
    void a_bid_beyond_belief_pulls_less_than_a_likely_one() {
        double none = valueAtAuction(withBids(1, 0));
        double likely = valueAtAuction(withBids(12_000, 2));
        double absurd = valueAtAuction(withBids(90_000, 2));
        assertTrue(absurd < likely && absurd > 0.98 * none, none + " " + likely + " " + absurd);
    }

    @Test
    void bids_as_high_as_prices_pull_less_far_than_prices_of_twice_that_height() {
        double none = valueAtAuction(withBids(1, 0));
        double bids = valueAtAuction(withBids(none, 3));
        assertTrue(bids > none && bids < 1.2 * none, bids + " for " + none);
    }
}
