package swapworth.market;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import swapworth.listing.Car;
import swapworth.listing.Listing;
import swapworth.listing.PriceKind;
import swapworth.statistics.Bound;
import swapworth.statistics.Quantiles;
import swapworth.statistics.RepeatPrices;

/**
 * The level of each month by two plainer methods, as a check on an index.
 *
 * @param contrast the line that the index is of
 * @param base the month whose level is 100
 */
record IndexCheck(IndexBasis basis, TimeContrast contrast, YearMonth base) {

    /** In order of time. */
    List<MarketIndex.Comparison> months() {
        Map<YearMonth, List<Double>> adjusted = new TreeMap<>();
        double[] mean = basis.posterior().mean();
        for (Evidence e : basis.evidence()) {
            if (contrast.isOfLine(e) && e.bound() == Bound.NONE && e.subject().on().isPresent()) {
                YearMonth month = YearMonth.from(e.subject().on().get());
                double fitted = basis.encoder().encode(e.subject()).row().dot(mean);
                double time = contrast.on(e.subject().on().get(), TimeContrast.LEVEL).dot(mean);
                adjusted.computeIfAbsent(month, m -> new ArrayList<>()).add(e.logPrice() - fitted + time);
            }
        }
        Map<YearMonth, Double> repeats = repeats();
        Map<YearMonth, Integer> counts = basis.carsByMonth(contrast::isOfLine);
        double level = median(adjusted.get(base));
        List<MarketIndex.Comparison> rows = new ArrayList<>();
        for (YearMonth month : basis.months()) {
            rows.add(new MarketIndex.Comparison(month, counts.getOrDefault(month, 0), 100 * Math.exp(median(adjusted.get(month)) - level),
                    repeats.getOrDefault(month, Double.NaN)));
        }
        return List.copyOf(rows);
    }

    private static double median(@Nullable List<Double> values) {
        return values == null ? Double.NaN : Quantiles.of(values.stream().mapToDouble(Double::doubleValue).toArray(), 0.5);
    }

    /** By the asks of cars seen in two months or more; months that no chain of such cars links with the base are not in it. */
    private Map<YearMonth, Double> repeats() {
        List<YearMonth> months = basis.months();
        List<RepeatPrices.Pair> pairs = repeatPairs(months);
        int[] linked = linkedWith(months.indexOf(base), pairs);
        List<RepeatPrices.Pair> told = pairs.stream().filter(pair -> Arrays.binarySearch(linked, pair.first()) >= 0)
                .map(pair -> new RepeatPrices.Pair(Arrays.binarySearch(linked, pair.first()), Arrays.binarySearch(linked, pair.second()),
                        pair.logRatio())).toList();
        if (told.size() < linked.length) {
            return Map.of();
        }
        double[] log = RepeatPrices.of(linked.length, told).log();
        double level = log[Arrays.binarySearch(linked, months.indexOf(base))];
        Map<YearMonth, Double> levels = new TreeMap<>();
        for (int k = 0; k < log.length; k++) {
            levels.put(months.get(linked[k]), 100 * Math.exp(log[k] - level));
        }
        return levels;
    }

    /** The changes of asks from one look at a car to the next, the months by their places. */
    private List<RepeatPrices.Pair> repeatPairs(List<YearMonth> months) {
        List<RepeatPrices.Pair> pairs = new ArrayList<>();
        for (Car car : basis.cars()) {
            List<Listing> asks = car.sightings().stream().filter(s -> s.price().kind() == PriceKind.ASKING && s.seenOn().isPresent())
                    .toList();
            for (int k = 1; k < asks.size() && contrast.isOfLine(car.facts()); k++) {
                int from = months.indexOf(YearMonth.from(asks.get(k - 1).seenOn().orElseThrow()));
                int to = months.indexOf(YearMonth.from(asks.get(k).seenOn().orElseThrow()));
                double change = Math.log(asks.get(k).price().amount() / asks.get(k - 1).price().amount());
                // An ask that is half or twice the one before is a slip of the pen.
                if (from >= 0 && to > from && Math.abs(change) < Math.log(2)) {
                    pairs.add(new RepeatPrices.Pair(from, to, change));
                }
            }
        }
        return pairs;
    }

    /** The times that a chain of pairs links with one of them, itself among them, in order. */
    private static int[] linkedWith(int time, List<RepeatPrices.Pair> pairs) {
        BitSet linked = new BitSet();
        linked.set(time);
        int before = 0;
        while (linked.cardinality() > before) {
            before = linked.cardinality();
            for (RepeatPrices.Pair pair : pairs) {
                if (linked.get(pair.first()) || linked.get(pair.second())) {
                    linked.set(pair.first());
                    linked.set(pair.second());
                }
            }
        }
        return linked.stream().toArray();
    }
}
