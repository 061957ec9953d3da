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
import swapworth.donor.PartOut;
import swapworth.donor.Recovery;
import swapworth.listing.CandidateCar;
import swapworth.listing.CandidateCar.Role;
import swapworth.market.PriceModel;
import swapworth.market.ValueDraws;
import swapworth.reading.Spelling;

/**
 * What the parts of a swap bring and cost by {@code partout.csv} and {@code parts.csv}, on the same draws as the cars: the gear that is in
 * it at the prices of used parts, and what the removed parts bring, net.
 */
final class PartsOfSwap {
    private final Path folder;
    private final List<CandidateCar> cars;
    private final Currency currency;
    private final PriceModel model;
    private final ValueDraws draws;
    private final Optional<LocalDate> on;
    /** Of each donor with its recipient, by themselves: the gear of a line may be another one in another donor. */
    private final Map<List<CandidateCar>, DonorStudy> studies = new HashMap<>();

    PartsOfSwap(Path folder, List<CandidateCar> cars, Currency currency, PriceModel model, ValueDraws draws, Optional<LocalDate> on) {
        this.folder = folder;
        this.cars = cars;
        this.currency = currency;
        this.model = model;
        this.draws = draws;
        this.on = on;
    }

    /** The car with what its parts are worth, where its row does not state it; notes say what was taken. */
    FinishedCar filled(FinishedCar car, List<String> notes) {
        if (!Files.isRegularFile(folder.resolve("partout.csv")) || car.cost().gear().isPresent() && car.cost().removed().isPresent()) {
            return car;
        }
        Optional<CandidateCar> donor = named(car, Role.DONOR);
        Optional<CandidateCar> recipient = named(car, Role.RECIPIENT);
        DonorStudy study = studies.computeIfAbsent(Stream.concat(donor.stream(), recipient.stream()).toList(), both -> DonorStudy.of(folder,
                both, currency, Optional.of(model), Optional.of(draws), on, model.assumptions(), Optional.empty()));
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
            Optional<Recovery> removed = study.partOut(recipient.get().name()).told().flatMap(PartOut::recovery);
            if (removed.isPresent()) {
                cost = cost.withRemoved(UnsureAmount.drawn(removed.get().net(), "the parts of '" + recipient.get().name()
                        + "' that are sold by partout.csv, net"));
            }
        }
        return car.with(cost);
    }

    /** The car that the row of the finished car names, else the only one of its role. */
    private Optional<CandidateCar> named(FinishedCar car, Role role) {
        Optional<String> name = car.madeFrom(role);
        List<CandidateCar> found = cars.stream().filter(c -> name.map(n -> Spelling.key(n).equals(Spelling.key(c.name())))
                .orElse(c.role() == role)).toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }
}
