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
 */
final class Measures {
    /** Below this age miles a year say little. */
    private static final double LEAST_AGE = 1;
    private static final int ENOUGH = 5;
    private final Map<String, Rate> byLine;
    private final Rate everywhere;
    /** The age that a car is taken to be of that states neither age nor mileage, by line; of few cars that of all. */
    private final Map<String, UsualAge> ageByLine;
    private final UsualAge ageEverywhere;
    private final LocalDate fallbackDay;
    /** What is filled in is not further off than the cars that state it lie apart. */
    private final double mostUnsureYears;
    private final double mostUnsureMiles;

    /** Usual miles a year, and the standard deviation of one car's about it. */
    private record Rate(double milesPerYear, double spread) {
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
     * @param unsureYears how far the age may be off, a standard deviation; 0 where it is stated
     * @param unsureMiles the same of the mileage
     * @param remarks what was filled in
     */
    record Measured(double age, double miles, double unsureYears, double unsureMiles, List<String> remarks) {

        static Measured stated(double age, double miles) {
            return new Measured(age, miles, 0, 0, List.of());
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
        Rate assumed = new Rate(assumptions.get("miles_per_year").middle(), assumptions.get("miles_per_year").spread());
        double[] rates = new double[stock.rows()];
        for (int i = 0; i < rates.length; i++) {
            rates[i] = stock.age(i) >= LEAST_AGE ? stock.miles(i) / stock.age(i) : Double.NaN;
        }
        double[][] ofLines = stock.byLine(rates);
        double[] all = Arrays.stream(rates).filter(rate -> !Double.isNaN(rate)).toArray();
        // All cars first, for they take as long as all lines together.
        List<Optional<Rate>> found = IntStream.rangeClosed(0, ofLines.length).parallel()
                .mapToObj(k -> rate(k == 0 ? all : ofLines[k - 1])).toList();
        this.everywhere = found.get(0).orElse(assumed);
        double[] widest = Stream.<IntToDoubleFunction>of(stock::age, stock::miles).parallel()
                .mapToDouble(of -> spread(IntStream.range(0, stock.rows()).mapToDouble(of).filter(x -> !Double.isNaN(x)).toArray()))
                .toArray();
        this.mostUnsureYears = Math.max(1, widest[0]);
        this.mostUnsureMiles = Math.max(1000, widest[1]);
        this.byLine = new HashMap<>();
        for (int k = 0; k < ofLines.length; k++) {
            byLine.put(stock.lines().get(k), found.get(k + 1).orElse(everywhere));
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

    /** The usual rate of some cars, whose rates change places; of few there is none. */
    private static Optional<Rate> rate(double[] rates) {
        if (rates.length < ENOUGH) {
            return Optional.empty();
        }
        double middle = Quantiles.ofPartlyOrdered(rates, 0.5);
        return Optional.of(new Rate(middle, Math.max(spread(rates), 0.1 * middle)));
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
        if (!Double.isNaN(age) && !Double.isNaN(mileage)) {
            return Measured.stated(age, mileage);
        }
        Rate rate = byLine.getOrDefault(line, everywhere);
        if (!Double.isNaN(age)) {
            return new Measured(age, rate.milesPerYear * age, 0, Math.min(mostUnsureMiles, rate.spread * Math.max(LEAST_AGE, age)),
                    List.of("mileage unknown: the line's usual distance a year taken, range widened"));
        }
        double usual = Math.max(1000, rate.milesPerYear);
        if (!Double.isNaN(mileage)) {
            double filled = mileage / usual;
            return new Measured(filled, mileage, Math.min(mostUnsureYears, Math.max(LEAST_AGE, filled) * rate.spread / usual), 0,
                    List.of("age unknown: filled in from the mileage at the line's usual distance a year, range widened"));
        }
        UsualAge middle = ageByLine.getOrDefault(line, ageEverywhere);
        return new Measured(middle.years, rate.milesPerYear * middle.years, Math.min(mostUnsureYears, middle.spread),
                Math.min(mostUnsureMiles, middle.spread * usual),
                List.of("age and mileage unknown: the middle age of the line's cars taken, at its usual distance a year, range widened"));
    }
}
