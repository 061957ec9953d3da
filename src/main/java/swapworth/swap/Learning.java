package swapworth.swap;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import swapworth.listing.LevelOfTrade;
import swapworth.market.Subject;
import swapworth.statistics.Draws;

/**
 * What offers for the finished car itself teach: a weight for each draw, the likelihood of all that was seen if that draw were the price.
 * Weights multiply, so the order in which things were seen does not matter; logarithms are added in one order, so not even the last bit
 * depends on it.
 *
 * <p>A serious offer b stands below the price p at which such a car is sold: ln b = ln p + o + error, error of Student's t with 4 degrees
 * of freedom. A sale is the price itself but for a small error. Takers come at random, as often as the assumption says when the price asked
 * is the value and by a constant factor more seldom with every tenth that it is dearer; the weight of d days without a taker is
 * exp(-rate d).
 */
final class Learning {
    private static final double LOG_TENTH = Math.log(1.1);

    private final Situation s;
    private final Map<String, double[]> steps = new TreeMap<>();

    Learning(Situation situation) {
        this.s = situation;
    }

    /** The weight of each draw of the log price of this one car; all 1 where nothing was seen. */
    double[] weights(double[] logPrice, List<OwnOffer> offers) {
        double[] sum = new double[logPrice.length];
        for (OwnOffer offer : offers.stream().sorted(OwnOffer.ORDER).toList()) {
            LevelOfTrade level = offer.kind() == OwnOffer.Kind.NO_TAKER ? LevelOfTrade.PRIVATE_ASKING : LevelOfTrade.PRIVATE_SOLD;
            double[] step = steps.computeIfAbsent(level + " " + offer.on(), k -> step(level, offer));
            for (int i = 0; i < sum.length; i++) {
                sum[i] += logLikelihood(offer, logPrice[i] + step[i]);
            }
        }
        double most = Arrays.stream(sum).max().orElse(0);
        return Situation.map(sum, l -> StrictMath.exp(l - most));
    }

    /** From the level and day of the valuation to those of an offer. */
    private double[] step(LevelOfTrade level, OwnOffer offer) {
        Subject here = s.subject(s.finished);
        Subject there = new Subject(s.finished, level, here.includes(), s.on.isPresent() ? offer.on().or(() -> s.on) : s.on);
        return Situation.map(s.step(here, there), StrictMath::log);
    }

    private double logLikelihood(OwnOffer offer, double logPrice) {
        double seen = StrictMath.log(offer.amount());
        return switch (offer.kind()) {
            case OFFER_REFUSED -> Draws.logStudent4((seen - logPrice - s.assumptions().logMiddle("swap_offer_below"))
                    / s.assumptions().logSpread("swap_offer_below"));
            case SOLD -> Draws.logStudent4((seen - logPrice) / s.assumption("same_car_scale").middle());
            case NO_TAKER -> -Math.min(700, takersADay(s, seen - logPrice) * offer.days());
        };
    }

    /** How many takers a day a car finds that is asked for by so much, as a difference of logarithms, above its price. */
    static double takersADay(Situation s, double above) {
        return Math.log(2) / s.assumption("swap_days_on_offer").middle()
                * StrictMath.pow(s.assumption("swap_takers_left").middle(), above / LOG_TENTH);
    }
}
