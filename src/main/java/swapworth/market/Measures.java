package swapworth.market;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Facts;
import swapworth.listing.Mileage;
import swapworth.statistics.Quantiles;

/**
 * Age and mileage of any car, filled in where a row does not give them: a missing mileage from the age, at the usual miles a year of
 * the line, a missing age from the mileage likewise; a car that states neither is taken to be of the middle age of its line's cars. How
 * far what is filled in may be off widens the error of the row.
 *
 * <p>And how much a mile counts: of a line that is driven little each counts more. On open listings of 2018-19 the fall with 10,000 miles
 * went with the root of the miles a year: 3.3 to 3.6 % where cars go 12,000 to 14,000, 7.4 % where they go 2,900.
 */
final class Measures {
    /** Below this age miles a year say little. */
    private static final double LEAST_AGE = 1;
    private static final int ENOUGH = 5;
    /** A line's own rate has the weight of its cars, that of all cars, or what is assumed, the weight of so many. */
    private static final double WEIGHT_OF_OTHERS = 2;
    private static final double LEAST_WEIGHT_OF_A_MILE = 0.7;
    private static final double MOST_WEIGHT_OF_A_MILE = 2.5;

    /** Usual miles a year by line, and how much a mile of the line's cars counts. */
    private final Map<String, Rate> byLine;
    private final Rate everywhere;
    /** The age that a car is taken to be of that states neither age nor mileage, by line; of few cars that of all. */
    private final Map<String, UsualAge> ageByLine;
    private final UsualAge ageEverywhere;
    private final LocalDate fallbackDay;
    /** What is filled in is not further off than the cars that state it lie apart. */
    private final double mostUnsureYears;
    private final double mostUnsureMiles;

    /**
     * Usual miles a year, and the standard deviation of one car's about it.
     *
     * @param weightOfMile by how much more a mile counts than one of a car of the miles a year that are assumed
     */
    private record Rate(double milesPerYear, double spread, double weightOfMile) {
    }

    /** Some rates: how many, their middle, and the standard deviation of one about it. */
    private record Found(int number, double middle, double spread) {
    }

    /** The middle age of some cars, years, and the standard deviation of one car's about it, at least a year. */
    private record UsualAge(double years, double spread) {
        UsualAge {
            spread = Math.max(LEAST_AGE, spread);
        }
    }

    /**
     * A car's age and mileage as the model takes them.
     *
     * @param weightOfMile by how much more one of its miles counts than one of the usual car of all listings
     * @param unsureYears how far the age may be off, a standard deviation; 0 where it is stated
     * @param unsureMiles the same of the mileage
     * @param remarks what was filled in
     */
    record Measured(double age, double miles, double weightOfMile, double unsureYears, double unsureMiles, List<String> remarks) {

        /** What the usual car of all listings would state. */
        static Measured stated(double age, double miles) {
            return new Measured(age, miles, 1, 0, 0, List.of());
        }

        boolean isAgeStated() {
            return unsureYears == 0;
        }

        boolean isMileageStated() {
            return unsureMiles == 0;
        }
    }

    Measures(Stock stock, Assumptions assumptions) {
        this.fallbackDay = stock.fallbackDay();
        Rate assumed = new Rate(assumptions.get("miles_per_year").middle(), assumptions.get("miles_per_year").spread(), 1);
        double[] rates = new double[stock.rows()];
        for (int i = 0; i < rates.length; i++) {
            rates[i] = stock.age(i) >= LEAST_AGE ? stock.miles(i) / stock.age(i) : Double.NaN;
        }
        double[][] ofLines = stock.byLine(rates);
        double[] all = Arrays.stream(rates).filter(rate -> !Double.isNaN(rate)).toArray();
        // All cars first, for they take as long as all lines together.
        List<Found> found = IntStream.rangeClosed(0, ofLines.length).parallel()
                .mapToObj(k -> found(k == 0 ? all : ofLines[k - 1])).toList();
        this.everywhere = rate(found.get(0), assumed, assumed);
        double[] widest = Stream.<IntToDoubleFunction>of(stock::age, stock::miles).parallel()
                .mapToDouble(of -> spread(IntStream.range(0, stock.rows()).mapToDouble(of).filter(x -> !Double.isNaN(x)).toArray()))
                .toArray();
        this.mostUnsureYears = Math.max(1, widest[0]);
        this.mostUnsureMiles = Math.max(1000, widest[1]);
        this.byLine = new HashMap<>();
        for (int k = 0; k < ofLines.length; k++) {
            byLine.put(stock.lines().get(k), rate(found.get(k + 1), everywhere, assumed));
        }
        double[] ages = IntStream.range(0, stock.rows()).mapToDouble(stock::age).toArray();
        double[][] agesOfLines = stock.byLine(ages);
        double[] everyAge = Arrays.stream(ages).filter(age -> !Double.isNaN(age)).toArray();
        List<Optional<UsualAge>> usual = IntStream.rangeClosed(0, agesOfLines.length).parallel()
                .mapToObj(k -> usualAge(k == 0 ? everyAge : agesOfLines[k - 1])).toList();
        this.ageEverywhere = usual.get(0)
                .orElseGet(() -> new UsualAge(assumptions.get("usual_age").middle(), assumptions.get("usual_age").spread()));
        this.ageByLine = new HashMap<>();
        for (int k = 0; k < agesOfLines.length; k++) {
            ageByLine.put(stock.lines().get(k), usual.get(k + 1).orElse(ageEverywhere));
        }
    }

