package swapworth.market;

import java.time.LocalDate;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.RandomAccess;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import swapworth.listing.Car;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Outcome;
import swapworth.listing.PriceKind;
import swapworth.listing.SeenCar;
import swapworth.listing.Sighting;
import swapworth.statistics.Bound;
import swapworth.statistics.Quantiles;
import swapworth.statistics.Ranges;

/**
 * The evidence in some cars: of each car its last ask, its sale and its auction price, as far as it has them, in order of date. A price
 * that stayed the same for several looks counts on the first of them: an ask that nobody took, and nobody changed, tells of the market in
 * which it was made, and would hold up one that has fallen since. A bid that missed the reserve counts only where the car has no auction
 * price. A price that a digit too many or too few sets apart from the other prices of its car is passed over: they tell more. Prices of
 * one car share its own departure: a later one is compared with the one before it, and a bid that missed with the last price of its car,
 * whenever it was made.
 *
 * <p>What every row is asked for stands in flat arrays. Up to {@value #KEPT} rows are kept whole as well; of more each is made when it is
 * asked for.
 */
final class EvidenceList extends AbstractList<Evidence> implements RandomAccess {
    static final int KEPT = 20_000;
    /** Of one car in so many it must be known that somebody looked for it again. */
    private static final int WATCHED_OF = 10;

    private final List<Car> cars;
    private final int[] car;
    /** The place of the row's listing among the sightings of its car. */
    private final int[] place;
    private final double[] logPrice;
    private final BitSet bounds;
    private final BitSet onOffer;
    private final BitSet troubled;
    private final Days days;
    private final Evidence[] kept;
    /** The number of cars that were looked for again. */
    private final int watched;
    /** Whether the days of the listings count. */
    private enum Days { KNOWN, UNKNOWN }

    private EvidenceList(List<Car> cars, List<Part> parts, int most) {
        int n = parts.stream().mapToInt(part -> part.size).sum();
        this.cars = cars;
        this.bounds = new BitSet();
        this.onOffer = new BitSet();
        this.troubled = new BitSet();
        this.days = Days.KNOWN;
        this.car = new int[n];
        this.place = new int[n];
        this.logPrice = new double[n];
        int at = 0;
        for (Part part : parts) {
            System.arraycopy(part.car, 0, car, at, part.size);
            System.arraycopy(part.place, 0, place, at, part.size);
            System.arraycopy(part.logPrice, 0, logPrice, at, part.size);
            set(part.bounds, bounds, at);
            set(part.onOffer, onOffer, at);
            set(part.troubled, troubled, at);
            at += part.size;
        }
        this.watched = parts.stream().mapToInt(part -> part.watched).sum();
        this.kept = new Evidence[n <= most ? n : 0];
        Arrays.setAll(kept, this::made);
    }

    private EvidenceList(EvidenceList dated) {
        cars = dated.cars;
        car = dated.car;
        place = dated.place;
        logPrice = dated.logPrice;
        bounds = dated.bounds;
        onOffer = new BitSet();
        troubled = dated.troubled;
        watched = dated.watched;
        days = Days.UNKNOWN;
        kept = new Evidence[dated.kept.length];
        Arrays.setAll(kept, this::made);
    }

    /** The same prices as if nobody knew their days. */
    EvidenceList undated() {
        return new EvidenceList(this);
    }

    private static void set(BitSet of, BitSet in, int from) {
        for (int i = of.nextSetBit(0); i >= 0; i = of.nextSetBit(i + 1)) {
            in.set(from + i);
        }
    }

    /** Evidence with what it holds, which is large and seldom asked for again. */
    record Found(EvidenceList evidence, Stock stock) {
    }

    /**
     * Finds the evidence in some cars.
     *
     * @param further the further columns that the model takes in
     */
    static Found in(List<Car> cars, List<String> further) {
        return in(cars, further, KEPT);
    }

    /** The same, keeping rows whole up to a stated number of them. */
    static Found in(List<Car> cars, List<String> further, int most) {
        MiddlesOfLines middles = new MiddlesOfLines(cars);
        List<Part> parts = Ranges.make(cars.size(), (first, end) -> {
            Part part = new Part(end - first, middles, further);
            for (int c = first; c < end; c++) {
                part.add(c, SeenCar.of(cars, c));
            }
            return part;
        });
        EvidenceList evidence = new EvidenceList(cars, parts, most);
        return new Found(evidence, new Stock(evidence, parts.stream().map(part -> part.stock).toList()));
    }

    /** The evidence in a range of cars, growing. */
    private static final class Part {
        private final MiddlesOfLines middles;
        private final BitSet bounds = new BitSet();
        private final BitSet onOffer = new BitSet();
        private final BitSet troubled = new BitSet();
        private int[] car;
        private int[] place;
        private double[] logPrice;
        private int size;
        private int watched;
        private final StockPart stock;

