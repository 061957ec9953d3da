package swapworth.market;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import swapworth.listing.Damage;
import swapworth.listing.PriceKind;
import swapworth.listing.Runs;
import swapworth.listing.Saved;
import swapworth.listing.Sighting;
import swapworth.listing.Title;

/** What to look at before believing a price: a cheap car is often cheap for a reason that the row does not give. */
final class Flags {
    /** A gap of this factor is what a digit too many or too few makes. */
    static final double DIGIT = 5;

    private Flags() {
    }

    /** Whether a price is no further from its value than a missing digit would put it. */
    static boolean nearItsValue(double price, FairValue value) {
        return within(price, value.median());
    }

    /** Whether two prices are no further apart than a missing digit would put them. */
    static boolean within(double price, double other) {
        return price <= DIGIT * other && other <= DIGIT * price;
    }

    static List<String> of(Sighting seen, Subject subject, FairValue value, Position position) {
        List<String> flags = new ArrayList<>();
        if (!nearItsValue(seen.amount(), value)) {
            String side = seen.amount() > value.median() ? "above" : "below";
            flags.add("price " + side + " its value by more than a factor of 5: check for a typing error");
        }
        if (position == Position.BELOW) {
            List<String> silent = new ArrayList<>();
            if (subject.facts().title() == Title.UNKNOWN) {
                silent.add("title");
            }
            if (subject.facts().damage().isEmpty()) {
                silent.add("damage");
            }
            if (subject.facts().runs() == Runs.UNKNOWN) {
                silent.add("whether it runs");
            }
            if (subject.facts().mileage().isEmpty()) {
                silent.add("mileage");
            }
            flags.add(silent.isEmpty() ? "below the range: look for what the row does not say"
                    : "below the range, and the row is silent on: " + String.join(", ", silent));
        }
        Optional<Set<Damage>> zones = subject.facts().damage();
        if (zones.isPresent() && (zones.get().contains(Damage.FLOOD) || zones.get().contains(Damage.FIRE))) {
            flags.add("water or fire: treat electronics and seats as gone until proven otherwise");
        }
        if (seen.kind() == PriceKind.BID_NOT_MET) {
            flags.add("a bid that missed the reserve: the seller wants more than this");
        }
        if (seen.saved() == Saved.PICKED) {
            flags.add("picked by hand: its percentile is among picked rows");
        }
        return flags;
    }
}
