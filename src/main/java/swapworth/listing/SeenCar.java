package swapworth.listing;

import java.util.List;

/** A car as a model asks for it: a {@link Car}, or a look at the rows of its sightings, of which no listing is made. */
public interface SeenCar {

    /** Its sightings, at least one, in order of date, then of place in the files. */
    List<? extends Sighting> sightings();

    /** The latest known word on each fact. */
    Facts facts();

    /**
     * How the car's last advertisement ended, as far as the rows know: a car that merely vanished is not sold.
     *
     * @return sold if a sighting gives a sale, else the outcome of the latest sighting
     */
    default Outcome outcome() {
        List<? extends Sighting> seen = sightings();
        for (int i = 0; i < seen.size(); i++) {
            if (seen.get(i).kind() == PriceKind.SOLD) {
                return Outcome.SOLD;
            }
        }
        return seen.get(seen.size() - 1).outcome();
    }

    /**
     * A car of several, not made if it is not.
     *
     * @param cars any cars
     * @param number the place of the car among them
     * @return the car as it was seen
     * @throws IndexOutOfBoundsException if there is no such car
     */
    static SeenCar of(List<Car> cars, int number) {
        return cars instanceof StoredCars stored ? stored.seen(number) : cars.get(number);
    }
}