        Part(int about, MiddlesOfLines middles, List<String> further) {
            this.middles = middles;
            this.stock = new StockPart(about, further, Stock.NO_CAR);
            this.car = new int[about];
            this.place = new int[about];
            this.logPrice = new double[about];
        }

        void add(int number, SeenCar one) {
            List<? extends Sighting> sightings = one.sightings();
            watched += one.outcome() != Outcome.OPEN
                    || !sightings.get(0).seenOn().equals(sightings.get(sightings.size() - 1).seenOn()) ? 1 : 0;
            if (sightings.size() == 1) {
                add(number, 0, one);
                return;
            }
            Map<LevelOfTrade, Integer> last = new EnumMap<>(LevelOfTrade.class);
            double likely = likely(sightings);
            for (int k = 0; k < sightings.size(); k++) {
                Sighting seen = sightings.get(k);
                if (!Flags.within(seen.amount(), likely)) {
                    continue;
                }
                boolean missed = seen.kind() == PriceKind.BID_NOT_MET;
                int before = last.getOrDefault(seen.level(), -1);
                if (before < 0 || (!missed || sightings.get(before).kind() == PriceKind.BID_NOT_MET)
                        && !isSamePrice(sightings.get(before), seen)) {
                    last.put(seen.level(), k);
                }
            }
            for (int k = 0; k < sightings.size(); k++) {
                if (last.getOrDefault(sightings.get(k).level(), -1) == k) {
                    add(number, k, one);
                }
            }
        }

        /** Whether a price still stands as it stood: it tells of the market on the day on which it was asked, not of that of each look. */
        private static boolean isSamePrice(Sighting before, Sighting seen) {
            return before.kind() == seen.kind() && before.amount() == seen.amount() && before.seenOn().isPresent();
        }

        private void add(int number, int sighting, SeenCar one) {
            Sighting seen = one.sightings().get(sighting);
            if (size == car.length) {
                int room = 16 + size + size / 4;
                car = Arrays.copyOf(car, room);
                place = Arrays.copyOf(place, room);
                logPrice = Arrays.copyOf(logPrice, room);
            }
            car[size] = number;
            place[size] = sighting;
            logPrice[size] = Math.log(seen.amount());
            bounds.set(size, Evidence.bound(seen.kind()) == Bound.BELOW);
            onOffer.set(size, Evidence.isOnOffer(seen.kind(), one.outcome()));
            troubled.set(size, one.facts().isTroubled());
            stock.add(number, Evidence.subject(one.facts(), seen), seen(one));
            size++;
        }

        /**
         * The middle price of a car; of two that differ as by a digit, the one nearer to the middle price of the line. Bids that missed
         * may be as low as they like: they are asked only where there is no price.
         */
        private double likely(List<? extends Sighting> sightings) {
            double[] prices = amounts(sightings, Bound.NONE);
            double[] asked = prices.length > 0 ? prices : amounts(sightings, Bound.BELOW);
            if (asked.length != 2) {
                return middle(asked);
            }
            if (Flags.within(asked[0], asked[1])) {
                return asked[0];
            }
            double usual = middles.of(sightings.get(0).facts().vehicle());
            return Math.abs(Math.log(asked[0] / usual)) < Math.abs(Math.log(asked[1] / usual)) ? asked[0] : asked[1];
        }

        private static double[] amounts(List<? extends Sighting> sightings, Bound bound) {
            double[] amounts = new double[sightings.size()];
            int n = 0;
            for (int k = 0; k < amounts.length; k++) {
                Sighting seen = sightings.get(k);
                if (Evidence.bound(seen.kind()) == bound) {
                    amounts[n++] = seen.amount();
                }
            }
            return n == amounts.length ? amounts : Arrays.copyOf(amounts, n);
        }
    }

    /** The middle price of all rows of a line, found when first asked for: few lines are. */
    private record MiddlesOfLines(List<Car> cars, Map<String, Double> known) {
        MiddlesOfLines(List<Car> cars) {
            this(cars, new ConcurrentHashMap<>());
        }

        double of(String line) {
            return known.computeIfAbsent(line, l -> middle(Car.pricesOf(cars, l)));
        }
    }

    private static double middle(double[] prices) {
        return Quantiles.of(prices, 0.5);
    }

    @Override
    public int size() {
        return car.length;
    }

    @Override
    public Evidence get(int i) {
        return i < kept.length ? kept[i] : made(i);
    }

