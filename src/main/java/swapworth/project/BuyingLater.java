package swapworth.project;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.donor.FeeSchedule;
import swapworth.donor.LandedCost;
import swapworth.donor.Purchase;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarFacts;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.market.Figures;
import swapworth.market.Held;
import swapworth.market.IndexTables;
import swapworth.market.MarketIndex;
import swapworth.market.Outlook;
import swapworth.statistics.Quantiles;
import swapworth.swap.SwapValue;
import swapworth.swap.Swaps;
import swapworth.table.Cell;

/**
 * The legs of now or later, from the files: a donor and a recipient of {@code cars.csv} at their landed cost, the parts of the ledger and
 * the finished car, each carried on by the outlook of its line and by its own ageing on the same states of the market: who waits buys cars
 * of the same model years, and what he finishes is then so much older too. What cars of the same age would bring is told beside it.
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
                + " later at the level of their lines; exit: " + finished.car().name() + " (" + finished.level().sold().words()
                + finished.on().map(day -> ", now " + day).orElse("") + "), at the mean movement of its two lines."));
        if (!finished.on().equals(cars.on())) {
            remarks.add("The months count from the last look" + finished.on().map(day -> ", " + day).orElse("")
                    + ": the exit value is that of this day" + cars.on().map(day -> " and not of " + day).orElse("") + ".");
        }
        for (CandidateCar car : List.of(hit, body)) {
            LandedCost cost = LandedCost.of(fees, purchase(car));
            if (!cost.whole()) {
                remarks.add(car.name() + " costs more than is counted: " + String.join("; ", cost.missing()) + ".");
            }
        }
        double back = ledger.map(l -> l.sums().byCategory().stream().filter(s -> s.name().equals(Category.SOLD.words()))
                .mapToDouble(s -> s.atCompletion().doubleValue()).sum()).orElse(0.0);
        remarks.add(back == 0 ? "Nothing is counted as coming back from parts: the ledger has no rows of parts sold."
                : "What parts bring back is the ledger's " + Cell.format(-back, 0) + "; their prices follow those of the donor's line by "
                        + Math.round(assumptions.get("parts_move_with_cars").middle()) + " % (assumption parts_move_with_cars).");
        if (ledger.filter(l -> l.sums().carsBought() >= 2).isPresent()) {
            remarks.add("By the ledger two cars are bought already: this then speaks of another such pair.");
        }
        remarks.add(IndexTables.goesOn(ahead));
        Movement movement = new Movement(ahead);
        NowOrLater undated = compared(movement, Held.MODEL_YEAR, hit, body, finished, back, remarks);
        NowOrLater older = finished.on().map(undated::from).orElse(undated);
        NowOrLater alike = compared(movement, Held.AGE, hit, body, finished, back, List.of());
        return older.standingBy(ageing(older, alike) + (ahead.isMostlyAssumed() ? " By " + Figures.share(ahead.weightOfAssumption()).shown()
                + " what the market is expected to do is assumed (market_drift) and not told by the listings." : ""));
    }

    /** What a wait brings for cars of the same model years, beside what it brings for cars of the same age. */
    private static String ageing(NowOrLater older, NowOrLater alike) {
        double[] gain = alike.gain(older.inShort());
        return "Ageing is counted (age_slope, as the listings tell it): the cars bought then and the finished car are of the same model"
                + " years as now, so much older. Were they of the same age as now, that is newer, "
                + older.inShort() + " months would " + (Quantiles.median(gain) < 0 ? "lose " : "bring ") + older.currency() + " "
                + Cell.format(Math.abs(Quantiles.median(gain)), 0) + " (chance that it brings anything "
                + Cell.chanceInWords(DrawFigures.chance(gain)) + ").";
    }

    private NowOrLater compared(Movement movement, Held held, CandidateCar hit, CandidateCar body, SwapValue finished, double back,
            List<String> remarks) {
        List<NowOrLater.Leg> legs = new ArrayList<>();
        for (CandidateCar car : List.of(hit, body)) {
            double now = LandedCost.of(fees, purchase(car)).total().doubleValue();
            legs.add(new NowOrLater.Leg(car.name(), cars.constant(now), landed(purchase(car), now, movement.factors(car.facts(), held))));
        }
        if (back != 0) {
            double follow = assumptions.get("parts_move_with_cars").middle() / 100;
            legs.add(new NowOrLater.Leg("parts", cars.constant(back), movement.factors(hit.facts(), held).stream()
                    .map(month -> DrawFigures.power(month, follow)).toList()));
        }
        return NowOrLater.of(fees.currency().getCurrencyCode(), legs, exit(movement, held, finished), remarks);
    }

    private Purchase purchase(CandidateCar car) {
        return Purchase.of(car, fees.currency()).orElseThrow();
    }

    /** The finished car moves by the geometric mean of its body's line and its gear's, that of the donor where the car names none. */
    private NowOrLater.Leg exit(Movement movement, Held held, SwapValue finished) {
        List<double[]> exit = movement.factors(finished.car().facts(), held);
        List<double[]> gear = movement.factors(cars.gearIn(finished), held);
        for (int h = 0; h < exit.size(); h++) {
            double[] month = exit.get(h);
            for (int i = 0; i < month.length; i++) {
                month[i] = Math.sqrt(month[i] * gear.get(h)[i]);
            }
        }
        return new NowOrLater.Leg("exit", finished.soldDraws(), exit);
    }

    /** How cars move after 1, 2, ... months, all on the same states of the market. */
    private final class Movement {
        private final Outlook ahead;
        private final Map<String, List<double[]>> ofLines = new HashMap<>();

        Movement(Outlook ahead) {
            this.ahead = ahead;
        }

        /** Draws of how the level of such a car has moved: of its age, or of its model year and so much older. */
        List<double[]> factors(CarFacts facts, Held held) {
            List<double[]> factors = new ArrayList<>();
            for (int h = 1; h <= Outlook.MOST_AHEAD; h++) {
                double[] level = ofLine(facts.vehicle()).get(h - 1).clone();
                if (held == Held.MODEL_YEAR) {
                    double[] ageing = ahead.ageing(cars.values(), facts, h);
                    for (int i = 0; i < level.length; i++) {
                        level[i] *= ageing[i];
                    }
                }
                factors.add(level);
            }
            return factors;
        }

        /** Of a line that no listing is of the level of all lines. */
        private List<double[]> ofLine(String line) {
            String known = cars.isKnown(line) ? line : "";
            return ofLines.computeIfAbsent(known, l -> IntStream.rangeClosed(1, Outlook.MOST_AHEAD)
                    .mapToObj(h -> ahead.factors(cars.values(), l, h)).toList());
        }
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
