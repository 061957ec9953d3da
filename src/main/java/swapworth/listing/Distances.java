package swapworth.listing;

import java.util.Optional;
import swapworth.reading.DistanceUnit;

/** One distance travelled a row, with where it comes from; it may be missing. */
final class Distances {
    private final Numbers miles = new Numbers();
    private final Values<MileageStatus> status = new Values<>(MileageStatus.UNKNOWN);
    private final Values<DistanceUnit> unit = new Values<>(DistanceUnit.MI);

    /** Sets the distance of a row that has none yet. */
    void set(int row, Optional<Mileage> value) {
        if (value.isPresent()) {
            miles.set(row, Numbers.ofDouble(value.get().miles()));
            status.set(row, value.get().status());
            unit.set(row, value.get().unit());
        }
    }

    Optional<Mileage> get(int row) {
        long number = miles.get(row);
        return number == 0 ? Optional.empty() : Optional.of(new Mileage(Numbers.toDouble(number), status.get(row), unit.get(row)));
    }

    Optional<Mileage> latest(int[] rows, int from, int to) {
        return get(miles.latest(rows, from, to));
    }

    double miles(int row) {
        long number = miles.get(row);
        return number == 0 ? Double.NaN : Numbers.toDouble(number);
    }
}
