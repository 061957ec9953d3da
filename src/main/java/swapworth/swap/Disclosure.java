package swapworth.swap;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import swapworth.listing.CarFacts;
import swapworth.listing.Mileage;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** What a buyer of a finished swap must be told: both mileages with their status, never blended, the title, and what was changed. */
final class Disclosure {
    private final Situation s;

    Disclosure(Situation situation) {
        this.s = situation;
    }

    Table table() {
        FinishedCar car = s.car;
        Table.Builder table = Table.titled("To be told to a buyer, a lender or an insurer: '" + car.name() + "'")
                .columns(Column.words("fact"), Column.sentences("as the owner states it"));
        table.note("Unknown is unknown and not good. What must be told, and on which form, is your local law's to say.");
        row(table, "mileage of the chassis: the mileage of the car", s.finished.mileage().map(Mileage::toString).orElse("unknown"));
        row(table, "distance of the running gear: beside it, not instead of it", s.finished.gearMileage().map(Mileage::toString)
                .orElse("unknown"));
        row(table, "instrument cluster, and what its odometer reads", car.cluster().orElse("unknown"));
        row(table, "chassis", s.stock.vehicle() + s.stock.trim().map(t -> " " + t).orElse("")
                + (s.stock.modelYear().isPresent() ? ", " + s.stock.modelYear().getAsInt() : ""));
        row(table, "running gear", s.finished.runningGear().orElse("unknown") + car.gearLine().map(l -> ", from a " + l).orElse("")
                + (car.gearYear().isPresent() ? ", " + car.gearYear().getAsInt() : ""));
        car.donor().ifPresent(donor -> row(table, "the car that gave the running gear, as it was bought", words(donor)));
        row(table, "title of the chassis", s.finished.title().words());
        row(table, "work done by", car.builtBy().words());
        for (Paper paper : Paper.values()) {
            row(table, paper.words(), car.paper(paper).words());
        }
        list(table, "functions that still work", car.optionsKept());
        List<SwapCost.Loss> losses = car.cost().losses();
        if (car.optionsLost().isEmpty() && !losses.isEmpty()) {
            row(table, "functions lost", "nothing stated under this name; see the losses below");
        } else {
            list(table, "functions lost", car.optionsLost());
        }
        if (!losses.isEmpty()) {
            list(table, "losses that the value by cost takes off", losses.stream().map(Disclosure::words).toList());
        }
        list(table, "known faults", car.faults().stream().map(Disclosure::fault).toList());
        return table.build();
    }

    /** What is stated against the car, and whether the range has taken it off; empty where nothing is. */
    Optional<String> statedAgainst() {
        FinishedCar car = s.car;
        List<String> sentences = new ArrayList<>();
        List<SwapCost.Loss> stated = car.statedFaults();
        if (!stated.isEmpty()) {
            sentences.add("For known faults the range has taken off what the owner states: " + String.join("; ", stated.stream()
                    .map(Disclosure::words).toList()) + ".");
        }
        List<String> against = new ArrayList<>();
        Stream.of(Paper.INSPECTED, Paper.EMISSIONS, Paper.APPROVED).filter(paper -> car.paper(paper) == Known.NO)
                .forEach(paper -> against.add(paper.words() + ": no"));
        int papers = against.size();
        int faults = car.faults().size() - stated.size();
        if (faults > 0) {
            against.add(faults + (faults == 1 ? " known fault" : " known faults") + " without a figure");
        }
        if (!against.isEmpty()) {
            sentences.add("The owner states: " + String.join("; ", against) + ". The range is that of a car that passes and has no such"
                    + " fault: what this takes off is not in it" + (car.cost().losses().isEmpty() ? "."
                            : ", but for the losses that the value by cost takes off."));
        }
        if (papers > 0) {
            sentences.add("What passing would cost can be stated as a fault with its figure, and is in it only where it is.");
        }
        return sentences.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", sentences));
    }

    private static String fault(SwapCost.Loss fault) {
        return fault.isStated() ? fault.what() + " (takes off " + figure(fault) + ")" : fault.what();
    }

    private static String words(CarFacts donor) {
        return "title " + donor.title().words() + "; damage " + donor.damageInWords() + "; airbags " + donor.airbags().words()
                + "; runs: " + donor.runs().words();
    }

    private static String words(SwapCost.Loss loss) {
        return loss.what() + ": " + figure(loss);
    }

    private static String figure(SwapCost.Loss loss) {
        double percent = 100 * loss.share();
        return percent > 0 ? Cell.format(percent, Math.abs(percent - Math.rint(percent)) < 1e-9 ? 0 : 1) + " %"
                : Cell.format(loss.amount(), Math.abs(loss.amount() - Math.rint(loss.amount())) < 1e-9 ? 0 : 2);
    }

    private static void list(Table.Builder table, String name, List<String> what) {
        row(table, name, what.isEmpty() ? "nothing stated" : String.join("; ", what));
    }

    private static void row(Table.Builder table, String name, String what) {
        table.row(Cell.words(name), Cell.words(what));
    }
}
