package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.Listings;
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
            boolean second = i > 0 && kept.get(i - 1).car() == whole.car() && whole.bound() == Bound.NONE
                    && kept.get(i - 1).bound() == Bound.NONE;
            assertEquals(second, made.isSecondPrice(i));
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
