package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Optional;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.market.PriceModel;
import swapworth.market.Subject;
import swapworth.market.ValueDraws;
import swapworth.statistics.Draws;

/**
 * The states of the market that a simulation goes through: draw i is one of them for cars and for their parts.
 *
 * @param count number of draws
 * @param seed seed of everything that is drawn beside the cars
 * @param cars joint draws of car values, where there are listings
 * @param on the valuation day, where there is one
 */
public record MarketState(int count, long seed, Optional<ValueDraws> cars, Optional<LocalDate> on) {

    /** Checks that draws of cars are as many as there are states. */
    public MarketState {
        requireNonNull(on, "on");
        if (count < 1) {
            throw new IllegalArgumentException("draws are at least 1, not " + count);
        }
        if (cars.isPresent() && cars.get().count() != count) {
            throw new IllegalArgumentException(count + " states meet " + cars.get().count() + " draws of cars");
        }
    }

    /**
     * The states of a fitted price model.
     *
     * @param cars joint draws of car values
     * @param seed seed of everything else that is drawn
     * @param on the valuation day, where there is one
     * @return as many states as there are draws
     */
    public static MarketState of(ValueDraws cars, long seed, Optional<LocalDate> on) {
        return new MarketState(cars.count(), seed, Optional.of(cars), on);
    }

    /**
     * The states of a price model, as many and of the seed that all studies have.
     *
     * @param model the model, where there are listings
     * @param on the valuation day, where there is one
     * @return {@link DonorStudy#DRAWS} states
     */
    public static MarketState of(Optional<PriceModel> model, Optional<LocalDate> on) {
        return new MarketState(DonorStudy.DRAWS, DonorStudy.SEED, model.map(m -> m.draws(DonorStudy.DRAWS, DonorStudy.SEED)), on);
    }

    /**
     * States without any listings of cars.
     *
     * @param count number of draws, at least 1
     * @param seed seed
     * @return the states
     */
    public static MarketState withoutCars(int count, long seed) {
        return new MarketState(count, seed, Optional.empty(), Optional.empty());
    }

    /** How far the level of a car lies from its middle in each draw, in standard deviations of its logarithm; zeros without listings. */
    double[] departures(CarFacts car) {
        double[] logs = new double[count];
        if (cars.isEmpty()) {
            return logs;
        }
        double[] levels = cars.get().level(soldPrivately(car));
        Arrays.setAll(logs, i -> StrictMath.log(levels[i]));
        double mean = Draws.mean(logs);
        double square = Draws.covariance(logs, logs);
        for (int i = 0; i < count; i++) {
            logs[i] = square > 0 ? (logs[i] - mean) / Math.sqrt(square) : 0;
        }
        return logs;
    }

    /** A car as a private seller sells it on the valuation day. */
    Subject soldPrivately(CarFacts car) {
        return new Subject(car, LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER, on);
    }
}
