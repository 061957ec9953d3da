package swapworth.donor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import swapworth.listing.CandidateCar;
import swapworth.market.PriceModel;

/** What follows from landed costs and recoveries of several cars together; each is worked out once, when first asked for. */
final class CarsCompared {
    private final List<CandidateCar> cars;
    private final Optional<Landed> landed;
    private final List<PartOut> partOuts;
    private final PartsMarket market;
    private final MarketState state;
    private final AssumptionDraws drawn;
    private final Optional<PriceModel> model;
    private final Once<Choice> choices = new Once<>(this::findChoices);
    private final Once<DonorUses> uses = new Once<>(this::findUses);
    private final Once<RunningBracket> brackets = new Once<>(this::findBrackets);

    CarsCompared(List<CandidateCar> cars, Optional<Landed> landed, List<PartOut> partOuts, PartsMarket market, MarketState state,
            AssumptionDraws drawn, Optional<PriceModel> model) {
        this.cars = cars;
        this.landed = landed;
        this.partOuts = partOuts;
        this.market = market;
        this.state = state;
        this.drawn = drawn;
        this.model = model;
    }

    private List<Choice> findChoices() {
        List<CarOption> donors = new ArrayList<>();
        List<CarOption> recipients = new ArrayList<>();
        for (CandidateCar car : cars) {
            if (Landed.bought(car)) {
                // A car of which nobody says what it is for is held against none.
                option(car).filter(o -> o.givesGear() || car.role() != CandidateCar.Role.UNKNOWN)
                        .ifPresent(o -> (o.givesGear() ? donors : recipients).add(o));
            }
        }
        List<Choice> choices = new ArrayList<>();
        if (!donors.isEmpty()) {
            choices.add(new Choice("Donors", donors));
        }
        if (!recipients.isEmpty()) {
            choices.add(new Choice("Recipients", recipients));
        }
        return choices;
    }

    private Optional<CarOption> option(CandidateCar car) {
        return CarOption.of(car, landed.flatMap(l -> l.of(car.name())), partOuts.stream().filter(p -> p.car() == car).findFirst(),
                state.count());
    }

    private List<DonorUses> findUses() {
        return partOuts.stream().parallel().flatMap(out -> option(out.car()).filter(CarOption::givesGear)
                .map(o -> DonorUses.of(o, out, out.allSold(), model, market, state, drawn)).stream()).toList();
    }

    private List<RunningBracket> findBrackets() {
        List<RunningBracket> brackets = new ArrayList<>();
        for (CandidateCar car : cars) {
            if (model.isPresent() && state.cars().isPresent() && RunningBracket.isNeeded(car) && Landed.bought(car)) {
                brackets.add(RunningBracket.of(car, model.get(), state.cars().get(), market, state, drawn));
            }
        }
        return brackets;
    }

    /** Donors side by side, and recipients; a purpose with no priced car is left out. */
    List<Choice> choices() {
        return choices.get();
    }

    /** What else could be done with each donor that has parts and a price. */
    List<DonorUses> uses() {
        return uses.get();
    }

    /** What cars that do not run are worth. */
    List<RunningBracket> brackets() {
        return brackets.get();
    }

    /** The parts of each car that is named, in the order of the cars. */
    List<PartOut> partOuts() {
        return partOuts;
    }

    /** What used parts sell for. */
    PartsMarket market() {
        return market;
    }

    /** A list that is found when first asked for, and kept. */
    private static final class Once<T> {
        private final Supplier<List<T>> find;
        private Optional<List<T>> found = Optional.empty();

        Once(Supplier<List<T>> find) {
            this.find = find;
        }

        synchronized List<T> get() {
            if (found.isEmpty()) {
                found = Optional.of(List.copyOf(find.get()));
            }
            return found.get();
        }
    }
}
