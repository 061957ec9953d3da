package swapworth.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/**
 * The columns of the references, made from the training cars alone: 1, age, mileage, then the further ones. Numbers are
 * standardised, and a missing one counts as the mean. A column whose known cells are all numbers is one; any other gives a 0/1
 * column for each word that stands at least twice in the training set.
 */
final class ReferenceColumns {
    /** The intercept, age and mileage. */
    static final int FIRST = 3;

    private final List<ToDoubleFunction<BenchCar>> columns = new ArrayList<>();

    ReferenceColumns(List<BenchCar> training) {
        columns.add(car -> 1);
        standardised(training, BenchCar::age);
        standardised(training, BenchCar::miles);
        TreeSet<String> names = training.stream().flatMap(c -> c.cells().keySet().stream())
                .collect(Collectors.toCollection(TreeSet::new));
        for (String name : names) {
            List<String> known = training.stream().flatMap(c -> Optional.ofNullable(c.cells().get(name)).stream()).toList();
            if (known.stream().noneMatch(cell -> Double.isNaN(number(cell)))) {
                standardised(training, car -> number(car.cells().getOrDefault(name, "")));
            } else {
                Map<String, Long> times = known.stream()
                        .collect(Collectors.groupingBy(w -> w, TreeMap::new, Collectors.counting()));
                times.forEach((word, count) -> {
                    if (count >= 2) {
                        columns.add(car -> word.equals(car.cells().get(name)) ? 1 : 0);
                    }
                });
            }
        }
    }

    private void standardised(List<BenchCar> training, ToDoubleFunction<BenchCar> measure) {
        double[] known = training.stream().mapToDouble(measure).filter(v -> !Double.isNaN(v)).toArray();
        double mean = Arrays.stream(known).average().orElse(0);
        double sd = Math.sqrt(Arrays.stream(known).map(v -> (v - mean) * (v - mean)).average().orElse(0));
        columns.add(car -> {
            double value = measure.applyAsDouble(car);
            return Double.isNaN(value) || !(sd > 0) ? 0 : (value - mean) / sd;
        });
    }

    private static double number(String cell) {
        try {
            return Double.parseDouble(cell);
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    double[] first(BenchCar car) {
        return Arrays.copyOf(all(car), FIRST);
    }

    double[] all(BenchCar car) {
        return columns.stream().mapToDouble(c -> c.applyAsDouble(car)).toArray();
    }
}
