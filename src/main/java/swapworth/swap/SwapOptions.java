package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.market.PriceModel;
import swapworth.market.ValueDraws;

/** How a finished swap is to be valued, and what is known beside the listings; immutable. */
public final class SwapOptions {
    private static final int DRAWS = 4000;
    private static final int FEWEST_DRAWS = 100;
    private static final long SEED = 1;

    private LevelOfTrade level = LevelOfTrade.PRIVATE_ASKING;
    private Optional<LocalDate> on = Optional.empty();
    private Optional<CarFacts> factory = Optional.empty();
    private List<SeenSwap> seen = List.of();
    private List<OwnOffer> offers = List.of();
    private Map<Approach.Kind, Double> weights = Map.of();
    private String reason = "";
    private Optional<Assumptions> assumptions = Optional.empty();
    private Optional<ValueDraws> draws = Optional.empty();

    SwapOptions() {
    }

    private SwapOptions copy() {
        SwapOptions copy = new SwapOptions();
        copy.level = level;
        copy.on = on;
        copy.factory = factory;
        copy.seen = seen;
        copy.offers = offers;
        copy.weights = weights;
        copy.reason = reason;
        copy.assumptions = assumptions;
        copy.draws = draws;
        return copy;
    }

    /**
     * At another level of trade.
     *
     * @param other the level
     * @return a copy
     */
    public SwapOptions with(LevelOfTrade other) {
        SwapOptions copy = copy();
        copy.level = requireNonNull(other, "level");
        return copy;
    }

    /**
     * On another day.
     *
     * @param day the day
     * @return a copy
     */
    public SwapOptions on(LocalDate day) {
        SwapOptions copy = copy();
        copy.on = Optional.of(requireNonNull(day, "day"));
        return copy;
    }

    /**
     * With a factory equivalent: the car that the maker sold with such running gear. Its year, distances, title and condition are
     * taken from the finished car.
     *
     * @param facts its line, and trim, body and running gear where the line has several
     * @return a copy
     */
    public SwapOptions withFactoryEquivalent(CarFacts facts) {
        SwapOptions copy = copy();
        copy.factory = Optional.of(requireNonNull(facts, "facts"));
        return copy;
    }

    /**
     * With swaps of other people that were seen. Each counts once, for its prices share its own luck: rows of one name and line are
     * one swap where their model years differ by no more than one or are not stated, and its sale counts, else its last price.
     *
     * @param swaps the swaps, in any order
     * @return a copy
     */
    public SwapOptions withSeen(List<SeenSwap> swaps) {
        requireNonNull(swaps, "swaps");
        SwapOptions copy = copy();
        copy.seen = SeenSwap.once(swaps);
        return copy;
    }

    /**
     * With what happened when the car itself was on offer.
     *
     * @param happened offers, times without a taker, a sale, in any order
     * @return a copy
     */
    public SwapOptions withOffers(List<OwnOffer> happened) {
        requireNonNull(happened, "happened");
        SwapOptions copy = copy();
        copy.offers = List.copyOf(happened);
        return copy;
    }

    /**
     * With weights of the approaches by the user's own reasons in place of those by covariance. Approaches without a weight get
     * none.
     *
     * @param byApproach weights of at least 0, one of them above
     * @param because the reason, which stands beside the result
     * @return a copy
     * @throws IllegalArgumentException if no weight is above 0, or one is below 0 or no finite number
     */
    public SwapOptions weighted(Map<Approach.Kind, Double> byApproach, String because) {
        requireNonNull(byApproach, "byApproach");
        if (!byApproach.values().stream().allMatch(w -> w >= 0 && Double.isFinite(w))
                || byApproach.values().stream().noneMatch(w -> w > 0)) {
            throw new IllegalArgumentException("weights must be at least 0, and one of them above: " + byApproach);
        }
        SwapOptions copy = copy();
        copy.weights = Map.copyOf(byApproach);
        copy.reason = requireNonNull(because, "because");
        return copy;
    }

    /**
     * With other assumptions on swaps than those that the model was fitted with.
     *
     * @param other the assumptions
     * @return a copy
     */
    public SwapOptions assuming(Assumptions other) {
        SwapOptions copy = copy();
        copy.assumptions = Optional.of(requireNonNull(other, "other"));
        return copy;
    }

    /**
     * On draws of the model that are used elsewhere too, so that draw i is one state of the market for all.
     *
     * @param joint draws of the model that will be asked, at least 100 of them; where swaps of many other pairs are seen, a value is
     *     refused with {@code IllegalArgumentException} unless there are ten for each thing that those tell
     * @return a copy
     * @throws IllegalArgumentException if there are fewer: their range would say nothing
     */
    public SwapOptions with(ValueDraws joint) {
        if (requireNonNull(joint, "joint").count() < FEWEST_DRAWS) {
            throw new IllegalArgumentException(joint.count() + " draws are too few for the range of a value; at least " + FEWEST_DRAWS);
        }
        SwapOptions copy = copy();
        copy.draws = Optional.of(joint);
        return copy;
    }

    LevelOfTrade level() {
        return level;
    }

    Optional<LocalDate> on() {
        return on;
    }

    Optional<CarFacts> factory() {
        return factory;
    }

    List<OwnOffer> offers() {
        return offers;
    }

    /** The user's own weights; none for those by covariance. */
    Map<Approach.Kind, Double> weights() {
        return weights;
    }

    /** The user's reason for them. */
    String reason() {
        return reason;
    }

    Assumptions assumptions(PriceModel model) {
        return assumptions.orElseGet(model::assumptions);
    }

    long seed() {
        return SEED;
    }

    ValueDraws draws(PriceModel model) {
        ValueDraws taken = draws.orElseGet(() -> model.draws(DRAWS, SEED));
        if (!model.drew(taken)) {
            throw new IllegalArgumentException("these draws are of another model");
        }
        return taken;
    }

    /**
     * Values a finished swap.
     *
     * @param car the car
     * @param model the price model of all listings
     * @return a value, or why there is none
     * @throws IllegalArgumentException if the draws that it is to stand on are of another model, or too few for the swaps seen
     */
    public SwapAnswer value(FinishedCar car, PriceModel model) {
        Situation situation = new Situation(car, model, this);
        Approaches approaches = new Approaches(situation, seen);
        double weight = weights.isEmpty() ? 1 : approaches.logs().keySet().stream().mapToDouble(k -> weights.getOrDefault(k, 0.0)).sum();
        return approaches.logs().isEmpty() || !(weight > 0) ? new NoSwapValue(car, approaches.all(), Missing.rows(situation, approaches))
                : new SwapValue(situation, this, approaches);
    }
}
