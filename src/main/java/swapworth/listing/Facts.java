package swapworth.listing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What is known of a car, as {@link CarFacts} holds it: those facts themselves, or a look at the row that says them, of which nothing is
 * made that is not asked for.
 */
public interface Facts {
    /** The model line. */
    String vehicle();

    /** The trim. */
    Optional<String> trim();

    /** The body shell, where lines share one. */
    Optional<String> body();

    /** The running gear, where lines share one. */
    Optional<String> runningGear();

    /** Power, kW. */
    OptionalDouble powerKw();

    /** The number of cylinders. */
    OptionalDouble cylinders();

    /** Weight, kg. */
    OptionalDouble weightKg();

    /** Which wheels are driven. */
    DrivenWheels drivenWheels();

    /** The model year. */
    OptionalInt modelYear();

    /** The day of first registration. */
    Optional<LocalDate> firstRegistered();

    /** The age in years when it was seen, where the row gives it outright. */
    OptionalDouble ageYears();

    /** The distance of the chassis. */
    Optional<Mileage> mileage();

    /** Who offers it. */
    Seller seller();

    /** Where it stands. */
    Optional<String> region();

    /** Whether it moves by itself. */
    Runs runs();

    /** The state of the body against rust. */
    Condition rust();

    /** The state of the paint. */
    Condition paint();

    /** The state of the interior. */
    Condition interior();

    /** The state of the mechanical parts. */
    Condition mechanical();

    /** The state of the service records. */
    Condition records();

    /** Whether the keys are there. */
    Keys keys();

    /** The state of the airbags. */
    Airbags airbags();

    /** The state of the title. */
    Title title();

    /** Zones of unrepaired damage; an empty set: stated to be none; empty: the row does not say. */
    Optional<Set<Damage>> damage();

    /** Every other column of the row that is not blank, by its header in lower case. */
    Map<String, String> further();

    /** All facts, made if they are not. */
    CarFacts made();

    /**
     * The car in a few words: its line, and its trim and model year where they are known.
     *
     * @return for instance {@code Sivrette Plain 2016}
     */
    default String words() {
        return vehicle() + trim().map(t -> " " + t).orElse("") + (modelYear().isPresent() ? " " + modelYear().getAsInt() : "");
    }

    /**
     * The car as a row of a table of other cars names it: beside its words its distance, and what makes such a car cheap.
     *
     * @return for instance {@code Sivrette Plain 2016, 71,000 mi, title salvage, damage front}
     */
    default String brief() {
        return words() + ", " + mileage().map(Mileage::words).orElse("mileage unknown")
                + troubles().stream().map(trouble -> ", " + trouble).collect(Collectors.joining());
    }

    /**
     * Everything that prices are told by, as far as it is stated, and what is not: a value can only be argued with by who sees both.
     *
     * @return two sentences, the second only where something is not stated
     */
    default String described() {
        return FactsDescribed.of(this);
    }

    /**
     * Where the car is damaged.
     *
     * @return the zones in the order of {@link Damage}, {@code none}, or {@code unknown} where nobody says
     */
    default String damageInWords() {
        return damage().map(where -> where.isEmpty() ? "none"
                : where.stream().sorted().map(Damage::words).collect(Collectors.joining(", "))).orElse(Title.UNKNOWN.words());
    }

    /**
     * What is said of the car that makes it cheap: a brand, a state in which it does not drive, damage.
     *
     * @return in words, empty for a car of which nothing of the kind is said
     */
    default List<String> troubles() {
        List<String> words = new ArrayList<>();
        if (title() != Title.CLEAN && title() != Title.UNKNOWN) {
            words.add("title " + title().words());
        }
        if (runs() != Runs.DRIVES && runs() != Runs.UNKNOWN) {
            words.add(runs().words());
        }
        if (!damage().orElse(Set.of()).isEmpty()) {
            words.add("damage " + damageInWords());
        }
        return words;
    }

    /**
     * Whether the car is said to be crashed or branded, or not to drive: such cars are cheap for a reason, and their prices scatter more.
     */
    default boolean isTroubled() {
        return isTroubled(title(), runs(), damage());
    }

    /** The same of these facts alone. */
    static boolean isTroubled(Title title, Runs runs, Optional<Set<Damage>> damage) {
        return title != Title.CLEAN && title != Title.UNKNOWN || runs != Runs.DRIVES && runs != Runs.UNKNOWN
                || damage.isPresent() && !damage.get().isEmpty();
    }

    /**
     * The age of the car on a day: from first registration, else from the middle of the model year (1 July), else as the row gave
     * it outright, in which case it is the same on every day. A car seen before its day of birth has age 0.
     *
     * @param on the day
     * @return years of 365.25 days, at least 0; empty if nothing speaks of the age
     */
    default OptionalDouble ageOn(LocalDate on) {
        Optional<LocalDate> registered = firstRegistered();
        OptionalInt year = modelYear();
        if (registered.isEmpty() && year.isEmpty()) {
            return ageYears();
        }
        long born = registered.isPresent() ? registered.get().toEpochDay() : Days.middleOf(year.getAsInt());
        return OptionalDouble.of(Days.years(born, on.toEpochDay()));
    }
}
