package swapworth.market;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.listing.Car;
import swapworth.listing.Listing;
import swapworth.listing.Mileage;
import swapworth.listing.SeenCar;
import swapworth.listing.Sighting;

/**
 * Which car a listing of the fit belongs to: by the line on which it stands, for a map of a million listings takes more room than a number
 * a line. Listings that share file name and line, which files of one name in two folders can, are kept in a map, and so are those on lines
 * far beyond the number of cars.
 */
final class CarOfListing {
    private static final int NONE = -1;
    private static final int[] NO_CARS = new int[0];

    private final List<Car> cars;
    private final Map<String, int[]> byFile = new HashMap<>();
    private final Map<String, int[]> others = new HashMap<>();

    CarOfListing(List<Car> cars) {
        this.cars = cars;
        for (int c = 0; c < cars.size(); c++) {
            for (Listing listing : cars.get(c).sightings()) {
                put(listing, c);
            }
        }
    }

    private void put(Listing listing, int car) {
        String file = listing.origin().file();
        int line = listing.origin().line();
        int[] lines = byFile.getOrDefault(file, NO_CARS);
        if (line < 0 || line > 1000 + 16L * cars.size()) {
            putAmongOthers(listing, car);
            return;
        }
        if (line >= lines.length) {
            int before = lines.length;
            lines = Arrays.copyOf(lines, Math.max(64, line + line / 2 + 1));
            Arrays.fill(lines, before, lines.length, NONE);
            byFile.put(file, lines);
        }
        if (lines[line] == NONE) {
            lines[line] = car;
        } else {
            putAmongOthers(listing, car);
        }
    }

    private void putAmongOthers(Listing listing, int car) {
        int[] known = others.getOrDefault(listing.origin().toString(), NO_CARS);
        int[] more = Arrays.copyOf(known, known.length + 1);
        more[known.length] = car;
        others.put(listing.origin().toString(), more);
    }

    /** The number of the car of a listing; -1 for a listing that is none of the fit. */
    int of(Listing listing) {
        int[] lines = byFile.getOrDefault(listing.origin().file(), NO_CARS);
        int line = listing.origin().line();
        int car = line >= 0 && line < lines.length ? lines[line] : NONE;
        if (car != NONE && shows(car, listing)) {
            return car;
        }
        int[] further = others.isEmpty() ? NO_CARS : others.getOrDefault(listing.origin().toString(), NO_CARS);
        for (int other : further) {
            if (shows(other, listing)) {
                return other;
            }
        }
        return NONE;
    }

    private boolean shows(int car, Listing listing) {
        for (Listing sighting : cars.get(car).sightings()) {
            if (isSame(sighting, listing)) {
                return true;
            }
        }
        return false;
    }

    /**
     * Whether two listings are one row, which need not be one object: by where it stands and what tells rows of two files of one name
     * apart, for to compare all that they say would take longer than to make them.
     */
    static boolean isSame(Sighting one, Sighting other) {
        return one == other || one.origin().line() == other.origin().line() && one.origin().file().equals(other.origin().file())
                && one.id().equals(other.id()) && one.seenOn().equals(other.seenOn()) && one.amount() == other.amount()
                && one.kind() == other.kind() && one.facts().vehicle().equals(other.facts().vehicle())
                && miles(one) == miles(other);
    }

    private static double miles(Sighting seen) {
        Optional<Mileage> mileage = seen.facts().mileage();
        return mileage.isPresent() ? mileage.get().miles() : NONE;
    }

    /** The place of a sighting among those of its car, which it must be one of. */
    static int place(Sighting seen, SeenCar car) {
        List<? extends Sighting> sightings = car.sightings();
        int place = 0;
        while (place + 1 < sightings.size() && !isSame(sightings.get(place), seen)) {
            place++;
        }
        return place;
    }
}
