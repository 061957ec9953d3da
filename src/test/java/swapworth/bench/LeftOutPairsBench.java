package swapworth.bench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Listing;
import swapworth.listing.Listings;
import swapworth.market.FairValue;
import swapworth.market.PriceModel;
import swapworth.market.Subject;
import swapworth.market.Valuation;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * How well a pair of body and running gear is valued that was never seen, on real listings: {@code LeftOutPairsBench LISTINGS.csv COLUMN},
 * where the line stands for the body and the words of the column (such as the transmission, or whether all wheels are driven) for the
 * running gear. Each pair is left out in turn, with all its cars, and its cars are then valued by those of the other pairs. A dozen pairs
 * prove nothing: counts are printed, not shares.
 */
public final class LeftOutPairsBench {
    private static final int FEWEST = 15;
    private static final int MOST = 60;
    private static final double LOWEST_PRICE = 500;

    private LeftOutPairsBench() {
    }

    /** Leaves each pair out in turn. */
    public static void main(String[] arguments) {
        if (arguments.length != 2) {
            throw new IllegalArgumentException("usage: LeftOutPairsBench LISTINGS.csv COLUMN");
        }
        System.out.print(table(Listings.read(Path.of(arguments[0])).cars(), arguments[1], 1).text());
    }

    /** One row a pair. */
    static Table table(List<Car> cars, String column, long seed) {
        Map<String, List<Car>> pairs = pairs(cars, column, new Random(seed));
        Table.Builder table = Table.titled("Pairs of line and " + column + " left out in turn, with all their cars").columns(
                Column.words("line"), Column.words(column), Column.number("cars", ""), Column.number("median error", "%"),
                Column.number("factor that the 80 % range of the level spans", ""), Column.words("level inside it"),
                Column.number("cars in 80 %", ""), Column.number("cars in 95 %", ""));
        int inside = 0;
        int told = 0;
        for (Map.Entry<String, List<Car>> left : pairs.entrySet()) {
            List<Car> others = new ArrayList<>();
            pairs.forEach((name, some) -> others.addAll(name.equals(left.getKey()) ? List.of() : some));
            PriceModel model = PriceModel.options().withColumns(List.of("condition", "fuel")).fit(others);
            List<Double> errors = new ArrayList<>();
            int near = 0;
            int wide = 0;
            double[] level = new double[2];
            for (Car car : left.getValue()) {
                Listing row = car.latest();
                Valuation valuation = model.value(new Subject(car.facts(), row.level(), row.price().includes(), row.seenOn()));
                if (valuation instanceof FairValue value) {
                    double price = row.price().amount();
                    errors.add(Math.log(price / value.median()));
                    near += value.range(0.80).holds(price) ? 1 : 0;
                    wide += value.range(0.95).holds(price) ? 1 : 0;
                    level[0] += Math.log(value.level(0.80).low() / value.median());
                    level[1] += Math.log(value.level(0.80).high() / value.median());
                }
            }
            String[] names = left.getKey().split("\n");
            int n = errors.size();
            if (n == 0) {
                table.row(Cell.words(names[0]), Cell.words(names[1]), Cell.whole(left.getValue().size()), Cell.BLANK, Cell.BLANK,
                        Cell.words("cannot tell"), Cell.BLANK, Cell.BLANK);
                continue;
            }
            double middle = Quantiles.of(errors.stream().mapToDouble(Double::doubleValue).toArray(), 0.5);
            boolean holds = middle >= level[0] / n && middle <= level[1] / n;
            told++;
            inside += holds ? 1 : 0;
            table.row(Cell.words(names[0]), Cell.words(names[1]), Cell.whole(n), Cell.signed(100 * Math.expm1(middle), 1),
                    Cell.number(Math.exp((level[1] - level[0]) / n), 2), Cell.words(holds ? "yes" : "no"), Cell.whole(near),
                            Cell.whole(wide));
        }
        table.note(String.format(Locale.ROOT, "The middle of the cars' prices lies in the 80 %% range of the level in %d of %d pairs.",
                inside, told));
        return table.build();
    }

    /** The cars of each pair, at most so many, drawn at random; pairs with too few cars are no pairs. */
    private static Map<String, List<Car>> pairs(List<Car> cars, String column, Random random) {
        Map<String, List<Car>> pairs = new TreeMap<>();
        List<Car> shuffled = new ArrayList<>(cars);
        Collections.shuffle(shuffled, random);
        for (Car car : shuffled) {
            String word = car.facts().further().getOrDefault(column, "");
            boolean known = car.facts().modelYear().isPresent() && car.facts().mileage().isPresent();
            if (!word.isEmpty() && known && car.latest().price().amount() >= LOWEST_PRICE) {
                List<Car> pair = pairs.computeIfAbsent(car.facts().vehicle() + "\n" + word, p -> new ArrayList<>());
                if (pair.size() < MOST) {
                    pair.add(withPair(car, word));
                }
            }
        }
        pairs.values().removeIf(pair -> pair.size() < FEWEST);
        return pairs;
    }

    private static Car withPair(Car car, String gear) {
        Listing old = car.latest();
        CarFacts facts = car.facts().toBuilder().body(car.facts().vehicle()).runningGear(gear).build();
        Listing row = new Listing(old.origin(), old.id(), old.seenOn(), facts, old.price(), old.outcome(), old.endedOn(), old.saved(),
                old.source(), old.note(), old.remarks());
        return new Car(car.name(), List.of(row), facts, List.of());
    }
}
