package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarFacts;
import swapworth.reading.Spelling;

/**
 * A finished swap: the body of one line with the running gear of another.
 *
 * @param name what the user calls it
 * @param facts what is known of the car: line, trim, year, mileage, title and condition of the chassis; the running gear with its own
 *        mileage, power and cylinders
 * @param gearLine the model line that the running gear comes from; empty: the facts name the running gear
 * @param gearYear the model year of the car that gave it
 * @param builtBy who did the work
 * @param papers what can be shown to a buyer; what is missing is unknown
 * @param optionsKept functions and options that still work
 * @param optionsLost functions and options that no longer do
 * @param faults known faults of this one car, each with what it takes off whatever a sound one is worth; 0 where nobody states it
 * @param cost its parts at market prices
 * @param recipient what is known of the car it was made from, which tells the running gear of the stock car; empty where nobody says
 * @param donor what is known of the car that gave its running gear, of which others must be told; empty where nobody says
 */
public record FinishedCar(String name, CarFacts facts, Optional<String> gearLine, OptionalInt gearYear, BuiltBy builtBy,
        Map<Paper, Known> papers, List<String> optionsKept, List<String> optionsLost, List<SwapCost.Loss> faults, SwapCost cost,
        Optional<CarFacts> recipient, Optional<CarFacts> donor) {

    /** Copies the collections in and checks that nothing is missing. */
    public FinishedCar {
        requireNonNull(name, "name");
        requireNonNull(facts, "facts");
        requireNonNull(gearLine, "gearLine");
        requireNonNull(gearYear, "gearYear");
        requireNonNull(builtBy, "builtBy");
        requireNonNull(cost, "cost");
        requireNonNull(recipient, "recipient");
        requireNonNull(donor, "donor");
        papers = Map.copyOf(papers);
        optionsKept = List.copyOf(optionsKept);
        optionsLost = List.copyOf(optionsLost);
        faults = List.copyOf(faults);
    }

    /**
     * A finished swap of which only the facts are known.
     *
     * @param name what the user calls it
     * @param facts what is known of the car, its running gear named
     * @return the car; nobody says who built it
     */
    public static FinishedCar of(String name, CarFacts facts) {
        return new FinishedCar(name, facts, Optional.empty(), OptionalInt.empty(), BuiltBy.UNKNOWN, Map.of(), List.of(), List.of(),
                List.of(), SwapCost.unstated(), Optional.empty(), Optional.empty());
    }

    /**
     * With another builder.
     *
     * @param builder who did the work
     * @return a copy
     */
    public FinishedCar with(BuiltBy builder) {
        return new FinishedCar(name, facts, gearLine, gearYear, builder, papers, optionsKept, optionsLost, faults, cost, recipient, donor);
    }

    /**
     * With another car that it was made from.
     *
     * @param stock what is known of it, its own running gear in it
     * @return a copy
     */
    public FinishedCar madeOf(CarFacts stock) {
        return new FinishedCar(name, facts, gearLine, gearYear, builtBy, papers, optionsKept, optionsLost, faults, cost,
                Optional.of(stock), donor);
    }

    /**
     * With another car that gave its running gear.
     *
     * @param giver what is known of it
     * @return a copy
     */
    public FinishedCar withGearFrom(CarFacts giver) {
        return new FinishedCar(name, facts, gearLine, gearYear, builtBy, papers, optionsKept, optionsLost, faults, cost, recipient,
                Optional.of(giver));
    }

    /**
     * With other parts at market prices.
     *
     * @param parts the parts
     * @return a copy
     */
    public FinishedCar with(SwapCost parts) {
        return new FinishedCar(name, facts, gearLine, gearYear, builtBy, papers, optionsKept, optionsLost, faults, parts, recipient, donor);
    }

    /**
     * Whether a paper is there.
     *
     * @param paper the paper
     * @return unknown where nobody says
     */
    public Known paper(Paper paper) {
        return papers.getOrDefault(paper, Known.UNKNOWN);
    }

    /**
     * Which instrument cluster is in it and what its odometer reads, as its owner states it.
     *
     * @return the words of the column {@code cluster}; empty where nobody says
     */
    public Optional<String> cluster() {
        return SwapWords.text(facts.further(), "cluster");
    }

    /** With an instrument cluster of which other rows of the owner speak. */
    FinishedCar withCluster(String words) {
        Map<String, String> further = new LinkedHashMap<>(facts.further());
        further.put("cluster", words);
        return new FinishedCar(name, facts.toBuilder().further(further).build(), gearLine, gearYear, builtBy, papers, optionsKept,
                optionsLost, faults, cost, recipient, donor);
    }

    /**
     * The faults that state what they take off.
     *
     * @return in the order of all faults
     */
    public List<SwapCost.Loss> statedFaults() {
        return faults.stream().filter(SwapCost.Loss::isStated).toList();
    }

    /**
     * Which car of {@code cars.csv} it was made from, where its row names it.
     *
     * @param role recipient or donor
     * @return the name in the column of that role
     */
    public Optional<String> madeFrom(CandidateCar.Role role) {
        return SwapWords.text(facts.further(), role.words());
    }

    /** The car that its row names, else the only one of its role. */
    Optional<CandidateCar> madeFrom(CandidateCar.Role role, List<CandidateCar> cars) {
        Optional<String> named = madeFrom(role);
        List<CandidateCar> found = cars.stream().filter(c -> named.map(n -> Spelling.name(n).equals(Spelling.name(c.name())))
                .orElse(c.role() == role)).toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }
}