    /** The middle of some ages, which change places; of few there is none. */
    private static Optional<UsualAge> usualAge(double[] ages) {
        return ages.length < ENOUGH ? Optional.empty() : Optional.of(new UsualAge(Quantiles.ofPartlyOrdered(ages, 0.5), spread(ages)));
    }

    /** The middle of some rates, which change places, and how far they lie apart. */
    private static Found found(double[] rates) {
        return new Found(rates.length, rates.length == 0 ? 1 : Quantiles.ofPartlyOrdered(rates, 0.5), spread(rates));
    }

    /** The usual rate of some cars; of few it is that of others. */
    private static Rate rate(Found cars, Rate others, Rate assumed) {
        double own = Math.sqrt(Math.max(1, assumed.milesPerYear) / Math.max(1, cars.middle));
        double weight = Math.exp((cars.number * Math.log(bounded(own)) + WEIGHT_OF_OTHERS * Math.log(others.weightOfMile))
                / (cars.number + WEIGHT_OF_OTHERS));
        return cars.number < ENOUGH ? new Rate(others.milesPerYear, others.spread, weight)
                : new Rate(cars.middle, Math.max(cars.spread, 0.1 * cars.middle), weight);
    }

    private static double bounded(double weight) {
        return Math.min(MOST_WEIGHT_OF_A_MILE, Math.max(LEAST_WEIGHT_OF_A_MILE, weight));
    }

    /** Half the range between the 16 % and 84 % points, one standard deviation of a normal law; without bound for few values. */
    private static double spread(double[] values) {
        return values.length < ENOUGH ? Double.POSITIVE_INFINITY
                : (Quantiles.ofPartlyOrdered(values, 0.84) - Quantiles.ofPartlyOrdered(values, 0.16)) / 2;
    }

    private OptionalDouble age(Facts facts, Optional<LocalDate> on) {
        return facts.ageOn(on.orElse(fallbackDay));
    }

    Measured of(Subject subject) {
        Facts facts = subject.facts();
        Optional<Mileage> mileage = facts.mileage();
        return of(facts.vehicle(), age(facts, subject.on()).orElse(Double.NaN), mileage.isPresent() ? mileage.get().miles() : Double.NaN);
    }

    /** Age and mileage of a car of a line, of which either may be unknown: NaN. */
    Measured of(String line, double age, double mileage) {
        Rate rate = byLine.getOrDefault(line, everywhere);
        double weight = weight(rate);
        if (!Double.isNaN(age) && !Double.isNaN(mileage)) {
            return new Measured(age, mileage, weight, 0, 0, List.of());
        }
        if (!Double.isNaN(age)) {
            return new Measured(age, rate.milesPerYear * age, weight, 0, Math.min(mostUnsureMiles, rate.spread * Math.max(LEAST_AGE, age)),
                    List.of("mileage unknown: the line's usual distance a year taken, range widened"));
        }
        double usual = Math.max(1000, rate.milesPerYear);
        if (!Double.isNaN(mileage)) {
            double filled = mileage / usual;
            return new Measured(filled, mileage, weight, Math.min(mostUnsureYears, Math.max(LEAST_AGE, filled) * rate.spread / usual), 0,
                    List.of("age unknown: filled in from the mileage at the line's usual distance a year, range widened"));
        }
        UsualAge middle = ageByLine.getOrDefault(line, ageEverywhere);
        return new Measured(middle.years, rate.milesPerYear * middle.years, weight, Math.min(mostUnsureYears, middle.spread),
                Math.min(mostUnsureMiles, middle.spread * usual),
                List.of("age and mileage unknown: the middle age of the line's cars taken, at its usual distance a year, range widened"));
    }

    /** By how much more a mile counts of the usual car of all listings than of one of the miles a year that are assumed. */
    double weightOfMile() {
        return everywhere.weightOfMile;
    }

    /** By how much more a mile counts of a line than of the usual car of all listings. */
    double weightOfMile(String line) {
        return weight(byLine.getOrDefault(line, everywhere));
    }

    private double weight(Rate rate) {
        return rate.weightOfMile / everywhere.weightOfMile;
    }
}
