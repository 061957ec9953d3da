package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Days;
import swapworth.listing.PriceKind;
import swapworth.statistics.Bound;
import swapworth.statistics.Design;
import swapworth.statistics.ErrorLaw;
import swapworth.statistics.ErrorScale;
import swapworth.statistics.JointDraws;
import swapworth.statistics.Mixture;
import swapworth.statistics.Posterior;
import swapworth.statistics.PriorBlock;
import swapworth.statistics.Quantiles;
import swapworth.statistics.Sample;
import swapworth.statistics.ShrunkenRegression;
import swapworth.statistics.SparseRow;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * What used parts sell for: ln(price) by kind of part, line or running gear, distance run, asking or sold, and month, with the same
 * regression that prices cars. A kind of part that no offer names has no price: nothing is guessed for it.
 */
public final class PartsMarket {
    private static final int LEVEL = 0;
    private static final int SOLD = 1;
    private static final int MONTHS = 2;
    private static final int MECHANICAL = 3;
    private static final int OTHER = 4;
    private static final int NAMES = 5;
    private static final List<String> EFFECTS = List.of("part_sold", "part_drift", "part_mileage_mechanical", "part_mileage_other");
    private static final double MILES_STEP = 10_000;
    /** Departures of single parts from their like end here, in error scales. */
    private static final double FARTHEST = 3;

    private final List<PartOffers.Offer> offers;
    private final Assumptions assumptions;
    private final Map<String, Integer> names;
    private final Map<String, Integer> lines;
    private final Map<String, String> gearOfLine;
    private final Map<String, Integer> offersOf = new HashMap<>();
    private final double middleMiles;
    private final Optional<LocalDate> on;
    private final Optional<Posterior> posterior;
    private @Nullable Drawn kept;

    private PartsMarket(List<PartOffers.Offer> offers, Map<String, String> gearOfLine, Optional<LocalDate> on, Assumptions assumptions) {
        this.offers = offers;
        this.assumptions = assumptions;
        this.gearOfLine = gearOfLine;
        this.on = on;
        this.middleMiles = middle(offers);
        for (PartOffers.Offer offer : offers) {
            offersOf.merge(offer.part().name(), 1, Integer::sum);
        }
        this.names = numbered(offers.stream().map(offer -> offer.part().name()));
        this.lines = numbered(offers.stream().map(this::fit));
        this.posterior = offers.isEmpty() ? Optional.empty() : Optional.of(fitted(assumptions));
    }

    /** By name, so that the order of the rows of a file moves no draw. */
    private static Map<String, Integer> numbered(Stream<String> levels) {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        levels.sorted().forEach(level -> numbers.putIfAbsent(level, numbers.size()));
        return numbers;
    }

    /**
     * The market by some offers.
     *
     * @param offers the offers
     * @param gearOfLine which running gear each line carries, both in lower case, for offers that name the line alone
     * @param on the valuation day, where there is one
     * @param assumptions what stands in where the offers do not speak
     * @return the market
     */
    public static PartsMarket fit(PartOffers offers, Map<String, String> gearOfLine, Optional<LocalDate> on, Assumptions assumptions) {
        return new PartsMarket(offers.offers(), Map.copyOf(gearOfLine), requireNonNull(on, "on"), assumptions);
    }

    /** The median distance of the offers; without any the distance of a part cannot count. */
    private static double middle(List<PartOffers.Offer> offers) {
        double[] known = offers.stream().filter(o -> o.miles().isPresent()).mapToDouble(o -> o.miles().getAsDouble()).sorted().toArray();
        return known.length == 0 ? Double.NaN : Quantiles.ofSorted(known, 0.5);
    }

    /** Mechanical parts go by running gear, all others by line. */
    private String fit(PartOffers.Offer offer) {
        return fit(offer.part(), offer.vehicle(), offer.gear());
    }

