package swapworth.market;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CarFacts;
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

    Measures(List<Evidence> evidence, Assumptions assumptions, LocalDate fallbackDay) {
        this.fallbackDay = fallbackDay;
        this.mileageSlope = assumptions.logMiddle("mileage_slope");
        this.ageSlope = assumptions.logMiddle("age_slope");
        this.errorScale = assumptions.get("error_scale").middle();
        Rate assumed = new Rate(assumptions.get("miles_per_year").middle(), assumptions.get("miles_per_year").spread());
        Map<String, List<Double>> rates = new HashMap<>();
        List<Double> all = new ArrayList<>();
        for (Evidence e : evidence) {
            CarFacts facts = e.subject().facts();
            OptionalDouble age = age(facts, e.subject().on());
            if (age.isPresent() && age.getAsDouble() >= LEAST_AGE && facts.mileage().isPresent()) {
                double rate = facts.mileage().get().miles() / age.getAsDouble();
                rates.computeIfAbsent(facts.vehicle(), v -> new ArrayList<>()).add(rate);
                all.add(rate);
            }
        }
        this.everywhere = rate(all, assumed);
        this.byLine = new HashMap<>();
        rates.forEach((line, list) -> byLine.put(line, rate(list, everywhere)));
    }

    private static Rate rate(List<Double> rates, Rate otherwise) {
        if (rates.size() < ENOUGH) {
            return otherwise;
        }
        double[] sorted = rates.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double middle = Quantiles.ofSorted(sorted, 0.5);
        // Half the range between the 16 % and 84 % points is one standard deviation of a normal law.
        double spread = (Quantiles.ofSorted(sorted, 0.84) - Quantiles.ofSorted(sorted, 0.16)) / 2;
        return new Rate(middle, Math.max(spread, 0.1 * middle));
    }

    private OptionalDouble age(CarFacts facts, Optional<LocalDate> on) {
        return facts.ageOn(on.orElse(fallbackDay));
    }

    Measured of(Subject subject) {
        CarFacts facts = subject.facts();
        OptionalDouble age = age(facts, subject.on());
        Optional<Mileage> mileage = facts.mileage();
        if (age.isPresent() && mileage.isPresent()) {
            return new Measured(age.getAsDouble(), mileage.get().miles(), 1, List.of());
        }
        Rate rate = byLine.getOrDefault(facts.vehicle(), everywhere);
        if (age.isPresent()) {
            double miles = rate.milesPerYear * age.getAsDouble();
            double unsure = mileageSlope * rate.spread * Math.max(LEAST_AGE, age.getAsDouble()) / 10_000;
            return new Measured(age.getAsDouble(), miles, inflation(unsure),
                    List.of("mileage unknown: the line's usual distance a year taken, range widened"));
        }
        double miles = mileage.map(Mileage::miles).orElse(rate.milesPerYear * 8);
        double filled = miles / Math.max(1000, rate.milesPerYear);
        double unsure = ageSlope * filled * rate.spread / Math.max(1000, rate.milesPerYear);
        return new Measured(filled, miles, inflation(unsure),
                List.of("age unknown: filled in from the mileage at the line's usual distance a year, range widened"));
    }

    private double inflation(double unsure) {
        return Math.sqrt(1 + unsure * unsure / (errorScale * errorScale));
    }
}
