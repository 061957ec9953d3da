package swapworth.swap;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.DrivenWheels;
import swapworth.market.FairValue;
import swapworth.market.PairStanding;
import swapworth.market.Subject;
import swapworth.statistics.Draws;

/** Which rows would help most: to have an answer at all, or to narrow it. */
final class Missing {
    private static final int MOST = 3;
    /** How many rows are thought of. */
    private static final int ROWS = 3;
    /** Lines for which the approaches are weighed anew. */
    private static final int LOOKED_AT = 6;
    /** What takes away less is not named. */
    private static final double LEAST = 0.005;

    private Missing() {
    }

    /** What is missing where no approach can tell, the most helpful first. */
    static List<String> rows(Situation s, Approaches approaches) {
        List<String> rows = new ArrayList<>();
        String gear = s.model.runningGear(s.finished);
        boolean stock = approaches.brackets.stock.isPresent();
        boolean named = s.finished.runningGear().isPresent();
        boolean gearKnown = s.model.cars().stream().anyMatch(c -> s.model.runningGear(c.facts()).equals(gear));
        if (!stock) {
            rows.add("three listings of the line '" + s.stock.vehicle() + "', the car that was changed");
        }
        if (!named) {
            rows.add("the running gear of the finished car: running_gear or gear_line in its row");
        } else if (!gearKnown) {
            rows.add("three listings of cars with the running gear '" + s.finished.runningGear().get()
                    + "', best of the line that gave it");
        }
        if (named && s.model.pair(s.finished) == PairStanding.APART) {
            rows.add("two listings of cars that link the two: the body '" + s.model.body(s.finished) + "' with a running gear that other"
                    + " lines have too, or '" + gear + "' under a body that is sold with another running gear as well");
            rows.add("power_kw and cylinders of at least three running gears in lines.csv");
        }
        if (s.factory.isEmpty()) {
            rows.add("a row of the role 'factory equivalent' in cars.csv, and three listings of its line");
        }
        return rows.subList(0, Math.min(MOST, rows.size()));
    }

    /** A row that may be added and how much of the variance of the level three like it would take away. */
    record Gain(String row, double share) {
    }

    /**
     * What would narrow the value: three rows in the state of the finished car, each at the price that is expected of it. Swaps like it
     * speak of the result itself. Listings move the market that all approaches rest on, which are then weighed anew.
     */
    static List<Gain> gains(SwapValue value) {
        Situation s = value.situation();
        Reconciled told = value.reconciled();
        double[] level = told.draws();
        double variance = Draws.covariance(level, level);
        List<Gain> gains = new ArrayList<>();
        gains.add(new Gain("swaps like this one, by whoever built it, in swaps.csv",
                variance / (variance + Draws.covariance(told.departure(), told.departure()) / ROWS)));
        double before = told.combination().sd() * told.combination().sd();
        for (Map.Entry<String, double[]> line : likely(value).entrySet()) {
            double after = told.given(line.getValue(), noise(s)).sd();
            // What the approaches know less of and the swaps seen know of adds up in the inverse of the variance.
            double left = 1 / (1 / variance + 1 / (after * after) - 1 / before);
            gains.add(new Gain("listings of the line '" + line.getKey() + "' of the same year and state", 1 - left / variance));
        }
        gains.sort(Comparator.comparingDouble((Gain g) -> -g.share()).thenComparing(Gain::row));
        return gains.stream().filter(g -> g.share() >= LEAST).limit(MOST).toList();
    }

    /** How each of the rows departs from the middle of its description. */
    private static List<double[]> noise(Situation s) {
        return IntStream.range(0, ROWS).mapToObj(k -> s.single(s.subject(s.finished), s.seedOfCar("narrowing " + k))).toList();
    }

    /** The lines whose cars move together with the finished car most, each with its draws in the state of that car. */
    private static Map<String, double[]> likely(SwapValue value) {
        Situation s = value.situation();
        Map<String, List<CarFacts>> lines = new TreeMap<>();
        for (Car car : s.model.cars()) {
            lines.computeIfAbsent(car.facts().vehicle(), line -> new ArrayList<>())
                    .add(s.finished.inFormOf(car.facts()));
        }
        Map<String, double[]> draws = new HashMap<>();
        Map<String, Double> together = new TreeMap<>();
        lines.forEach((line, forms) -> {
            Subject one = s.subject(Situation.usual(forms));
            if (s.model.value(one) instanceof FairValue) {
                double[] log = s.logLevel(one);
                double both = Draws.covariance(value.reconciled().together(), log);
                draws.put(line, log);
                together.put(line, both * both / Draws.covariance(log, log));
            }
        });
        Map<String, double[]> likely = new LinkedHashMap<>();
        together.entrySet().stream().sorted(Map.Entry.<String, Double>comparingByValue().reversed()).limit(LOOKED_AT)
                .forEach(e -> likely.put(e.getKey(), draws.get(e.getKey())));
        return likely;
    }

    /** What such rows must state to help that much: all that the row of the finished car states. */
    static String asStated(CarFacts f) {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("runs", f.runs().words());
        words.put("rust", f.rust().words());
        words.put("paint", f.paint().words());
        words.put("interior", f.interior().words());
        words.put("mechanical", f.mechanical().words());
        words.put("records", f.records().words());
        words.put("keys", f.keys().words());
        words.put("airbags", f.airbags().words());
        words.put("title", f.title().words());
        words.put("damage", f.damageInWords());
        List<String> stated = new ArrayList<>();
        words.forEach((column, word) -> {
            if (!word.equals("unknown")) {
                stated.add(column + " " + word);
            }
        });
        List<String> measured = new ArrayList<>();
        f.powerKw().ifPresent(x -> measured.add("power_kw"));
        f.cylinders().ifPresent(x -> measured.add("cylinders"));
        f.weightKg().ifPresent(x -> measured.add("weight_kg"));
        if (f.drivenWheels() != DrivenWheels.UNKNOWN) {
            measured.add("driven_wheels");
        }
        return String.join(", ", stated) + (measured.isEmpty() ? "" : "; swaps also " + String.join(", ", measured));
    }
}
