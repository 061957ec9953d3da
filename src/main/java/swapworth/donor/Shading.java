package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Optional;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CandidateCar;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Seller;
import swapworth.market.Answer;
import swapworth.market.PriceModel;
import swapworth.market.Subject;
import swapworth.market.ValueDraws;
import swapworth.statistics.Normal;
import swapworth.statistics.Quantiles;
import swapworth.statistics.RandomNumbers;

/**
 * By how much a bid is shaded: a bidder wins most often when his estimate is too high. With the estimate at the median M of the draws V of
 * what the car is worth, and each of n rivals bidding by an estimate of his own about V with spread s, the bid wins in draw i with
 * probability w = Phi((ln M - ln V) / s)^n, and the car is then worth exp(E[w ln V] / E[w]).
 *
 * @param factor what a car is worth when the bid wins, over what it was thought to be worth; at most 1
 * @param winning how often the unshaded bid would win, between 0 and 1
 * @param basis what the draws rest on
 */
public record Shading(double factor, double winning, String basis) {

    /** Checks the factor. */
    public Shading {
        requireNonNull(basis, "basis");
        if (!(factor > 0)) {
            throw new IllegalArgumentException("a shading factor must be above 0, not " + factor);
        }
    }

    /**
     * The shading for a car.
     *
     * @param values draws of what one such car is worth, at least one, each above 0
     * @param assumptions where the number of rivals and the spread of their estimates come from, both drawn
     * @param seed seed of those draws
     * @param basis what the draws rest on, in words
     * @return the shading
     * @throws IllegalArgumentException if there is no draw, or one is not above 0
     */
    public static Shading of(double[] values, Assumptions assumptions, long seed, String basis) {
        if (values.length == 0 || !Arrays.stream(values).allMatch(v -> v > 0 && Double.isFinite(v))) {
            throw new IllegalArgumentException("a bid is shaded by draws of what the car is worth: at least one, each above 0");
        }
        AssumptionDraws draws = new AssumptionDraws(assumptions, values.length, seed);
        double[] rivals = draws.size("rival_bidders");
        double[] spread = draws.size("rival_spread");
        double middle = StrictMath.log(Quantiles.of(values, 0.5));
        double weights = 0;
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            double log = StrictMath.log(values[i]) - middle;
            double won = StrictMath.pow(Normal.cumulative(-log / Math.max(1e-3, spread[i] / 100)), rivals[i]);
            weights += won;
            sum += won * log;
        }
        return new Shading(weights > 0 ? Math.min(1, StrictMath.exp(sum / weights)) : 1, weights / values.length, basis);
    }

    /**
     * The shading for a car that is sold at an auction, by what such cars sell for there.
     *
     * @param car the car
     * @param model the price model, which is asked whether its listings tell of such a car
     * @param draws joint draws of it
     * @param on the valuation day, where there is one
     * @param assumptions where the number of rivals and the spread of their estimates come from
     * @return nothing for a car that nobody else bids for; else the shading, or why the listings tell none
     */
    public static Optional<Answer<Shading>> of(CandidateCar car, PriceModel model, ValueDraws draws, Optional<LocalDate> on,
            Assumptions assumptions) {
        if (car.facts().seller() != Seller.AUCTION) {
            return Optional.empty();
        }
        Subject subject = new Subject(car.facts(), LevelOfTrade.AUCTION, PriceIncludes.NEITHER, on);
        long seed = RandomNumbers.seed(DonorStudy.SEED, car.name());
        return Optional.of(model.value(subject).match(value -> new Answer.Told<>(of(draws.price(subject, seed), assumptions,
                DonorStudy.SEED, draws.count() + " draws of what one such car sells for at an auction")), Answer.NotTold::new));
    }
}
