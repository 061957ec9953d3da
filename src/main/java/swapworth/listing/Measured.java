package swapworth.listing;

import java.util.OptionalDouble;

/** One measure a row, which may be missing. */
final class Measured {
    private final Numbers numbers = new Numbers();

    /** Sets the measure of a row that has none yet. */
    void set(int row, OptionalDouble value) {
        if (value.isPresent()) {
            numbers.set(row, Numbers.ofDouble(value.getAsDouble()));
        }
    }

    OptionalDouble get(int row) {
        long number = numbers.get(row);
        return number == 0 ? OptionalDouble.empty() : OptionalDouble.of(Numbers.toDouble(number));
    }

    OptionalDouble latest(int[] rows, int from, int to) {
        return get(numbers.latest(rows, from, to));
    }

    /** 0 if it is missing; equal where the measures are. */
    long code(int row) {
        return numbers.get(row);
    }
}
