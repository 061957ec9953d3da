package swapworth.project;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.assumptions.Assumptions;
import swapworth.donor.FeeSchedule;
import swapworth.donor.LandedCost;
import swapworth.donor.Purchase;
import swapworth.listing.CandidateCar;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.market.MarketIndex;
import swapworth.market.Outlook;
import swapworth.swap.SwapValue;
import swapworth.swap.Swaps;
import swapworth.table.Cell;

/**
 * The legs of now or later, from the files: a donor and a recipient of {@code cars.csv} at their landed cost, the parts of the ledger and
 * the finished car, each carried on by the outlook of its line on the same states of the market.
 */
final class BuyingLater {
    /** At so many steps of the bid its landed cost is worked out. */
    private static final int BIDS = 64;

    private final CarsInPlay cars;
    private final Assumptions assumptions;
    private final FeeSchedule fees;
    private final Answer<Outlook> outlook;
    private final Optional<CandidateCar> donor;
    private final Optional<CandidateCar> recipient;

    BuyingLater(CarsInPlay cars, Assumptions assumptions, FeeSchedule fees) {
        this.cars = cars;
        this.assumptions = assumptions;
        this.fees = fees;
        this.outlook = cars.model().index().flatMap(MarketIndex::outlook);
        this.donor = cars.donor();
        this.recipient = cars.recipient();
    }

    /** What listings and cars in play lack for an answer. */
    List<String> missing() {
        List<String> missing = new ArrayList<>();
        if (outlook instanceof Answer.NotTold<Outlook> no) {
            missing.add("listings.csv: now or later cannot be told: " + no.reason().reason() + "; needed: " + no.reason().needed() + ".");
        }
        if (donor.isEmpty() || recipient.isEmpty()) {
            missing.add("cars.csv: a donor and a recipient with a price or planned bid each: now or later.");
        }
        return missing;
    }

    /** Whether to buy now or later, the finished car as the exit and the parts of the ledger as what comes back. */
    Answer<NowOrLater> answer(Path folder, SwapValue finished, Optional<Ledger> ledger) {
        if (donor.isEmpty() || recipient.isEmpty()) {
            return new Answer.NotTold<>(CannotTell.without("cars.csv has no donor and recipient with a price or planned bid each",
                    "one row of each role, with its price"));
        }
        return outlook.map(o -> compared(o, donor.get(), recipient.get(), atLastLook(folder, finished), ledger));
    }

    /** The finished car on the day from which the months to come count: on a later one part of their movement would be in it. */
    private SwapValue atLastLook(Path folder, SwapValue finished) {
        Undertaking.Market market = cars.market();
        return finished.on().equals(cars.model().lastSeen()) ? finished : Swaps.of(folder, market.cars(), market.currency(), cars.model(),
                Optional.empty(), Optional.of(finished.level())).first().told()
                .filter(then -> then.car().name().equals(finished.car().name())).orElse(finished);
    }

    private NowOrLater compared(Outlook ahead, CandidateCar hit, CandidateCar body, SwapValue finished, Optional<Ledger> ledger) {
        List<String> remarks = new ArrayList<>(List.of("Bought: " + hit.name() + " and " + body.name() + " of cars.csv, or such cars"
                + " later at the level of their lines; exit: " + finished.car().name() + ", at the mean movement of its two lines."));
        if (!finished.on().equals(cars.on())) {
            remarks.add("The months count from the last look" + finished.on().map(day -> ", " + day).orElse("")
                    + ": the exit value is that of this day" + cars.on().map(day -> " and not of " + day).orElse("") + ".");
        }
        List<NowOrLater.Leg> legs = new ArrayList<>();
        for (CandidateCar car : List.of(hit, body)) {
            legs.add(bought(car, ahead, remarks));
        }
        String ofHit = hit.facts().vehicle();
        comesBack(ahead, ofHit, ledger, remarks).ifPresent(legs::add);
        if (ledger.filter(l -> l.sums().carsBought() >= 2).isPresent()) {
            remarks.add("By the ledger two cars are bought already: this then speaks of another such pair.");
        }
        return NowOrLater.of(fees.currency().getCurrencyCode(), legs, exit(ahead, finished, ofHit), remarks);
    }

