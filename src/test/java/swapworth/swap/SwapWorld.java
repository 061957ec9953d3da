package swapworth.swap;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Seller;
import swapworth.market.TestCars;

/**
 * An invented market with a true price of every pair of body and running gear, in which some pairs are never listed, and a finished car
 * of such a pair with a true price of its own. What is assumed is right on average: bodies, running gears, the slope on power, pairs and
 * what is assumed of the swap are drawn from the assumptions, or the user's statement lies about the true value by as much as it says.
 */
final class SwapWorld {
    static final LocalDate DAY = LocalDate.of(2026, 6, 1);
    private static final double SCATTER = 0.12;
    private static final double OF_AGE = -0.09;
    private static final double OF_MILES = -0.04;

    /** How many bodies and gears there are, which pairs are listed, and by how many cars. */
    enum Size {
        /** Six bodies, four gears, each body with two of them: 96 cars. */
        RING(6, 4),
        /** 29 cars in three lines: two bodies, two gears. */
        SMALL(2, 2);

        private final int bodies;
        private final int gears;

        Size(int bodies, int gears) {
            this.bodies = bodies;
            this.gears = gears;
        }

        int cars(int b, int g) {
            if (this == SMALL) {
                return b == 0 ? (g == 0 ? 10 : 0) : g == 0 ? 10 : 9;
            }
            return g == b % gears || g == (b + 1) % gears ? 8 : 0;
        }
    }

    private final Size size;
    private final Random random;
    private final double[] body;
    private final double[] gear;
    private final double[][] pair;
    private final List<Car> cars = new ArrayList<>();
    private final double ofAge;
    private final double ofMiles;

    private SwapWorld(Size size, Random random, double pairSpread, double bodies, double gears, double slope, double ofAge,
            double ofMiles) {
        this.size = size;
        this.ofAge = ofAge;
        this.ofMiles = ofMiles;
        this.random = random;
        this.body = new double[size.bodies];
        for (int b = 0; b < size.bodies; b++) {
            body[b] = bodies * random.nextGaussian();
        }
        this.gear = new double[size.gears];
        this.pair = new double[size.bodies][size.gears];
        for (int g = 0; g < size.gears; g++) {
            gear[g] = slope * Math.log(power(g) / 100) + gears * random.nextGaussian();
        }
        for (int b = 0; b < size.bodies; b++) {
            for (int g = 0; g < size.gears; g++) {
                pair[b][g] = pairSpread * random.nextGaussian();
                for (int k = 0; k < size.cars(b, g); k++) {
                    double miles = 20_000 + random.nextInt(100_000);
                    CarFacts facts = facts(b, g, 2008 + random.nextInt(10), miles).build();
                    cars.add(TestCars.car(cars.size(), facts, Math.exp(level(b, g, facts, miles) + SCATTER * random.nextGaussian())));
                }
            }
        }
    }

    /** A world whose bodies, gears, slope on power and pairs are drawn from the assumptions; age and mileage are as they are usually. */
    static SwapWorld drawn(Size size, long seed, double pairSpread) {
        return drawn(size, pairSpread, new Random(seed), false);
    }

    /** The same with the effects of age and mileage drawn too: swaps that were seen differ in both. */
    static SwapWorld drawnWithSlopes(Size size, long seed, double pairSpread) {
        return drawn(size, pairSpread, new Random(seed), true);
    }

    private static SwapWorld drawn(Size size, double pairSpread, Random random, boolean slopes) {
        Assumptions a = Assumptions.defaults();
        double bodies = a.get("spread_bodies").middle() * Math.abs(random.nextGaussian());
        double gears = a.get("spread_gears").middle() * Math.abs(random.nextGaussian());
        double slope = drawn(a, "power_slope", random) / Math.log(1.1);
        return new SwapWorld(size, random, pairSpread, bodies, gears, slope, slopes ? drawn(a, "age_slope", random) : OF_AGE,
                slopes ? drawn(a, "mileage_slope", random) : OF_MILES);
    }

    private static double drawn(Assumptions a, String name, Random random) {
        return a.logMiddle(name) + a.logSpread(name) * random.nextGaussian();
    }

    /** A world of the larger size in which more power costs more, without extremes. */
    static SwapWorld ordinary(long seed) {
        return new SwapWorld(Size.RING, new Random(seed), 0.1, 0.3, 0.1, 0.5, OF_AGE, OF_MILES);
    }

    static double power(int gear) {
        return 90 + 40 * gear;
    }

    static CarFacts.Builder facts(int body, int gear, int year, double miles) {
        return CarFacts.of("Line " + body + gear).body("shell " + body).runningGear("gear " + gear).powerKw(power(gear)).modelYear(year)
                .mileage(TestCars.miles(miles)).seller(Seller.PRIVATE);
    }

    List<Car> cars() {
        return cars;
    }

    private double level(int b, int g, CarFacts facts, double miles) {
        return 9.5 + body[b] + gear[g] + pair[b][g] + ofAge * (facts.ageOn(DAY).orElseThrow() - 13)
                + ofMiles * (miles / 10_000 - 7);
    }