    private Evidence made(int i) {
        Car one = cars.get(car[i]);
        Evidence evidence = Evidence.of(car[i], one, one.sightings().get(place[i]));
        return days == Days.KNOWN ? evidence : evidence.undated();
    }

    /** What the price of a row is for. */
    Subject subject(int i) {
        if (i < kept.length) {
            return kept[i].subject();
        }
        SeenCar seen = SeenCar.of(cars, car[i]);
        Subject subject = Evidence.subject(seen.facts(), seen.sightings().get(place[i]));
        return days == Days.KNOWN ? subject : subject.undated();
    }

    /** The days on which the car of a row was seen. */
    Stock.Seen seen(int i) {
        return days == Days.KNOWN ? seen(SeenCar.of(cars, car[i])) : Stock.Seen.NEVER;
    }

    private static Stock.Seen seen(SeenCar one) {
        List<? extends Sighting> sightings = one.sightings();
        Optional<LocalDate> first = Optional.empty();
        Optional<LocalDate> last = Optional.empty();
        for (int k = 0; k < sightings.size(); k++) {
            Optional<LocalDate> day = sightings.get(k).seenOn();
            first = first.isEmpty() ? day : first;
            last = day.isPresent() ? day : last;
        }
        return new Stock.Seen(first, last);
    }

    /** The number of the car of a row. */
    int car(int i) {
        return car[i];
    }

    /** The place of a row's listing among the sightings of its car. */
    int place(int i) {
        return place[i];
    }

    double logPrice(int i) {
        return logPrice[i];
    }

    double[] logPrices() {
        return logPrice.clone();
    }

    Bound bound(int i) {
        return bounds.get(i) ? Bound.BELOW : Bound.NONE;
    }

    /** The number of rows that are prices and no bounds. */
    int prices() {
        return car.length - bounds.cardinality();
    }

    /**
     * Whether cars were looked for again: one in ten or more were seen on two days, or have an outcome. Where each was seen once, those of
     * long ago may be on offer still, and those seen lately are nothing special.
     */
    boolean isWatched() {
        return (long) WATCHED_OF * watched >= cars.size();
    }

    boolean onOffer(int i) {
        return onOffer.get(i);
    }

    /** Whether a price is one of a car that is crashed or branded, or does not drive. */
    boolean isTroubled(int i) {
        return troubled.get(i);
    }

    /**
     * The row of the same car that a row is compared with: of a price the one before it, of a bound the last price of the car; -1 where
     * there is none, and the row stands for its car by itself.
     */
    int comparedWith(int i) {
        int from = i - 1;
        if (bounds.get(i)) {
            while (from + 1 < car.length && car[from + 1] == car[i]) {
                from++;
            }
        }
        while (from >= 0 && car[from] == car[i]) {
            if (!bounds.get(from)) {
                return from;
            }
            from--;
        }
        return -1;
    }

    /** The first row of each car, and behind the last car the number of rows. */
    int[] firstRows() {
        int[] first = new int[cars.size() + 1];
        for (int of : car) {
            first[of + 1]++;
        }
        for (int c = 0; c < cars.size(); c++) {
            first[c + 1] += first[c];
        }
        return first;
    }

    /** The rows that are the first price of their cars, bounds passed over. */
    int[] firstPrices() {
        return IntStream.range(0, size()).filter(i -> !bounds.get(i) && comparedWith(i) < 0).toArray();
    }

    /**
     * How far two prices of one car at two levels of trade scatter about the step between the levels: the median distance of their
     * log differences from the middle one of the same two levels, as a scale, drawn toward what is assumed as if by five more pairs.
     *
     * @param assumed the scale, log points
     */
    double sameCarScale(double assumed) {
        Map<String, List<Double>> differences = new TreeMap<>();
        for (int i = 1; i < size(); i++) {
            int before = comparedWith(i);
            if (before >= 0 && !bounds.get(i)) {
                Evidence a = get(before);
                Evidence b = get(i);
                differences.computeIfAbsent(a.subject().level() + " " + b.subject().level(), k -> new ArrayList<>())
                        .add(b.logPrice() - a.logPrice());
            }
        }
        double squares = 5 * assumed * assumed;
        double weight = 5;
        for (List<Double> list : differences.values()) {
            if (list.size() >= 5) {
                double[] d = list.stream().mapToDouble(Double::doubleValue).toArray();
                double middle = Quantiles.of(d, 0.5);
                double distance = Quantiles.of(Arrays.stream(d).map(x -> Math.abs(x - middle)).toArray(), 0.5);
                // 0.7407 is the upper quartile of Student's t with 4 degrees of freedom.
                squares += list.size() * distance * distance / (0.7407 * 0.7407);
                weight += list.size();
            }
        }
        return Math.sqrt(squares / weight);
    }
}
