package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What is known of a car, from one row or from several: facts only, no price.
 *
 * @param vehicle the model line
 * @param trim the trim
 * @param body the body shell, where lines share one; empty: the line's own
 * @param runningGear the running gear, where lines share one; empty: the line's own
 * @param powerKw power, kW
 * @param cylinders number of cylinders
 * @param weightKg weight, kg
 * @param drivenWheels which wheels are driven
 * @param modelYear the model year
 * @param firstRegistered the day of first registration
 * @param ageYears the age in years when it was seen, where the row gives it outright
 * @param mileage distance of the chassis: this is the mileage of the car
 * @param gearMileage distance of the running gear, where it differs
 * @param seller who offers it
 * @param region where it stands
 * @param distanceAway how far away it stands, miles
 * @param runs whether it moves by itself
 * @param rust state of the body against rust
 * @param paint state of the paint
 * @param interior state of the interior
 * @param mechanical state of the mechanical parts
 * @param records state of the service records
 * @param keys whether the keys are there
 * @param airbags state of the airbags
 * @param title state of the title
 * @param damage zones of unrepaired damage; an empty set: stated to be none; empty: the row does not say
 * @param options options, free text
 * @param further every other column of the row that is not blank, by its header in lower case
 */
public record CarFacts(
        String vehicle,
        Optional<String> trim,
        Optional<String> body,
        Optional<String> runningGear,
        OptionalDouble powerKw,
        OptionalDouble cylinders,
        OptionalDouble weightKg,
        DrivenWheels drivenWheels,
        OptionalInt modelYear,
        Optional<LocalDate> firstRegistered,
        OptionalDouble ageYears,
        Optional<Mileage> mileage,
        Optional<Mileage> gearMileage,
        Seller seller,
        Optional<String> region,
        OptionalDouble distanceAway,
        Runs runs,
        Condition rust,
        Condition paint,
        Condition interior,
        Condition mechanical,
        Condition records,
        Keys keys,
        Airbags airbags,
        Title title,
        Optional<Set<Damage>> damage,
        Optional<String> options,
        Map<String, String> further) implements Facts {

    static final int FIRST_MODEL_YEAR = 1886;
    static final int LAST_MODEL_YEAR = 2200;

    /** Copies the collections in and checks that nothing is missing, and that measures are those of a car. */
    public CarFacts {
        requireNonNull(vehicle, "vehicle");
        requireNonNull(trim, "trim");
        requireNonNull(body, "body");
        requireNonNull(runningGear, "runningGear");
        requireNonNull(powerKw, "powerKw");
        requireNonNull(cylinders, "cylinders");
        requireNonNull(weightKg, "weightKg");
        requireNonNull(drivenWheels, "drivenWheels");
        requireNonNull(modelYear, "modelYear");
        requireNonNull(firstRegistered, "firstRegistered");
        requireNonNull(ageYears, "ageYears");
        requireNonNull(mileage, "mileage");
        requireNonNull(gearMileage, "gearMileage");
        requireNonNull(seller, "seller");
        requireNonNull(region, "region");
        requireNonNull(distanceAway, "distanceAway");
        requireNonNull(runs, "runs");
        requireNonNull(rust, "rust");
        requireNonNull(paint, "paint");
        requireNonNull(interior, "interior");
        requireNonNull(mechanical, "mechanical");
        requireNonNull(records, "records");
        requireNonNull(keys, "keys");
        requireNonNull(airbags, "airbags");
        requireNonNull(title, "title");
        requireNonNull(damage, "damage");
        requireNonNull(options, "options");
        requireNonNull(further, "further");
        check(modelYear.isEmpty() || modelYear.getAsInt() >= FIRST_MODEL_YEAR && modelYear.getAsInt() <= LAST_MODEL_YEAR,
                "model year", FIRST_MODEL_YEAR + " to " + LAST_MODEL_YEAR, modelYear.orElse(0));
        check(ageYears.isEmpty() || ageYears.getAsDouble() >= 0 && Double.isFinite(ageYears.getAsDouble()), "age",
                "a finite number of years, at least 0", ageYears.orElse(0));
        check(distanceAway.isEmpty() || distanceAway.getAsDouble() >= 0 && Double.isFinite(distanceAway.getAsDouble()), "distance away",
                "a finite number of miles, at least 0", distanceAway.orElse(0));
        check(isAboveZero(powerKw), "power", "a finite number of kilowatts above 0", powerKw.orElse(0));
        check(isAboveZero(cylinders), "number of cylinders", "a finite number above 0", cylinders.orElse(0));
        check(isAboveZero(weightKg), "weight", "a finite number of kilograms above 0", weightKg.orElse(0));
        damage = damage.isEmpty() ? damage : damage.map(zones -> zones.isEmpty()
                ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(zones)));
        further = Map.copyOf(further);
    }

    private static boolean isAboveZero(OptionalDouble measure) {
        return measure.isEmpty() || measure.getAsDouble() > 0 && Double.isFinite(measure.getAsDouble());
    }

    private static void check(boolean can, String what, String limits, double value) {
        if (!can) {
            throw new IllegalArgumentException("no car has the " + what + " "
                    + (Math.abs(value) < 1e9 && value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value))
                    + ": it must be " + limits);
        }
    }

    /**
     * Begins the facts of a car of which only the model line is known.
     *
     * @param vehicle the model line
     * @return a builder in which everything else is unknown
     */
    public static Builder of(String vehicle) {
        return new Builder(vehicle);
    }

    /**
     * Begins with these facts, to change some.
     *
     * @return a builder that holds these facts
     */
    public Builder toBuilder() {
        Builder builder = new Builder(vehicle);
        builder.trim = trim;
        builder.body = body;
        builder.runningGear = runningGear;
        builder.powerKw = powerKw;
        builder.cylinders = cylinders;
        builder.weightKg = weightKg;
        builder.drivenWheels = drivenWheels;
        builder.modelYear = modelYear;
        builder.firstRegistered = firstRegistered;
        builder.ageYears = ageYears;
        builder.mileage = mileage;
        builder.gearMileage = gearMileage;
        builder.seller = seller;
        builder.region = region;
        builder.distanceAway = distanceAway;
        builder.runs = runs;
        builder.rust = rust;
        builder.paint = paint;
        builder.interior = interior;
        builder.mechanical = mechanical;
        builder.records = records;
        builder.keys = keys;
        builder.airbags = airbags;
        builder.title = title;
        builder.damage = damage;
        builder.options = options;
        builder.further = further;
        return builder;
    }

    @Override
    public CarFacts made() {
        return this;
    }

    /**
     * The car without what is known of its running gear: what it is in stock form, its line's own running gear in it.
     *
     * @return a copy without running gear, power, cylinders, weight, driven wheels and gear mileage; all else stands
     */
    public CarFacts withoutGear() {
        Builder stock = toBuilder();
        stock.runningGear = Optional.empty();
        stock.powerKw = OptionalDouble.empty();
        stock.cylinders = OptionalDouble.empty();
        stock.weightKg = OptionalDouble.empty();
        stock.drivenWheels = DrivenWheels.UNKNOWN;
        stock.gearMileage = Optional.empty();
        return stock.build();
    }

    /**
     * The car in the form of another: line, trim, body, running gear and what is measured of them are those of the other.
     *
     * @param form the car whose form it takes
     * @return a copy; age, distances, place, state and all else stand
     */
    public CarFacts inFormOf(CarFacts form) {
        Builder other = toBuilder();
        other.vehicle = form.vehicle;
        other.trim = form.trim;
        other.body = form.body;
        other.runningGear = form.runningGear;
        other.powerKw = form.powerKw;
        other.cylinders = form.cylinders;
        other.weightKg = form.weightKg;
        other.drivenWheels = form.drivenWheels;
        return other.build();
    }

    /** Collects facts one by one; what is not set stays unknown. Not for sharing between threads. */
    public static final class Builder {
        String vehicle;
        Optional<String> trim = Optional.empty();
        Optional<String> body = Optional.empty();
        Optional<String> runningGear = Optional.empty();
        OptionalDouble powerKw = OptionalDouble.empty();
        OptionalDouble cylinders = OptionalDouble.empty();
        OptionalDouble weightKg = OptionalDouble.empty();
        DrivenWheels drivenWheels = DrivenWheels.UNKNOWN;
        OptionalInt modelYear = OptionalInt.empty();
        Optional<LocalDate> firstRegistered = Optional.empty();
        OptionalDouble ageYears = OptionalDouble.empty();
        Optional<Mileage> mileage = Optional.empty();
        Optional<Mileage> gearMileage = Optional.empty();
        Seller seller = Seller.UNKNOWN;
        Optional<String> region = Optional.empty();
        OptionalDouble distanceAway = OptionalDouble.empty();
        Runs runs = Runs.UNKNOWN;
        Condition rust = Condition.UNKNOWN;
        Condition paint = Condition.UNKNOWN;
        Condition interior = Condition.UNKNOWN;
        Condition mechanical = Condition.UNKNOWN;
        Condition records = Condition.UNKNOWN;
        Keys keys = Keys.UNKNOWN;
        Airbags airbags = Airbags.UNKNOWN;
        Title title = Title.UNKNOWN;
        Optional<Set<Damage>> damage = Optional.empty();
        Optional<String> options = Optional.empty();
        Map<String, String> further = Map.of();

        private Builder(String vehicle) {
            this.vehicle = requireNonNull(vehicle, "vehicle");
        }

        /**
         * Sets another model line, for a car that is like this one but for its line.
         *
         * @param vehicle the model line
         * @return this builder
         */
        public Builder vehicle(String vehicle) {
            this.vehicle = requireNonNull(vehicle, "vehicle");
            return this;
        }

        /**
         * Sets the trim.
         *
         * @param trim the trim
         * @return this builder
         */
        public Builder trim(String trim) {
            this.trim = Optional.of(trim);
            return this;
        }

        /**
         * Sets the body shell, where lines share one.
         *
         * @param body the body shell, where lines share one
         * @return this builder
         */
        public Builder body(String body) {
            this.body = Optional.of(body);
            return this;
        }

        /**
         * Sets the running gear, where lines share one.
         *
         * @param runningGear the running gear, where lines share one
         * @return this builder
         */
        public Builder runningGear(String runningGear) {
            this.runningGear = Optional.of(runningGear);
            return this;
        }

        /**
         * Sets power, kW.
         *
         * @param powerKw power, kW
         * @return this builder
         */
        public Builder powerKw(double powerKw) {
            this.powerKw = OptionalDouble.of(powerKw);
            return this;
        }

        /**
         * Sets number of cylinders.
         *
         * @param cylinders number of cylinders
         * @return this builder
         */
        public Builder cylinders(double cylinders) {
            this.cylinders = OptionalDouble.of(cylinders);
            return this;
        }

        /**
         * Sets weight, kg.
         *
         * @param weightKg weight, kg
         * @return this builder
         */
        public Builder weightKg(double weightKg) {
            this.weightKg = OptionalDouble.of(weightKg);
            return this;
        }

        /**
         * Sets which wheels are driven.
         *
         * @param drivenWheels which wheels are driven
         * @return this builder
         */
        public Builder drivenWheels(DrivenWheels drivenWheels) {
            this.drivenWheels = drivenWheels;
            return this;
        }

        /**
         * Sets the model year.
         *
         * @param modelYear the model year
         * @return this builder
         */
        public Builder modelYear(int modelYear) {
            this.modelYear = OptionalInt.of(modelYear);
            return this;
        }

        /**
         * Sets the day of first registration.
         *
         * @param firstRegistered the day of first registration
         * @return this builder
         */
        public Builder firstRegistered(LocalDate firstRegistered) {
            this.firstRegistered = Optional.of(firstRegistered);
            return this;
        }

        /**
         * Sets the age in years when it was seen, where the row gives it outright.
         *
         * @param ageYears the age in years when it was seen, where the row gives it outright
         * @return this builder
         */
        public Builder ageYears(double ageYears) {
            this.ageYears = OptionalDouble.of(ageYears);
            return this;
        }

        /**
         * Sets distance of the chassis.
         *
         * @param mileage distance of the chassis
         * @return this builder
         */
        public Builder mileage(Mileage mileage) {
            this.mileage = Optional.of(mileage);
            return this;
        }

        /**
         * Sets distance of the running gear, where it differs.
         *
         * @param gearMileage distance of the running gear, where it differs
         * @return this builder
         */
        public Builder gearMileage(Mileage gearMileage) {
            this.gearMileage = Optional.of(gearMileage);
            return this;
        }

        /**
         * Sets who offers it.
         *
         * @param seller who offers it
         * @return this builder
         */
        public Builder seller(Seller seller) {
            this.seller = seller;
            return this;
        }

        /**
         * Sets where it stands.
         *
         * @param region where it stands
         * @return this builder
         */
        public Builder region(String region) {
            this.region = Optional.of(region);
            return this;
        }

        /**
         * Sets how far away it stands, miles.
         *
         * @param distanceAway how far away it stands, miles
         * @return this builder
         */
        public Builder distanceAway(double distanceAway) {
            this.distanceAway = OptionalDouble.of(distanceAway);
            return this;
        }

        /**
         * Sets whether it moves by itself.
         *
         * @param runs whether it moves by itself
         * @return this builder
         */
        public Builder runs(Runs runs) {
            this.runs = runs;
            return this;
        }

        /**
         * Sets state of the body against rust.
         *
         * @param rust state of the body against rust
         * @return this builder
         */
        public Builder rust(Condition rust) {
            this.rust = rust;
            return this;
        }

        /**
         * Sets state of the paint.
         *
         * @param paint state of the paint
         * @return this builder
         */
        public Builder paint(Condition paint) {
            this.paint = paint;
            return this;
        }

        /**
         * Sets state of the interior.
         *
         * @param interior state of the interior
         * @return this builder
         */
        public Builder interior(Condition interior) {
            this.interior = interior;
            return this;
        }

        /**
         * Sets state of the mechanical parts.
         *
         * @param mechanical state of the mechanical parts
         * @return this builder
         */
        public Builder mechanical(Condition mechanical) {
            this.mechanical = mechanical;
            return this;
        }

        /**
         * Sets state of the service records.
         *
         * @param records state of the service records
         * @return this builder
         */
        public Builder records(Condition records) {
            this.records = records;
            return this;
        }

        /**
         * Sets whether the keys are there.
         *
         * @param keys whether the keys are there
         * @return this builder
         */
        public Builder keys(Keys keys) {
            this.keys = keys;
            return this;
        }

        /**
         * Sets state of the airbags.
         *
         * @param airbags state of the airbags
         * @return this builder
         */
        public Builder airbags(Airbags airbags) {
            this.airbags = airbags;
            return this;
        }

        /**
         * Sets state of the title.
         *
         * @param title state of the title
         * @return this builder
         */
        public Builder title(Title title) {
            this.title = title;
            return this;
        }

        /**
         * Sets zones of unrepaired damage.
         *
         * @param damage zones of unrepaired damage
         * @return this builder
         */
        public Builder damage(Set<Damage> damage) {
            this.damage = Optional.of(damage);
            return this;
        }

        /**
         * Sets options, free text.
         *
         * @param options options, free text
         * @return this builder
         */
        public Builder options(String options) {
            this.options = Optional.of(options);
            return this;
        }

        /**
         * Sets every other column of the row that is not blank, by its header in lower case.
         *
         * @param further every other column of the row that is not blank, by its header in lower case
         * @return this builder
         */
        public Builder further(Map<String, String> further) {
            this.further = further;
            return this;
        }

        /**
         * The facts as they stand.
         *
         * @return an immutable record
         */
        public CarFacts build() {
            return new CarFacts(vehicle, trim, body, runningGear, powerKw, cylinders, weightKg, drivenWheels,
                    modelYear, firstRegistered, ageYears, mileage, gearMileage, seller, region, distanceAway, runs,
                    rust, paint, interior, mechanical, records, keys, airbags, title, damage, options, further);
        }
    }
}
