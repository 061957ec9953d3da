package swapworth.swap;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.listing.CarFacts;
import swapworth.market.FairValue;
import swapworth.market.Subject;
import swapworth.statistics.Draws;
import swapworth.swap.Approach.Kind;

/** The approach by position: where swaps stand between the stock car (0) and the factory equivalent (1). */
final class ByPosition {
    final Approach approach;
    final Optional<Found> found;

    private final Situation s;
    private final Brackets brackets;
    private final ComparedSwaps seen;

    /**
     * What it finds, as draws.
     *
     * @param log the logarithm of the middle price of such swaps
     * @param position the position
     * @param swaps how many swaps that were seen it has learned from
     */
    record Found(double[] log, double[] position, int swaps) {
    }

    ByPosition(MiddlePrices prices, Brackets brackets, ComparedSwaps seen) {
        this.s = prices.situation();
        this.brackets = brackets;
        this.seen = seen;
        if (brackets.stock.isEmpty()) {
            approach = brackets.withoutStock(Kind.POSITION);
            found = Optional.empty();
        } else if (brackets.factoryShared.isEmpty()) {
            approach = withoutFactory();
            found = Optional.empty();
        } else {
            Found all = found(brackets.stock.get(), brackets.factoryShared.get());
            approach = prices.told(Kind.POSITION, all.log, List.of("swap_position", "swap_mileage_share"), remarks(all.swaps));
            found = Optional.of(all);
        }
    }

    private Approach withoutFactory() {
        return s.factory.map(CarFacts::vehicle).map(line -> new Approach.Untold(Kind.POSITION,
                "the listings do not tell what the factory equivalent '" + line + "' is worth", "listings of the line '" + line + "'"))
                .orElseGet(() -> new Approach.Untold(Kind.POSITION, "no factory equivalent is named",
                        "a row of the role 'factory equivalent' in cars.csv, and listings of its line"));
    }

    private Found found(double[] stock, double[] factory) {
        double middle = s.assumption("swap_position").middle();
        double spread = s.assumption("swap_position").spread();
        double[] where = Situation.map(s.standard("swap_position"), z -> middle + spread * z);
        List<double[]> predictions = new ArrayList<>();
        List<double[]> departures = new ArrayList<>();
        List<Double> prices = new ArrayList<>();
        for (SeenSwap swap : seen.others()) {
            between(swap, where).ifPresent(level -> {
                predictions.add(level);
                departures.add(seen.departure(swap));
                prices.add(StrictMath.log(swap.price()));
                seen.use(swap);
            });
        }
        double[] learned = Draws.given(where, predictions.toArray(double[][]::new), departures.toArray(double[][]::new),
                prices.stream().mapToDouble(Double::doubleValue).toArray());
        return new Found(between(stock, factory, learned), learned, prices.size());
    }

    private List<String> remarks(int swaps) {
        List<String> remarks = new ArrayList<>();
        if (Draws.mean(brackets.factoryShared.orElseThrow()) <= Draws.mean(brackets.stock.orElseThrow())) {
            remarks.add("the factory equivalent is not worth more than the stock car: a position between the two says little");
        }
        remarks.add(swaps == 0 ? "no swap of another pair was seen that tells of the position: it is an assumption (swap_position)"
                : "the position is an assumption (swap_position) with " + swaps + (swaps == 1 ? " swap" : " swaps")
                        + " of other pairs that " + (swaps == 1 ? "was" : "were") + " seen");
        return remarks;
    }

    private static double[] between(double[] stock, double[] factory, double[] where) {
        double[] log = new double[where.length];
        for (int i = 0; i < log.length; i++) {
            double low = StrictMath.exp(stock[i]);
            double high = StrictMath.exp(factory[i]);
            log[i] = StrictMath.log(Math.max(MiddlePrices.FLOOR * low, low + where[i] * (high - low)));
        }
        return log;
    }

    /** What a swap that was seen would cost at a position between its own stock car and its own factory equivalent. */
    private Optional<double[]> between(SeenSwap swap, double[] where) {
        Optional<CarFacts> maker = Optional.empty();
        if (swap.factoryLine().isPresent()) {
            maker = Optional.of(s.ofMaker(CarFacts.of(swap.factoryLine().get()).build(), s.model.runningGear(swap.facts())));
        } else if (s.model.body(swap.facts()).equals(s.model.body(s.finished))
                && s.model.runningGear(swap.facts()).equals(s.model.runningGear(s.finished))) {
            maker = s.factory;
        }
        if (maker.isEmpty()) {
            seen.leaveOut(swap, "for its position: its factory equivalent is not named (column 'factory_line')");
            return Optional.empty();
        }
        Subject stock = seen.subject(swap, s.stockOf(swap.facts(), s.model.runningGear(swap.facts())));
        Subject factory = seen.subject(swap, swap.facts().inFormOf(maker.get()));
        if (!(s.model.value(stock) instanceof FairValue) || !(s.model.value(factory) instanceof FairValue)) {
            seen.leaveOut(swap, "for its position: the listings do not tell what its stock car or its factory equivalent is"
                    + " worth");
            return Optional.empty();
        }
        return Optional.of(between(s.logLevel(stock), s.logLevel(factory), where));
    }
}
