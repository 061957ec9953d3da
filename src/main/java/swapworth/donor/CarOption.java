package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarFacts;
import swapworth.listing.Condition;
import swapworth.listing.MileageStatus;
import swapworth.listing.Title;
import swapworth.statistics.Draws;
import swapworth.table.Cell;

/**
 * One car that may be bought, with all that it costs and gives back.
 *
 * @param car the car
 * @param landed what it costs in the yard, in the base currency
 * @param whole whether no line of that is missing
 * @param recovery draws of what its left-over parts bring; zeros where they are not counted
 * @param hours draws of the hours that takes
 * @param gear what goes into the swap, as used parts, each taken to be good
 * @param toReplace what another of each of these parts, as far run as those on offer, costs where the one in the car turns out not to be
 *        good or is not there: how far the car has run moves it not
 * @param gearGood the chance that engine and gearbox that go into the swap are both good, between 0 and 1; 1 where none do
 * @param parts whether its left-over parts are counted: partout.csv names the car, and not all that it would sell lacks a price
 * @param partsOnSale how many of its left-over parts are on sale and have a price
 * @param partsUnpriced how many more would be on sale if they had a price: no offer names them and their rows state none
 */
public record CarOption(CandidateCar car, double landed, boolean whole, double[] recovery, double[] hours, GearValue gear,
        GearValue toReplace, double gearGood, boolean parts, int partsOnSale, int partsUnpriced) {

    /** Copies the draws in. */
    public CarOption {
        requireNonNull(car, "car");
        requireNonNull(gear, "gear");
        requireNonNull(toReplace, "toReplace");
        recovery = recovery.clone();
        hours = hours.clone();
    }

    @Override
    public double[] recovery() {
        return recovery.clone();
    }

    @Override
    public double[] hours() {
        return hours.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CarOption option && car.equals(option.car) && Double.compare(landed, option.landed) == 0
                && whole == option.whole && Arrays.equals(recovery, option.recovery) && Arrays.equals(hours, option.hours)
                && gear.equals(option.gear) && toReplace.equals(option.toReplace) && Double.compare(gearGood, option.gearGood) == 0
                && parts == option.parts && partsOnSale == option.partsOnSale && partsUnpriced == option.partsUnpriced;
    }

    @Override
    public int hashCode() {
        return (car.hashCode() * 31 + Double.hashCode(landed)) * 31 + Arrays.hashCode(recovery);
    }

    /** The car with its landed cost and the 80 % range of its net cost, with gear that must be replaced. */
    @Override
    public String toString() {
        return car.name() + ": landed cost " + Cell.format(landed, 0) + (parts ? ", net cost " + Choice.range(withGear())
                : ", left-over parts not counted");
    }

    static Optional<CarOption> of(CandidateCar car, Optional<LandedCost> cost, Optional<PartOut> out, int count) {
        Optional<Double> landed = cost.map(c -> c.total().doubleValue()).or(() -> car.priceOrBid().map(p -> p.amount()));
        int onSale = out.flatMap(PartOut::recovery).map(Recovery::pieces).orElse(0);
        int unpriced = out.map(PartOut::partsUnpriced).orElse(0);
        boolean counted = out.isPresent() && (onSale > 0 || unpriced == 0);
        Optional<Recovery> recovery = out.filter(o -> counted).flatMap(PartOut::recovery);
        return landed.map(amount -> new CarOption(car, amount, cost.map(LandedCost::whole).orElse(false),
                recovery.map(Recovery::net).orElse(new double[count]), recovery.map(Recovery::hours).orElse(new double[count]),
                out.map(PartOut::gear).orElse(GearValue.NONE), out.map(PartOut::gearToReplace).orElse(GearValue.NONE),
                out.map(PartOut::gearGood).orElse(1.0), counted, onSale, unpriced));
    }

    /**
     * Draws of the net cost: landed cost less recovery. It is the landed cost where the left-over parts are not counted.
     *
     * @return one amount for each state of the market
     */
    public double[] netCost() {
        double[] net = new double[recovery.length];
        for (int i = 0; i < net.length; i++) {
            net[i] = landed - recovery[i];
        }
        return net;
    }

    /**
     * Draws of what cars are ranked by: the net cost, and for a car that gives its gear what another of each part of it costs that turns
     * out not to be good. It is the net cost alone where no such part has a price.
     *
     * @return one amount for each state of the market
     */
    public double[] withGear() {
        double[] cost = netCost();
        double[] bad = givesGear() ? toReplace.draws() : new double[0];
        for (int i = 0; i < bad.length; i++) {
            cost[i] += bad[i];
        }
        return cost;
    }

    /**
     * The mean of {@link #withGear()}.
     *
     * @return in the base currency
     */
    public double meanWithGear() {
        return Draws.mean(withGear());
    }

    /**
     * What the cost holds for gear that turns out bad, for a car that gives its gear.
     *
     * @return words to follow those on the net cost; empty for a car that gives none
     */
    public String gearToReplace() {
        String good = Cell.format(100 * gearGood, 0) + " %";
        return !givesGear() ? "" : gear.parts().isEmpty() ? "; what of its gear must be replaced is not counted"
                : ", and " + Cell.format(Draws.mean(toReplace.draws()), 0) + " by the mean for what of its gear turns out bad (engine and"
                        + " gearbox good: " + good + ")" + (gearCounted() ? "" : ", of which not all is counted");
    }

    /** Whether nothing is left out of what its gear may cost to replace. */
    boolean gearCounted() {
        return !givesGear() || toReplace.whole();
    }

    /** Whether its running gear goes into the swap. */
    boolean givesGear() {
        return car.role() == CandidateCar.Role.DONOR
                || car.role() == CandidateCar.Role.CANDIDATE && !(gear.parts().isEmpty() && gear.unpriced().isEmpty());
    }

    /**
     * The facts of the car that hold down what the finished car can be worth.
     *
     * @return in words; empty where the row names none
     */
    public List<String> caps() {
        CarFacts f = car.facts();
        List<String> caps = new ArrayList<>();
        f.mileage().ifPresent(m -> caps.add("chassis at " + Cell.format(m.typed(), 0) + " " + m.unit().many()
                + (m.status() == MileageStatus.READ ? "" : " (" + m.status().words() + ")")));
        if (f.title() != Title.CLEAN) {
            caps.add("title " + f.title().words());
        }
        if (f.rust() != Condition.SOUND) {
            caps.add("rust: " + f.rust().words());
        }
        if (!f.damage().orElse(Set.of()).isEmpty()) {
            caps.add("damage " + f.damageInWords());
        }
        return caps;
    }
}
