package swapworth.project;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CandidateCar;
import swapworth.listing.CandidateCar.Role;
import swapworth.listing.Runs;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.project.Forecast.Counted;
import swapworth.statistics.RandomNumbers;
import swapworth.swap.SwapValue;
import swapworth.table.Cell;

/**
 * What stopping would bring, by what the ledger says of each car: the recipient as it stands as long as its own gear is in it, what the
 * listings say of it without its engine, the donor as it lies as long as nothing is taken from it and its gear sold by itself from then
 * on, and the half-built car as a share of the finished. Only a car that is bought can be sold. What is agreed is owed either way, so
 * that it does not speak for stopping.
 */
final class WaysToStop {
    private static final String RECIPIENT = Role.RECIPIENT.words();
    private static final String DONOR = Role.DONOR.words();

    private final CarsInPlay cars;
    private final Assumptions assumptions;
    private final Forecast forecast;
    private final Ledger ledger;
    private final SwapValue finished;
    private final double[] sold;
    private final double agreed;

    /**
     * The ways to stop.
     *
     * @param cars the cars in play
     * @param assumptions what stands in where rows do not speak
     * @param forecast the money
     * @param finished the finished car
     * @param sold draws of what it sells for
     */
    WaysToStop(CarsInPlay cars, Assumptions assumptions, Forecast forecast, SwapValue finished, double[] sold) {
        this.cars = cars;
        this.assumptions = assumptions;
        this.forecast = forecast;
        this.ledger = forecast.ledger();
        this.finished = finished;
        this.sold = sold;
        this.agreed = ledger.sums().agreedToPay().doubleValue();
    }

    /** Whether to go on, where there is something left to finish. */
    Answer<FinishOrStop> answer() {
        if (ledger.carSold().isPresent()) {
            return new Answer.NotTold<>(CannotTell.without("the finished car is sold: there is nothing left to finish or to stop",
                    "no row of the category car sold"));
        }
        return ledger.sums().toFinish().isEmpty()
                ? new Answer.NotTold<>(CannotTell.without("no row of ledger.csv is still to be paid or worked: there is nothing left to"
                        + " finish", "what it still needs, as rows of the status estimate or committed"))
                : new Answer.Told<>(FinishOrStop.of(sold, forecast, exits()));
    }

    private List<FinishOrStop.Exit> exits() {
        boolean recipient = isBought(Role.RECIPIENT);
        boolean donor = isBought(Role.DONOR);
        String owed = agreed == 0 ? ""
                : "; less " + Cell.format(agreed, 0) + " that is agreed and still to be paid, which is owed either way";
        if (!recipient && !donor) {
            return List.of(new FinishOrStop.Exit("buying nothing", cars.constant(-agreed),
                    "no purchase of the ledger is done or agreed" + owed));
        }
        Optional<double[]> whole = wholeDonor(donor);
        boolean donorInParts = donor && whole.isEmpty();
        Optional<double[]> gear = donorInParts ? finished.gearSoldDraws() : Optional.empty();
        Optional<double[]> donorBrings = whole.or(() -> gear);
        // Of a donor that is sold as it lies no part is.
        Counted ofDonorCar = donorInParts ? Counted.ALL : Counted.NOTHING;
        String andDonor = whole.isPresent() ? "; donor sold as it lies" : gear.isPresent() ? "; the donor's gear sold as well"
                : donorInParts ? "; the donor's gear not counted" : "";
        String ofDonor = (whole.isPresent() ? "; the price model (private sales) for the donor as it lies, as long as no row of work on"
                + " it or the project is done and no part of it is sold"
                : gear.isPresent() ? "; for the donor's gear what the approach by cost takes for it, net of fees, postage and haggling"
                + " (swap_gear_net, an assumption); the hours to take it out again are not counted"
                : donorInParts ? "; the donor's gear itself is not in it" : "") + owed;
        if (!recipient) {
            return List.of(new FinishOrStop.Exit("buying no recipient, left-over parts sold" + andDonor,
                    with(donorBrings, Counted.NOTHING, ofDonorCar),
                    "the parts that the ledger still expects" + ofDonor));
        }
        List<FinishOrStop.Exit> exits = new ArrayList<>();
        Optional<CandidateCar> row = cars.recipient();
        if (row.isPresent() && isUntouched(Role.RECIPIENT)) {
            cars.price(row.get().facts(), RECIPIENT).ifPresent(car -> exits.add(new FinishOrStop.Exit(
                    "recipient sold as it stands, its own gear in it" + andDonor,
                    DrawFigures.plus(car, with(donorBrings, Counted.NOTHING, ofDonorCar)),
                    "the price model (private sales) for '" + row.get().name() + "' of cars.csv, and what the ledger still expects"
                    + " from other cars, as long as no row of work on the recipient or the project is done and no part of the"
                    + " recipient is sold" + ofDonor)));
        }
        cars.price(finished.stock().toBuilder().runs(Runs.NO_ENGINE).build(), RECIPIENT).ifPresent(car -> exits.add(
                new FinishOrStop.Exit("recipient sold without an engine, left-over parts sold" + andDonor, DrawFigures.plus(car,
                        with(donorBrings, Counted.ITS_ENGINE, ofDonorCar)), "the price model (private sales, no engine), and the parts that"
                        + " the ledger still expects; of the recipient's own its engine alone, for the others are taken to be in it"
                        + (donor ? "" : "; the donor is not bought") + ofDonor)));
        if (donor) {
            Assumption share = assumptions.get("unfinished_share");
            exits.add(new FinishOrStop.Exit("sold half-built with all that belongs to it, left-over parts sold",
                    DrawFigures.plus(halfBuilt(share), comesIn(Counted.ALL, Counted.ALL)),
                    "an assumption: " + Cell.stated(share.middle()).shown() + " % of the finished value, give or take "
                    + Cell.stated(share.spread()).shown()
                    + owed));
        }
        return exits;
    }

