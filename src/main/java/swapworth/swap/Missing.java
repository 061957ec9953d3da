package swapworth.swap;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.market.FairValue;
import swapworth.market.PairStanding;
import swapworth.market.Subject;
import swapworth.statistics.Draws;

/** Which rows would help most: to have an answer at all, or to narrow it. */
final class Missing {
    private static final int MOST = 3;

    private Missing() {
    }

    /** What is missing where no approach can tell, the most helpful first. */
    static List<String> rows(Situation s, Approaches approaches) {
        List<String> rows = new ArrayList<>();
        String gear = s.model.runningGear(s.finished);
        boolean stock = approaches.stockValue.isPresent();
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

    /** What would narrow the value: each kind of row by the covariance of its price with the level. */
    static List<Gain> gains(SwapValue value) {
        Situation s = value.situation();
        double[] level = value.reconciled();
        double variance = Draws.covariance(level, level);
        List<Gain> gains = new ArrayList<>();
        Subject own = s.subject(s.finished);
        double noise = Draws.covariance(s.departure, s.departure);
        double[] pair = s.logLevel(own);
        if (value.worked().builder.isPresent()) {
            gains.add(gain("swaps like this one, by whoever built it, in swaps.csv", level, variance,
                    Situation.sum(pair, value.worked().builder.get()), noise));
        }
        Map<String, CarFacts> lines = new TreeMap<>();
        for (Car car : s.model.cars()) {
            lines.putIfAbsent(car.facts().vehicle(), car.facts());
        }
        double single = Draws.covariance(s.single(own, s.seedOf("narrowing")), s.single(own, s.seedOf("narrowing")));
        lines.forEach((line, facts) -> {
            Subject one = s.subject(Situation.inFactoryForm(facts, s.finished));
            if (s.model.value(one) instanceof FairValue) {
                gains.add(gain("listings of the line '" + line + "' of the same year", level, variance, s.logLevel(one), single));
            }
        });
        gains.sort(Comparator.comparingDouble((Gain g) -> -g.share()).thenComparing(Gain::row));
        return gains.subList(0, Math.min(MOST, gains.size()));
    }

    private static Gain gain(String row, double[] level, double variance, double[] seen, double noise) {
        double both = Draws.covariance(level, seen);
        return new Gain(row, both * both / (Draws.covariance(seen, seen) + noise / 3) / variance);
    }
}