    private String fit(PartKind part, String vehicle, String gear) {
        if (!part.mechanical()) {
            return "line " + vehicle;
        }
        return "gear " + (gear.isEmpty() ? gearOfLine.getOrDefault(vehicle, vehicle) : gear);
    }

    private Posterior fitted(Assumptions a) {
        int n = offers.size();
        SparseRow[] rows = new SparseRow[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            PartOffers.Offer o = offers.get(i);
            double months = on.isPresent() && o.seenOn().isPresent()
                    ? (o.seenOn().get().toEpochDay() - on.get().toEpochDay()) / Days.PER_MONTH : 0;
            rows[i] = row(o.part(), o.vehicle(), o.gear(), o.miles(), o.kind(), months);
            y[i] = StrictMath.log(o.price());
        }
        int firstLine = NAMES + names.size() + 1;
        List<PriorBlock> blocks = List.of(PriorBlock.flat("level of part prices", LEVEL, 1), stated(a, "part_sold", SOLD),
                stated(a, "part_drift", MONTHS), stated(a, "part_mileage_mechanical", MECHANICAL), stated(a, "part_mileage_other", OTHER),
                // With one offer of each kind this spread and the scatter can hardly be told apart: it is averaged over as well.
                PriorBlock.levels("how far parts differ", NAMES, names.size(), a.get("spread_part_names").middle(),
                        PriorBlock.Role.SECONDARY),
                PriorBlock.levels("how far lines differ", firstLine, lines.size(), a.get("spread_part_lines").middle(),
                        PriorBlock.Role.SECONDARY));
        Assumption error = a.get("part_error");
        Bound[] bounds = new Bound[n];
        Arrays.fill(bounds, Bound.NONE);
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        return ShrunkenRegression.withDefaults().with(ErrorLaw.student(4)).with(ErrorScale.of(error.middle(), error.spread()))
                .fit(Design.of(columns(), rows), new Sample(y, bounds, ones, new double[n], new double[n]), blocks);
    }

    private static PriorBlock stated(Assumptions a, String name, int column) {
        return PriorBlock.stated(name, column, a.logMiddle(name), Math.max(1e-6, a.logSpread(name)));
    }

    private int columns() {
        return NAMES + names.size() + 1 + lines.size() + 1;
    }

    private SparseRow row(PartKind part, String vehicle, String gear, OptionalDouble miles, PriceKind kind, double months) {
        int firstLine = NAMES + names.size() + 1;
        int name = NAMES + names.getOrDefault(part.name(), names.size());
        int line = firstLine + lines.getOrDefault(fit(part, vehicle, gear), lines.size());
        double run = Double.isNaN(middleMiles) ? 0 : (miles.orElse(middleMiles) - middleMiles) / MILES_STEP;
        return SparseRow.of(new int[] {LEVEL, SOLD, MONTHS, MECHANICAL, OTHER, name, line},
                new double[] {1, kind == PriceKind.SOLD ? 1 : 0, months, part.mechanical() ? run : 0, part.mechanical() ? 0 : run, 1, 1});
    }

    /** A part of a car. */
    record Wanted(PartKind part, String vehicle, String gear, OptionalDouble miles) {
    }

    private SparseRow row(Wanted w, PriceKind kind) {
        return row(w.part(), w.vehicle(), w.gear(), w.miles(), kind, 0);
    }

    /** The offers of a kind of part. */
    int offersOf(PartKind part) {
        return offersOf.getOrDefault(part.name(), 0);
    }

    /** The price of one such part on the valuation day; nothing where no offer names its kind. */
    Optional<Mixture> predicted(Wanted wanted, PriceKind kind) {
        return offersOf(wanted.part()) == 0 ? Optional.empty()
                : posterior.map(p -> p.predict(row(wanted, kind), 1, 0));
    }

    /** How much of what is unsure of the level of a part's price rests on assumptions. */
    double priorShare(Wanted wanted) {
        return posterior.map(p -> p.priorShare(row(wanted, PriceKind.SOLD))).orElse(1.0);
    }