    private NowOrLater.Leg bought(CandidateCar car, Outlook ahead, List<String> remarks) {
        Purchase purchase = Purchase.of(car, fees.currency()).orElseThrow();
        LandedCost cost = LandedCost.of(fees, purchase);
        if (!cost.whole()) {
            remarks.add(car.name() + " costs more than is counted: " + String.join("; ", cost.missing()) + ".");
        }
        double now = cost.total().doubleValue();
        return new NowOrLater.Leg(car.name(), cars.constant(now), landed(purchase, now, factors(ahead, car.facts().vehicle())));
    }

    private Optional<NowOrLater.Leg> comesBack(Outlook ahead, String line, Optional<Ledger> ledger, List<String> remarks) {
        double back = ledger.map(l -> l.sums().byCategory().stream().filter(s -> s.name().equals(Category.SOLD.words()))
                .mapToDouble(s -> s.atCompletion().doubleValue()).sum()).orElse(0.0);
        if (back == 0) {
            remarks.add("Nothing is counted as coming back from parts: the ledger has no rows of parts sold.");
            return Optional.empty();
        }
        double follow = assumptions.get("parts_move_with_cars").middle();
        remarks.add("What parts bring back is the ledger's " + Cell.format(-back, 0) + "; their prices follow those of the donor's line by "
                + Math.round(follow) + " % (assumption parts_move_with_cars).");
        return Optional.of(new NowOrLater.Leg("parts", cars.constant(back), factors(ahead, line).stream()
                .map(month -> DrawFigures.power(month, follow / 100)).toList()));
    }

    /** The finished car moves by the geometric mean of its body's line and its gear's, that of the donor where the car names none. */
    private NowOrLater.Leg exit(Outlook ahead, SwapValue finished, String ofDonor) {
        List<double[]> exit = factors(ahead, finished.car().facts().vehicle());
        List<double[]> gear = factors(ahead, finished.car().gearLine().orElse(ofDonor));
        for (int h = 0; h < exit.size(); h++) {
            double[] month = exit.get(h);
            for (int i = 0; i < month.length; i++) {
                month[i] = Math.sqrt(month[i] * gear.get(h)[i]);
            }
        }
        return new NowOrLater.Leg("exit", finished.soldDraws(), exit);
    }

    /** Draws of how the level of a line has moved after 1, 2, ... months; that of all lines for one that no listing is of. */
    private List<double[]> factors(Outlook ahead, String line) {
        List<double[]> factors = new ArrayList<>();
        for (int h = 1; h <= Outlook.MOST_AHEAD; h++) {
            factors.add(ahead.factors(cars.values(), cars.isKnown(line) ? line : "", h));
        }
        return factors;
    }

    /**
     * How a landed cost moves when the bid moves by factors: fees by the percent and by steps follow the bid, flat ones stand. Between
     * the least and the most of all factors it is worked out at some bids and taken as straight between them.
     */
    private List<double[]> landed(Purchase at, double now, List<double[]> factors) {
        double least = 1;
        double most = 1;
        for (double[] month : factors) {
            for (double factor : month) {
                least = Math.min(least, factor);
                most = Math.max(most, factor);
            }
        }
        double step = Math.max((most - least) / BIDS, 1e-9);
        double[] of = new double[BIDS + 2];
        for (int k = 0; k < of.length; k++) {
            BigDecimal bid = at.bid().multiply(BigDecimal.valueOf(least + k * step)).setScale(2, RoundingMode.HALF_EVEN);
            of[k] = LandedCost.of(fees, new Purchase(at.car(), bid, at.seller(), at.includes(), at.runs(), at.keys(), at.miles()))
                    .total().doubleValue() / now;
        }
        List<double[]> landed = new ArrayList<>();
        for (double[] month : factors) {
            double[] ratios = new double[month.length];
            for (int i = 0; i < ratios.length; i++) {
                double place = (month[i] - least) / step;
                int below = (int) place;
                ratios[i] = of[below] + (place - below) * (of[below + 1] - of[below]);
            }
            landed.add(ratios);
        }
        return landed;
    }
}
