package swapworth.market;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import swapworth.listing.Car;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;
import swapworth.listing.Outcome;
import swapworth.listing.PriceKind;
import swapworth.statistics.Bound;
import swapworth.statistics.Quantiles;

/**
 * One price that the model learns from: a car at a level of trade, by its last sighting there.
 *
 * @param car the number of the car
 * @param listing the sighting
 * @param subject what the price is for
 * @param logPrice the natural logarithm of the price
 * @param standing whether it was still on offer at that price
 * @param bound whether the worth is the price, or only lies above it
 */
record Evidence(int car, Listing listing, Subject subject, double logPrice, Bound bound, Standing standing) {

    /** Whether a car was still on offer when it was last seen, as far as its rows know. */
    enum Standing { ON_OFFER, ENDED }


    /**
     * The evidence in some cars: of each car its last ask, its sale and its auction price, as far as it has them, in order of
     * date. A bid that missed the reserve counts only where the car has no auction price. A price that a digit too many or too
     * few sets apart from the other prices of its car is passed over: they tell more.
     */
    static List<Evidence> of(List<Car> cars) {
        List<Evidence> evidence = new ArrayList<>(cars.size() + cars.size() / 4);
        Map<String, Double> ofLine = middlesOfLines(cars);
        for (int c = 0; c < cars.size(); c++) {
            List<Listing> sightings = cars.get(c).sightings();
            if (sightings.size() == 1) {
                evidence.add(of(c, cars.get(c), sightings.get(0)));
                continue;
            }
            Map<LevelOfTrade, Listing> last = new EnumMap<>(LevelOfTrade.class);
            double likely = likely(sightings, ofLine);
            for (Listing listing : sightings) {
                if (!Flags.within(listing.price().amount(), likely)) {
                    continue;
                }
                boolean missed = listing.price().kind() == PriceKind.BID_NOT_MET;
                Listing before = last.get(listing.level());
                if (before == null || !missed || before.price().kind() == PriceKind.BID_NOT_MET) {
                    last.put(listing.level(), listing);
                }
            }
            for (Listing listing : sightings) {
                if (last.get(listing.level()) == listing) {
                    evidence.add(of(c, cars.get(c), listing));
                }
            }
        }
        return evidence;
    }

    /** The same price as if nobody knew its day. */
    Evidence undated() {
        return new Evidence(car, listing, new Subject(subject.facts(), subject.level(), subject.includes(), Optional.empty()), logPrice, bound,
                Standing.ENDED);
    }

    /** The middle price of each line in which a car was seen twice, found for several lines at a time. */
    private static Map<String, Double> middlesOfLines(List<Car> cars) {
        Map<String, List<Listing>> byLine = new HashMap<>();
        Set<String> needed = new HashSet<>();
        for (Car car : cars) {
            for (Listing listing : car.sightings()) {
                String line = listing.facts().vehicle();
                List<Listing> ofLine = byLine.get(line);
                if (ofLine == null) {
                    ofLine = new ArrayList<>();
                    byLine.put(line, ofLine);
                }
                ofLine.add(listing);
                if (car.sightings().size() == 2) {
                    needed.add(line);
                }
            }
        }
        return needed.parallelStream().collect(Collectors.toMap(line -> line, line -> middle(byLine.getOrDefault(line, List.of()))));
    }

    /** The middle price of a car; of two that differ as by a digit, the one nearer to the middle price of the line. */
    private static double likely(List<Listing> sightings, Map<String, Double> ofLine) {
        if (sightings.size() != 2) {
            return middle(sightings);
        }
        double first = sightings.get(0).price().amount();
        double second = sightings.get(1).price().amount();
        double usual = ofLine.getOrDefault(sightings.get(0).facts().vehicle(), first);
        return Math.abs(Math.log(first / usual)) < Math.abs(Math.log(second / usual)) ? first : second;
    }

    private static double middle(List<Listing> sightings) {
        return Quantiles.of(sightings.stream().mapToDouble(s -> s.price().amount()).toArray(), 0.5);
    }

    private static Evidence of(int number, Car car, Listing listing) {
        return new Evidence(number, listing, subject(car, listing), Math.log(listing.price().amount()),
                listing.price().kind() == PriceKind.BID_NOT_MET ? Bound.BELOW : Bound.NONE,
                listing.price().kind() == PriceKind.ASKING && car.outcome() == Outcome.OPEN ? Standing.ON_OFFER : Standing.ENDED);
    }

    /** What a sighting's price is for: the car as all its sightings together show it, offered as this one says. */
    static Subject subject(Car car, Listing listing) {
        Optional<String> region = listing.facts().region();
        if (car.facts().seller() == listing.facts().seller() && (region.isEmpty() || region.equals(car.facts().region()))) {
            return new Subject(car.facts(), listing.level(), listing.price().includes(), listing.seenOn());
        }
        var facts = car.facts().toBuilder().seller(listing.facts().seller());
        if (region.isPresent()) {
            facts.region(region.get());
        }
        return new Subject(facts.build(), listing.level(), listing.price().includes(), listing.seenOn());
    }
}