    /** Joint draws of all part prices; the same are asked for car after car and kept. */
    synchronized Drawn draws(int count, long seed) {
        if (kept == null || kept.count != count || kept.seed != seed) {
            kept = new Drawn(count, seed, posterior.map(p -> p.draws(count, seed)));
        }
        return kept;
    }

    /** Joint draws: draw i of every part belongs to one state of the parts market. */
    final class Drawn {
        private final int count;
        private final long seed;
        private final Optional<JointDraws> joint;

        private Drawn(int count, long seed, Optional<JointDraws> joint) {
            this.count = count;
            this.seed = seed;
            this.joint = joint;
        }

        /**
         * Draws of the logarithm of what one such part sells for; nothing where no offer names its kind. How one part departs from its like
         * is held within {@value #FARTHEST} scales: beyond them lie mistyped prices, not sales, and with them a sum would have no mean.
         */
        Optional<double[]> sold(Wanted wanted, long seed) {
            if (offersOf(wanted.part()) == 0 || joint.isEmpty()) {
                return Optional.empty();
            }
            SparseRow row = row(wanted, PriceKind.SOLD);
            double[] level = joint.get().of(row);
            double[] one = joint.get().responses(row, 1, 0, seed);
            double most = FARTHEST * posterior.orElseThrow().errorScale();
            for (int i = 0; i < one.length; i++) {
                one[i] = level[i] + Math.max(-most, Math.min(most, one[i] - level[i]));
            }
            return Optional.of(one);
        }

        /** Draws of the drift of part prices, log points a month. */
        Optional<double[]> drift() {
            return joint.map(j -> j.of(SparseRow.of(new int[] {MONTHS}, new double[] {1})));
        }
    }

    /** What the offers and the assumptions together say of slopes and steps: median and ends of the 80 % range, in per cent. */
    Map<String, double[]> effects() {
        Map<String, double[]> effects = new LinkedHashMap<>();
        for (int k = 0; posterior.isPresent() && k < EFFECTS.size(); k++) {
            Mixture m = posterior.get().estimate(SparseRow.of(new int[] {SOLD + k}, new double[] {1}));
            effects.put(EFFECTS.get(k), new double[] {100 * Math.expm1(m.quantile(0.5)), 100 * Math.expm1(m.quantile(0.1)),
                    100 * Math.expm1(m.quantile(0.9))});
        }
        return effects;
    }

    /**
     * What moves the prices of parts.
     *
     * @return one row an effect, with what was assumed and how much of what is unsure still rests on that
     */
    public Table table() {
        Table.Builder table = Table.titled("What moves the prices of parts, per cent of price").columns(Column.words("effect"),
                Column.number("median", "%"), Column.words("80 % range"), Column.number("assumed", "%"),
                Column.number("held by assumptions", "%"),
                Column.sentences("meaning"));
        table.note(offers.size() + (offers.size() == 1 ? " offer of " : " offers of ") + names.size()
                + (names.size() == 1 ? " kind of part, " : " kinds of parts, ") + lines.size()
                + (lines.size() == 1 ? " line or running gear." : " lines and running gears."));
        effects().forEach((name, e) -> {
            Assumption a = assumptions.get(name);
            double share = posterior.orElseThrow().priorShare(SparseRow.of(new int[] {SOLD + EFFECTS.indexOf(name)}, new double[] {1}));
            table.row(Cell.words(name), Cell.number(e[0], 1), Cell.words(Cell.format(e[1], 1) + " to " + Cell.format(e[2], 1)),
                    Cell.number(a.middle(), 1), Cell.number(100 * share, 0), Cell.words(a.note() + " (" + a.unit() + ")"));
        });
        return table.build();
    }

    /**
     * The number of offers.
     *
     * @return of rows with one id, one
     */
    public int offers() {
        return offers.size();
    }
}