    /** What the donor as it lies or its gear brings, where it does, and what still comes in of parts, less what is agreed to be paid. */
    private double[] with(Optional<double[]> donor, Counted ofRecipient, Counted ofDonor) {
        double[] parts = comesIn(ofRecipient, ofDonor);
        return donor.map(brings -> DrawFigures.plus(brings, parts)).orElse(parts);
    }

    private double[] comesIn(Counted ofRecipient, Counted ofDonor) {
        return DrawFigures.minus(forecast.toReceive(car -> switch (cars.roleOf(car)) {
            case RECIPIENT -> ofRecipient;
            case DONOR -> ofDonor;
            default -> Counted.ALL;
        }), cars.constant(agreed));
    }

    /** Draws of a share of what the finished car sells for, between nothing and all of it. */
    private double[] halfBuilt(Assumption share) {
        double[] half = DrawFigures.shares(share, 1, sold.length, RandomNumbers.seed(0, share.name()));
        for (int i = 0; i < half.length; i++) {
            half[i] *= sold[i];
        }
        return half;
    }

    /**
     * Whether the car of a role is there: a purchase of it is done or agreed, or no row speaks of one and it was there before. A
     * purchase whose row names no car of a role counts where none names it.
     */
    private boolean isBought(Role role) {
        List<Entry> purchases = ledger.entries().stream().filter(e -> e.category() == Category.PURCHASE
                && e.direction() == Entry.Direction.OUT).toList();
        for (Role named : List.of(role, Role.UNKNOWN)) {
            List<Entry> ofIt = purchases.stream().filter(e -> e.cars().stream().anyMatch(car -> cars.roleOf(car) == named)).toList();
            if (!ofIt.isEmpty()) {
                return ofIt.stream().anyMatch(e -> e.status() != Entry.Status.ESTIMATE);
            }
        }
        return true;
    }

    /** What the donor brings as it lies, where it is bought and nothing is taken from it yet. */
    private Optional<double[]> wholeDonor(boolean bought) {
        return bought && isUntouched(Role.DONOR) ? cars.donor().flatMap(car -> cars.price(car.facts(), DONOR)) : Optional.empty();
    }

    /** Whether nothing was taken from the car of a role, as far as the ledger tells: no part of it sold, no work done on it or on all. */
    private boolean isUntouched(Role role) {
        return ledger.entries().stream().noneMatch(e -> e.cars().stream().map(cars::roleOf).anyMatch(named -> named == role
                ? e.category() == Category.SOLD && e.status() != Entry.Status.ESTIMATE || isWorkDone(e)
                : named == Role.UNKNOWN && isWorkDone(e)));
    }

    private static boolean isWorkDone(Entry entry) {
        return entry.status() == Entry.Status.ACTUAL && (entry.category() == Category.LABOUR || entry.category() == Category.OWN_HOURS);
    }
}
