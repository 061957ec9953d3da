package swapworth.market;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Facts;
import swapworth.listing.Mileage;
import swapworth.statistics.Quantiles;

/**
 * Age and mileage of any car, filled in where a row does not give them: a missing mileage from the age, at the usual miles a year of
 * the line, a missing age from the mileage likewise. What is filled in widens the error of the row.
 */
final class Measures {
    /** Below this age miles a year say little. */
    private static final double LEAST_AGE = 1;
    private static final int ENOUGH = 5;

    private final Map<String, Rate> byLine;
    private final Rate everywhere;
    private final double mileageSlope;
    private final double ageSlope;
    private final double errorScale;
    private final LocalDate fallbackDay;

    /** Usual miles a year, and the standard deviation of one car's about it. */
    private record Rate(double milesPerYear, double spread) {
    }

    /** A car's age and mileage as the model takes them. */
    record Measured(double age, double miles, double inflation, List<String> remarks) {
    }

    Measures(Stock stock, Assumptions assumptions) {
        this.fallbackDay = stock.fallbackDay();
        this.mileageSlope = assumptions.logMiddle("mileage_slope");
        this.ageSlope = assumptions.logMiddle("age_slope");
        this.errorScale = assumptions.get("error_scale").middle();
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
        this.byLine = new HashMap<>();
        for (int k = 0; k < ofLines.length; k++) {
            byLine.put(stock.lines().get(k), found.get(k + 1).orElse(everywhere));
        }
    }

    /** The usual rate of some cars, whose rates change places; of few there is none. */
    private static Optional<Rate> rate(double[] rates) {
        if (rates.length < ENOUGH) {
            return Optional.empty();
        }
        double middle = Quantiles.ofPartlyOrdered(rates, 0.5);
        // Half the range between the 16 % and 84 % points is one standard deviation of a normal law.
        double spread = (Quantiles.ofPartlyOrdered(rates, 0.84) - Quantiles.ofPartlyOrdered(rates, 0.16)) / 2;
        return Optional.of(new Rate(middle, Math.max(spread, 0.1 * middle)));
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
            return new Measured(age, mileage, 1, List.of());
        }
        Rate rate = byLine.getOrDefault(line, everywhere);
        if (!Double.isNaN(age)) {
            double miles = rate.milesPerYear * age;
            double unsure = mileageSlope * rate.spread * Math.max(LEAST_AGE, age) / 10_000;
            return new Measured(age, miles, inflation(unsure),
                    List.of("mileage unknown: the line's usual distance a year taken, range widened"));
        }
        double miles = Double.isNaN(mileage) ? rate.milesPerYear * 8 : mileage;
        double filled = miles / Math.max(1000, rate.milesPerYear);
        double unsure = ageSlope * filled * rate.spread / Math.max(1000, rate.milesPerYear);
        return new Measured(filled, miles, inflation(unsure),
                List.of("age unknown: filled in from the mileage at the line's usual distance a year, range widened"));
    }

    private double inflation(double unsure) {
        return Math.sqrt(1 + unsure * unsure / (errorScale * errorScale));
    }
}
