package swapworth.market;

import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import swapworth.listing.Car;
import swapworth.listing.Listing;

/**
 * Which car a listing of the fit belongs to: by the line on which it stands, for a map of a million listings takes more room than a number
 * a line. Listings that share file name and line, which files of one name in two folders can, are kept in a map, and so are those on lines
 * far beyond the number of cars.
 */
final class CarOfListing {
    private static final int NONE = -1;

    private final List<Car> cars;
    private final Map<String, int[]> byFile = new HashMap<>();
    private final Map<Listing, Integer> others = new IdentityHashMap<>();

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
        int[] lines = byFile.getOrDefault(file, new int[0]);
        if (line < 0 || line > 1000 + 16L * cars.size()) {
            others.put(listing, car);
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
            others.put(listing, car);
        }
    }

    /** The number of the car of a listing; -1 for a listing that is none of the fit. */
    int of(Listing listing) {
        int[] lines = byFile.getOrDefault(listing.origin().file(), new int[0]);
        int line = listing.origin().line();
        int car = line >= 0 && line < lines.length ? lines[line] : NONE;
        if (car != NONE) {
            for (Listing sighting : cars.get(car).sightings()) {
                if (sighting == listing) {
                    return car;
                }
            }
        }
        return others.getOrDefault(listing, NONE);
    }
}
