package swapworth.donor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.listing.Airbags;
import swapworth.listing.CarFacts;
import swapworth.listing.DrivenWheels;
import swapworth.listing.Runs;

/** What a car's damage and running state leave of a part: the worst of all that is said of it. */
final class DamageLeaves {

    /** A state and why. */
    record Left(PartState state, String why) {
    }

    private DamageLeaves() {
    }

    static Left of(CarFacts car, PartKind part) {
        List<String> said = new ArrayList<>();
        car.damage().ifPresent(damage -> damage.forEach(d -> said.add(d.words())));
        said.add(car.runs().words());
        Left left = new Left(PartState.PRESENT, car.damage().isEmpty() ? "the row does not speak of damage" : "");
        boolean wholeSide = !part.side().isEmpty() && said.contains(part.side().equals("left") ? "right" : "left");
        for (PartCatalogue.Leaves rule : PartCatalogue.get().leaves()) {
            boolean hit = rule.zone().equals(part.zone()) || rule.zone().equals(part.side() + " " + part.zone());
            // A blow from the one side leaves the doors and mirrors of the other.
            boolean spared = wholeSide && rule.zone().equals("middle") && (rule.what().equals("left") || rule.what().equals("right"))
                    && !rule.what().equals(part.side());
            if (hit && !spared && said.contains(rule.what()) && rule.state().ordinal() > left.state().ordinal()) {
                left = new Left(rule.state(), rule.what());
            }
        }
        if (part.isEngine() && RunningBracket.lacksEngine(car)) {
            left = new Left(PartState.GONE, car.runs().words());
        }
        if (part.isAirbag() && (car.airbags() == Airbags.FIRED || car.airbags() == Airbags.GONE)) {
            left = new Left(PartState.GONE, "airbags " + car.airbags().words());
        }
        if (part.name().equals("dashboard") && car.airbags() == Airbags.FIRED) {
            left = new Left(left.state().worse(PartState.DOUBTFUL), "airbags fired");
        }
        return left;
    }

    /** Whether a car lacks a part that it would need. */
    static boolean lacks(CarFacts car, PartKind part) {
        return part.isEngine() && car.runs() == Runs.NO_ENGINE;
    }

    /** Why a car cannot have a part at all. */
    static Optional<String> cannotHave(CarFacts car, PartKind part) {
        DrivenWheels driven = car.drivenWheels();
        boolean other = part.driven().equals("rear") && driven == DrivenWheels.FRONT || part.driven().equals("front")
                && driven == DrivenWheels.REAR;
        if (other) {
            return Optional.of("a car that drives its " + driven.words() + " wheels has no " + part.name());
        }
        if (part.isCore() && car.runs() != Runs.ENGINE_DEAD) {
            return Optional.of("only a dead engine is sold as a core; this car's row says: " + car.runs().words());
        }
        return Optional.empty();
    }
}
