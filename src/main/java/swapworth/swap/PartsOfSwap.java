package swapworth.swap;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import swapworth.donor.DonorStudy;
import swapworth.donor.GearValue;
import swapworth.donor.MarketState;
import swapworth.donor.PartOut;
import swapworth.listing.CandidateCar;
import swapworth.listing.CandidateCar.Role;
import swapworth.market.PriceModel;
import swapworth.market.ValueDraws;

/**
 * What the parts of a swap are worth by {@code partout.csv} and {@code parts.csv}, on the same draws as the cars: the gear that is in it
 * and the gear that was taken out, each part taken to be good. What the builder does with the old gear does not change what the car is
 * worth.
 */
final class PartsOfSwap {
    private static final String CLUSTER = "instrument cluster";
    /** What others are told where the row of the car says nothing, and the list of parts does. */
    private static final String DONORS_CLUSTER = "not stated; by the owner's list of parts the donor's goes into it, and its odometer shows"
            + " the donor's distance";

    private final Path folder;
    private final List<CandidateCar> cars;
    private final Currency currency;
    private final PriceModel model;
    private final ValueDraws draws;
    private final Optional<LocalDate> on;
    /** Of each donor with its recipient, by their names and by themselves: the gear of a line may be another one in another donor. */
    private final Map<List<String>, DonorStudy> studies = new HashMap<>();

    PartsOfSwap(Path folder, List<CandidateCar> cars, Currency currency, PriceModel model, ValueDraws draws, Optional<LocalDate> on) {
        this.folder = folder;
        this.cars = cars;
        this.currency = currency;
        this.model = model;
        this.draws = draws;
        this.on = on;
    }

    /**
     * The car with what its parts are worth, where its row does not state it, and with the instrument cluster that they say is in it; notes
     * say what was taken.
     */
    FinishedCar filled(FinishedCar stated, List<String> notes) {
        boolean priced = stated.cost().gear().isPresent() && stated.cost().removed().isPresent();
        if (!Files.isRegularFile(folder.resolve("partout.csv")) || priced && stated.cluster().isPresent()) {
            return stated;
        }
        Optional<CandidateCar> donor = stated.madeFrom(Role.DONOR, cars);
        Optional<CandidateCar> recipient = stated.madeFrom(Role.RECIPIENT, cars);
        List<CandidateCar> both = Stream.concat(donor.stream(), recipient.stream()).toList();
        DonorStudy study = studies.computeIfAbsent(both.stream().map(CandidateCar::name).toList(), names -> DonorStudy.of(folder,
                both, currency, Optional.of(model), MarketState.of(draws, DonorStudy.SEED, on), model.assumptions()));
        FinishedCar car = stated.cluster().isEmpty() && donor.flatMap(d -> study.partOut(d.name()).told()).map(PartOut::gear)
                .filter(gear -> Stream.concat(gear.parts().stream(), gear.unpriced().stream()).anyMatch(CLUSTER::equals)).isPresent()
                ? stated.withCluster(DONORS_CLUSTER) : stated;
        SwapCost cost = car.cost();
        if (cost.gear().isEmpty() && donor.isPresent()) {
            Optional<GearValue> gear = study.partOut(donor.get().name()).told().map(PartOut::gear);
            if (gear.isPresent() && gear.get().whole()) {
                cost = cost.withGear(UnsureAmount.ofParts(gear.get().draws(), gear.get().parts().size() + " parts of '" + donor.get().name()
                        + "' that go into the swap, at the prices of parts.csv"));
            } else {
                notes.add(car.name() + ": the gear is not priced by parts of '" + donor.get().name() + "': "
                        + gear.map(GearValue::reason).orElse("partout.csv does not name the car"));
            }
        }
        if (cost.removed().isEmpty() && recipient.isPresent()) {
            String name = recipient.get().name();
            Optional<PartOut> given = donor.flatMap(d -> study.partOut(d.name()).told());
            Optional<GearValue> removed = study.partOut(name).told().map(parts -> parts.replaced(given));
            if (removed.isPresent() && removed.get().whole()) {
                cost = cost.withRemoved(UnsureAmount.ofParts(removed.get().draws(), String.join(", ", removed.get().parts())
                        + " of '" + name + "' at the prices of parts.csv, each taken to be good, whatever becomes of it"));
            } else {
                notes.add(car.name() + ": the running gear taken out of '" + name + "' is not priced by its parts: "
                        + removed.map(r -> "no row or no price for " + String.join(", ", r.unpriced()))
                                .orElse("partout.csv does not name the car"));
            }
        }
        return car.with(cost);
    }
}
