package swapworth.project;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.listing.CandidateCar;
import swapworth.listing.CandidateCar.Role;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.market.PriceModel;
import swapworth.market.Subject;
import swapworth.market.ValueDraws;
import swapworth.reading.Spelling;
import swapworth.statistics.RandomNumbers;
import swapworth.swap.SwapValue;

/**
 * The cars that the undertaking is made of: which row of {@code cars.csv} a role or a name of the ledger means, and what each sells for on
 * the joint draws of the market, all on one day.
 */
final class CarsInPlay {
    private final Undertaking.Market market;
    private final ValueDraws values;
    private final Optional<LocalDate> on;
    private final Optional<SwapValue> finished;

    /**
     * The cars of a folder.
     *
     * @param market what its listings say
     * @param values the states of the market
     * @param on the day of the finished car's value, so that all cars are worth what they are on one day
     * @param finished the finished car that is spoken of: its row may name the cars that it is made from
     */
    CarsInPlay(Undertaking.Market market, ValueDraws values, Optional<LocalDate> on, Optional<SwapValue> finished) {
        this.market = market;
        this.values = values;
        this.on = on;
        this.finished = finished;
    }

    Undertaking.Market market() {
        return market;
    }

    ValueDraws values() {
        return values;
    }

    Optional<LocalDate> on() {
        return on;
    }

    /** An amount that is the same in every state of the market. */
    double[] constant(double amount) {
        double[] draws = new double[values.count()];
        Arrays.fill(draws, amount);
        return draws;
    }

    /** Draws of the middle of what private people get for such cars; empty where no listing is of the line. */
    Optional<double[]> level(CarFacts facts) {
        return isKnown(facts.vehicle()) ? Optional.of(values.level(privatelySold(facts))) : Optional.empty();
    }

    /**
     * Draws of what private people get for this one car; empty where no listing is of its line. The same car has the same departure from
     * the middle in whatever state it is sold.
     */
    Optional<double[]> price(CarFacts facts, String car) {
        return isKnown(facts.vehicle())
                ? Optional.of(values.price(privatelySold(facts), RandomNumbers.seed(0, "one car\n" + Spelling.name(car))))
                : Optional.empty();
    }

    private Subject privatelySold(CarFacts facts) {
        return new Subject(facts, LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER, on);
    }

    /** Whether a listing is of the line. */
    boolean isKnown(String line) {
        return model().lines().contains(line);
    }

    PriceModel model() {
        return market.model();
    }

    private List<CandidateCar> all() {
        return market.cars().cars();
    }

    /** The cars that may be bought, each with what it is worth. */
    List<WalkAway.Valued> valued() {
        List<WalkAway.Valued> valued = new ArrayList<>();
        for (CandidateCar car : all()) {
            if (car.role() != Role.FINISHED && car.role() != Role.FACTORY_EQUIVALENT) {
                level(car.facts()).ifPresent(value -> valued.add(new WalkAway.Valued(car, value)));
            }
        }
        return valued;
    }

    /** What each car sells for, the finished ones too, by its name: it is one car, and no average of such cars. */
    Map<String, double[]> byName() {
        Map<String, double[]> byName = new HashMap<>();
        for (CandidateCar car : all()) {
            if (car.role() != Role.FINISHED) {
                price(car.facts(), car.name()).ifPresent(value -> byName.put(car.name(), value));
            }
        }
        market.swaps().answers().forEach(answer -> answer.answer().told().ifPresent(value -> byName.put(answer.car().name(),
                value.soldDraws())));
        return byName;
    }

    /**
     * Draws of the logarithm of what a year takes off each of these cars, by its name: the mean over some years to come, the market
     * standing still.
     */
    Map<String, double[]> ageingByName(double years) {
        Map<String, double[]> byName = new HashMap<>();
        for (CandidateCar car : all()) {
            if (car.role() != Role.FINISHED) {
                byName.put(car.name(), logsAYear(car.facts(), years));
            }
        }
        market.swaps().answers().forEach(answer -> answer.answer().told().ifPresent(value -> {
            double[] body = logsAYear(value.car().facts(), years);
            double[] gear = logsAYear(gearIn(value), years);
            byName.put(value.car().name(), DrawFigures.times(DrawFigures.plus(body, gear), 0.5));
        }));
        return byName;
    }

    private double[] logsAYear(CarFacts facts, double years) {
        double[] logs = values.ageing(privatelySold(facts), years);
        for (int i = 0; i < logs.length; i++) {
            logs[i] = StrictMath.log(logs[i]) / years;
        }
        return logs;
    }

    /** A car of the line that the gear of a finished one is from, that of the donor where it names none, of its age and distance. */
    CarFacts gearIn(SwapValue finishedCar) {
        CarFacts body = finishedCar.car().facts();
        CarFacts.Builder giver = CarFacts.of(finishedCar.car().gearLine().or(() -> donor().map(car -> car.facts().vehicle()))
                .orElse(body.vehicle()));
        body.modelYear().ifPresent(giver::modelYear);
        body.mileage().ifPresent(giver::mileage);
        return giver.build();
    }

    /** The donor that has a price: the one that the finished car's row names, else the first. */
    Optional<CandidateCar> donor() {
        return first(Role.DONOR);
    }

    /** The recipient that has a price: the one that the finished car's row names, else the first, else the first candidate. */
    Optional<CandidateCar> recipient() {
        return first(Role.RECIPIENT, Role.CANDIDATE);
    }

    private Optional<CandidateCar> first(Role... roles) {
        Optional<String> name = finished.flatMap(f -> f.car().madeFrom(roles[0]));
        Optional<CandidateCar> stated = name.flatMap(this::named).filter(car -> car.priceOrBid().isPresent());
        if (stated.isPresent()) {
            return stated;
        }
        for (Role role : roles) {
            for (CandidateCar car : all()) {
                if (car.role() == role && car.priceOrBid().isPresent()) {
                    return Optional.of(car);
                }
            }
        }
        return Optional.empty();
    }

    /** Whether a name of the ledger means the recipient or the donor; unknown where it means neither. */
    Role roleOf(String car) {
        for (Role role : List.of(Role.RECIPIENT, Role.DONOR)) {
            if (car.equals(role.words()) || finished.flatMap(f -> f.car().madeFrom(role)).filter(made -> same(made, car)).isPresent()) {
                return role;
            }
        }
        return named(car).map(CandidateCar::role).map(role -> role == Role.CANDIDATE ? Role.RECIPIENT : role)
                .filter(role -> role == Role.RECIPIENT || role == Role.DONOR).orElse(Role.UNKNOWN);
    }

    /** The car of {@code cars.csv} with a name; case, spaces and hyphens make no other. */
    private Optional<CandidateCar> named(String name) {
        return all().stream().filter(car -> same(car.name(), name)).findFirst();
    }

    private static boolean same(String one, String other) {
        return Spelling.name(one).equals(Spelling.name(other));
    }

    /** The line of a car that a row of the ledger names; empty where nobody says it or no listing is of it. */
    Optional<String> lineOf(String car) {
        Optional<String> line = switch (car) {
            case "recipient" -> finished.map(f -> f.car().facts().vehicle());
            case "donor" -> finished.flatMap(f -> f.car().gearLine()).or(() -> donor().map(c -> c.facts().vehicle()));
            default -> named(car).map(c -> c.facts().vehicle());
        };
        return line.filter(this::isKnown);
    }
}
