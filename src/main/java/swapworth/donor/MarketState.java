package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Optional;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.market.Subject;
import swapworth.market.ValueDraws;

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
        double[] levels = cars.get().level(new Subject(car, LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER, on));
        double mean = 0;
        for (int i = 0; i < count; i++) {
            logs[i] = StrictMath.log(levels[i]);
            mean += logs[i] / count;
        }
        double square = 0;
        for (int i = 0; i < count; i++) {
            logs[i] -= mean;
            square += logs[i] * logs[i] / count;
        }
        for (int i = 0; i < count && square > 0; i++) {
            logs[i] /= Math.sqrt(square);
        }
        return logs;
    }
}