    /**
     * A finished swap with its truth.
     *
     * @param logPrice true log price of this one car
     * @param logLevel true log price of such cars
     * @param car the car as the user describes it, its parts at market prices
     * @param assumptions what the user assumes
     * @param factory the factory equivalent, where it is worth more than the stock car
     * @param gearShare how much of the effect of distance belongs to the running gear
     * @param factor what it makes of the price that its owner built it
     */
    record Swap(double logPrice, double logLevel, FinishedCar car, Assumptions assumptions, List<CarFacts> factory,
            double gearShare, double factor) {
    }

    /** Swaps of one pair that other people sold privately, and the true log price at which such cars as the finished one are sold. */
    record Sold(List<SeenSwap> swaps, double logLevel) {
    }

    /** Sales of the pair of a finished car, built by owners; how much of the effect of distance is the gear's follows from its truth. */
    Sold sold(int b, int g, Swap swap, int count) {
        Assumptions a = Assumptions.defaults();
        double step = a.logMiddle("level_private_sold") + a.logSpread("level_private_sold") * random.nextGaussian();
        List<SeenSwap> seen = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            double miles = 40_000 + random.nextInt(80_000);
            double gearMiles = 20_000 + random.nextInt(60_000);
            CarFacts facts = swap.car().facts().toBuilder().modelYear(2010 + random.nextInt(7)).mileage(TestCars.miles(miles))
                    .gearMileage(TestCars.miles(gearMiles)).build();
            double own = a.get("swap_own_departure").middle() * random.nextGaussian() + SCATTER * random.nextGaussian();
            double level = level(b, g, facts, miles + swap.gearShare() * (gearMiles - miles)) + swap.factor() + step;
            seen.add(new SeenSwap("sold " + k, facts, BuiltBy.OWNER, Math.exp(level + own), SeenSwap.Kind.SOLD,
                    LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER, Optional.of(DAY), Optional.empty()));
        }
        return new Sold(seen, swap.logLevel() + step);
    }

    /** All pairs that were never listed and whose running gear is the stronger one. */
    List<int[]> unseen() {
        List<int[]> pairs = new ArrayList<>();
        for (int b = 0; b < size.bodies; b++) {
            for (int g = 0; g < size.gears; g++) {
                if (size.cars(b, g) == 0 && power(g) > power(stockGear(b))) {
                    pairs.add(new int[] {b, g});
                }
            }
        }
        return pairs;
    }

    private int stockGear(int b) {
        return size == Size.SMALL ? 0 : b % size.gears;
    }

    /**
     * A finished car of a pair.
     *
     * @param between spread of what the approaches miss beyond their own errors
     */
    Swap swap(int b, int g, double between) {
        Assumptions a = Assumptions.defaults();
        CarFacts stock = facts(b, stockGear(b), 2013, 70_000).build();
        CarFacts facts = CarFacts.of(stock.vehicle()).body("shell " + b).runningGear("gear " + g).modelYear(2013)
                .mileage(TestCars.miles(70_000)).gearMileage(TestCars.miles(40_000)).seller(Seller.PRIVATE).build();
        double share = clamped(a.get("swap_mileage_share"), 1);
        double factor = a.logMiddle("swap_built_by_owner") + a.logSpread("swap_built_by_owner") * random.nextGaussian();
        double level = level(b, g, facts, 70_000 - share * 30_000) + factor;
        double own = a.get("swap_own_departure").middle() * random.nextGaussian() + SCATTER * random.nextGaussian();
        double stockValue = Math.exp(level(b, stockGear(b), stock, 70_000));

        double removed = stockValue * clamped(a.get("swap_removed_parts"), 0.9);
        double work = 0.3 * stockValue;
        double paid = clamped(a.get("swap_work_share"), 1);
        double whole = Math.exp(level + between * random.nextGaussian());
        double rest = whole - (stockValue - removed) - paid * work;
        // Parts worth more than the whole: the user lists the loss.
        double gear = Math.max(0.15 * stockValue, rest);
        double lost = gear - rest;
        SwapCost cost = SwapCost.unstated().withGear(stated(gear)).withWork(stated(work))
                .withLosses(lost > 0 ? List.of(new SwapCost.Loss("parts that do not work together", lost, 0)) : List.of());

        double best = 0;
        List<CarFacts> factory = new ArrayList<>();
        for (int other = 0; other < size.bodies; other++) {
            if (size.cars(other, g) > 0 && Math.exp(level(other, g, facts, 70_000 - share * 30_000)) > Math.max(best, 1.2 * stockValue)) {
                best = Math.exp(level(other, g, facts, 70_000 - share * 30_000));
                factory = List.of(facts(other, g, 2013, 70_000).build());
            }
        }
        if (!factory.isEmpty()) {
            double where = (Math.exp(level + between * random.nextGaussian()) - stockValue) / (best - stockValue);
            Assumption position = a.get("swap_position");
            a = a.with(new Assumption("swap_position", position.question(), where + position.spread() * random.nextGaussian(),
                    position.spread(), position.unit(), "drawn", ""));
        }
        return new Swap(level + own, level, FinishedCar.of("swap", facts).with(BuiltBy.OWNER).with(cost), a, factory, share,
                factor);
    }

    private UnsureAmount stated(double truth) {
        return UnsureAmount.stated(truth * Math.exp(Math.log(1.2) * random.nextGaussian()), 0.2, "stated");
    }

    private double clamped(Assumption a, double most) {
        return Math.max(0, Math.min(most, a.middle() + a.spread() * random.nextGaussian()));
    }
}
