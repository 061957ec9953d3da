package swapworth.market;

import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.statistics.Posterior;

/**
 * What the index of a market is read off: the fitted model with the cars and prices behind it, which are of several days.
 *
 * @param datesTellNothing how probable it is that the dates of the listings are not the days on which their prices were asked
 */
record IndexBasis(List<Car> cars, Assumptions assumptions, Encoder encoder, Posterior posterior, List<Evidence> evidence,
        double datesTellNothing) {

    static IndexBasis of(PriceFit fit) {
        return new IndexBasis(fit.cars(), fit.assumptions(), fit.encoder(), fit.posterior(), fit.evidence(),
                fit.chanceThatDatesTellNothing());
    }

    /** The first month with a sighting whose price is in the fit. */
    YearMonth first() {
        return YearMonth.from(encoder.begin().orElseThrow());
    }

    /** The last month with a sighting. */
    YearMonth last() {
        return YearMonth.from(encoder.end().orElseThrow());
    }

    /** Every month from the first to the last. */
    List<YearMonth> months() {
        return Stream.iterate(first(), month -> !month.isAfter(last()), month -> month.plusMonths(1)).toList();
    }

    /** The days from the first one seen to the last. */
    long days() {
        return ChronoUnit.DAYS.between(encoder.begin().orElseThrow(), encoder.end().orElseThrow());
    }

    /** Whether the listings span so long that a season is told apart from the market. */
    boolean hasSeason() {
        return days() >= TimeTerms.A_YEAR;
    }

    /** How many cars have a price with a date. */
    int datedCars() {
        Set<Integer> dated = new HashSet<>();
        evidence.stream().filter(e -> e.subject().on().isPresent()).forEach(e -> dated.add(e.car()));
        return dated.size();
    }

    /** How many cars have a price of each month in the fit, of those that count. */
    Map<YearMonth, Integer> carsByMonth(Predicate<Evidence> counts) {
        Map<YearMonth, Set<Integer>> seen = new TreeMap<>();
        for (Evidence e : evidence) {
            if (counts.test(e)) {
                e.subject().on().ifPresent(day -> seen.computeIfAbsent(YearMonth.from(day), m -> new HashSet<>()).add(e.car()));
            }
        }
        Map<YearMonth, Integer> byMonth = new TreeMap<>();
        seen.forEach((month, set) -> byMonth.put(month, set.size()));
        return byMonth;
    }
}
