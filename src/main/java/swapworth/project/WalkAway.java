package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import swapworth.donor.BidAnswer;
import swapworth.donor.FeeSchedule;
import swapworth.donor.HighestBid;
import swapworth.donor.LandedCost;
import swapworth.donor.Purchase;
import swapworth.listing.CandidateCar;
import swapworth.listing.CandidateCar.Role;
import swapworth.market.Range;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * The price at which to walk away from a car: what the next best car of the same role costs once landed, and what the one is worth more
 * than the other, draw by draw; turned into a price by the fee tables. It weighs whole cars, by what they sell for as they stand: parts
 * and gear are weighed by {@link swapworth.donor.Choice}.
 *
 * @param currency the base currency
 * @param on the day of the values
 * @param prices one for each car that has another of its role beside it
 */
public record WalkAway(String currency, Optional<LocalDate> on, List<Price> prices) {

    /**
     * The price for one car.
     *
     * @param car its name
     * @param asked what is asked, or the planned bid
     * @param landed what it costs once landed at that price
     * @param nextBest the next best car: the one that allows the least
     * @param most draws of the most that it may cost once landed
     * @param walkAway the highest price whose landed cost is within the median of the most; why there is none else
     * @param open what is missing in the landed cost of the next best car: it costs more than is counted, and so may this one; empty where
     *        nothing is
     */
    public record Price(String car, BigDecimal asked, BigDecimal landed, String nextBest, double[] most, BidAnswer walkAway,
            List<String> open) {

        /** Copies the draws in. */
        public Price {
            requireNonNull(car, "car");
            requireNonNull(nextBest, "nextBest");
            most = most.clone();
            open = List.copyOf(open);
        }

        @Override
        public double[] most() {
            return most.clone();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Price price && car.equals(price.car) && asked.equals(price.asked) && landed.equals(price.landed)
                    && nextBest.equals(price.nextBest) && Arrays.equals(most, price.most) && walkAway.equals(price.walkAway)
                    && open.equals(price.open);
        }

        @Override
        public int hashCode() {
            return car.hashCode() * 31 + Arrays.hashCode(most);
        }

        /** The car, and the most that it may cost. */
        @Override
        public String toString() {
            return car + ": landed at most " + DrawFigures.withRange(most) + ", else " + nextBest;
        }
    }

    /** A car in play with the draws of its value. */
    record Valued(CandidateCar car, double[] value) {
    }

    /** Copies the list in. */
    public WalkAway {
        requireNonNull(on, "on");
        prices = List.copyOf(prices);
    }

    static WalkAway of(List<Valued> cars, FeeSchedule fees, Optional<LocalDate> on) {
        List<Price> prices = new ArrayList<>();
        for (Valued one : cars) {
            Optional<Purchase> purchase = Purchase.of(one.car, fees.currency());
            if (purchase.isEmpty()) {
                continue;
            }
            Optional<Price> least = Optional.empty();
            for (Valued other : cars) {
                Optional<Purchase> instead = Purchase.of(other.car, fees.currency());
                if (other == one || !sameUse(one.car.role(), other.car.role()) || instead.isEmpty()) {
                    continue;
                }
                LandedCost cost = LandedCost.of(fees, instead.get());
                double landed = cost.total().doubleValue();
                double[] most = DrawFigures.minus(one.value, other.value);
                for (int i = 0; i < most.length; i++) {
                    most[i] += landed;
                }
                double middle = Quantiles.median(most);
                if (least.isEmpty() || middle < Quantiles.median(least.get().most)) {
                    BigDecimal target = BigDecimal.valueOf(middle).setScale(2, RoundingMode.HALF_EVEN);
                    least = Optional.of(new Price(one.car.name(), purchase.get().bid(), LandedCost.of(fees, purchase.get()).total(),
                            other.car.name(), most, HighestBid.of(fees, purchase.get(), target), cost.missing()));
                }
            }
            least.ifPresent(prices::add);
        }
        return new WalkAway(fees.currency().getCurrencyCode(), on, prices);
    }

    private static boolean sameUse(Role one, Role other) {
        return one == other || buysTheBody(one) && buysTheBody(other);
    }

    private static boolean buysTheBody(Role role) {
        return role == Role.RECIPIENT || role == Role.CANDIDATE;
    }

    /**
     * The prices.
     *
     * @return one row a car
     */
    public Table table() {
        Table.Builder table = Table.titled("The price at which to walk away from a whole car, " + currency).columns(Column.words("car"),
                Column.number("asked or planned", currency), Column.number("landed at that", currency), Column.words("next best"),
                Column.number("most it may cost landed", currency), Column.number("80 % from", currency), Column.number("80 % to",
                        currency),
                Column.number("walk away above", currency), Column.sentences("remark"));
        table.note("Each car is weighed as a whole one, by what private people get for it as it stands (private sold"
                + on.map(day -> " on " + day).orElse("") + "): for who would sell it again, not"
                + " for its gear and parts. What the left-over parts bring and what gear must be replaced is not in it: for the swap itself"
                + " the net costs under 'Which donor, which recipient' count, and these may name another car.");
        table.note("The most it may cost landed is what the next best car of its role costs landed, and what this one is worth more than"
                + " that one (middle values on the same draws). Above the last figure the other car is the better buy as a whole car.");
        for (Price price : prices) {
            Range near = Forecast.range(price.most, 0.80);
            String remark = price.walkAway.match(bid -> price.asked.compareTo(bid.bid()) > 0 ? "as a whole car it is above that now" : "",
                    none -> "no such price: " + none.reason());
            table.row(Cell.words(price.car), Cell.number(price.asked.doubleValue(), 0), Cell.number(price.landed.doubleValue(), 0),
                    Cell.words(price.nextBest), Cell.number(Quantiles.median(price.most), 0), Cell.number(near.low(), 0),
                    Cell.number(near.high(), 0), price.walkAway.match(bid -> Cell.number(bid.bid().doubleValue(), 0), none -> Cell.BLANK),
                    Cell.words(remark + (price.open.isEmpty() ? "" : (remark.isEmpty() ? "" : "; ") + price.nextBest
                            + " costs more than is counted, and this one may too: " + String.join("; ", price.open))));
        }
        return table.build();
    }
}
