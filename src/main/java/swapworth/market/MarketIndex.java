package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Days;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;
import swapworth.listing.PriceIncludes;
import swapworth.listing.PriceKind;
import swapworth.statistics.Bound;
import swapworth.statistics.JointDraws;
import swapworth.statistics.Mixture;
import swapworth.statistics.Posterior;
import swapworth.statistics.Quantiles;
import swapworth.statistics.RepeatPrices;
import swapworth.statistics.SparseRow;
import swapworth.table.Cell;

/**
 * How the level of the market has moved with the cars held still: month by month, how fast, when it stood highest, and where it may go.
 * All of it comes from the time terms of the price model (a drift, a walk over months, the drifts of lines, a season), so that its
 * ranges hang together with every value of the model.
 *
 * <p>The level of a month is 100 exp(c'b), where c is the difference of the time terms between the middle of the month and that of the
 * base month and b their coefficients; index and ranges are quantiles of what is believed of it.
 *
 * <p>Immutable: {@code with} methods return changed copies. Safe for use by several threads.
 */
public final class MarketIndex {
    /** The level with its season. */
    static final Set<Group> LEVEL = EnumSet.of(Group.TIME, Group.SEASON);
    static final Set<Group> TREND = EnumSet.of(Group.TIME);
    /** What a car loses by age. */
    static final Set<Group> AGEING = EnumSet.of(Group.AGE, Group.MILEAGE);
    /** Standard deviation of the ages of cars about their dates, years, below which all are of about one model year. */
    private static final double LEAST_SPREAD_OF_AGES = 0.4;
    /** Over fewer days between the middles of two months a change a month would be an extrapolation. */
    private static final long LEAST_DAYS = 20;
    /** From this chance on a reader is told that the dates may tell nothing. */
    private static final double WORTH_SAYING = 0.25;
    private static final long LEAST_DAYS_OF_OUTLOOK = Math.round(Outlook.LEAST_MONTHS * Days.PER_MONTH);
    private static final int WEEK = 7;
    /** So many times as many asks in the first week as in one of those since are cars that had stood before, and not just come up. */
    private static final int STANDING = 3;
    private static final int PEAK_DRAWS = 4000;
    /** Seeds of the peak's draws and of the outlook: any fixed numbers would do. */
    private static final long PEAK_SEED = 20_260_102;
    private static final long OUTLOOK_SEED = 20_260_103;

    private final List<Car> cars;
    private final Assumptions assumptions;
    private final Encoder encoder;
    private final Posterior posterior;
    private final List<Evidence> evidence;
    private final double datesTellNothing;
    private final YearMonth base;
    private final Held held;
    private final String line;

    private MarketIndex(List<Car> cars, Assumptions assumptions, Encoder encoder, Posterior posterior, List<Evidence> evidence,
            double datesTellNothing, YearMonth base,
            Held held, String line) {
        this.cars = cars;
        this.assumptions = assumptions;
        this.encoder = encoder;
        this.posterior = posterior;
        this.evidence = evidence;
        this.datesTellNothing = datesTellNothing;
        this.base = base;
        this.held = held;
        this.line = line;
    }

    /** The index of a fitted model, base in its first month. */
    static Answer<MarketIndex> of(List<Car> cars, Assumptions assumptions, Encoder encoder, Posterior posterior, List<Evidence> evidence,
            double datesTellNothing) {
        int dated = dated(evidence);
        if (encoder.walk().isEmpty()) {
            return new Answer.NotTold<>(new CannotTell(encoder.end().isEmpty() ? "no listing has a date"
                    : "the prices that count (of each car the last ask, on the day from which it stood so, and the sale) are all of one"
                    + " day, " + encoder.end().get(), 0, dated, "listings seen in several months, with seen_on"));
        }
        return new Answer.Told<>(new MarketIndex(cars, assumptions, encoder, posterior, evidence, datesTellNothing,
                YearMonth.from(encoder.begin().orElseThrow()), Held.AGE, ""));
    }

    private static int dated(List<Evidence> evidence) {
        Set<Integer> cars = new HashSet<>();
        evidence.stream().filter(e -> e.subject().on().isPresent()).forEach(e -> cars.add(e.car()));
        return cars.size();
    }

    /**
     * With another base month.
     *
     * @param month the month whose level is 100; it must lie within {@link #first()} and {@link #last()}
     * @return a copy
     * @throws IllegalArgumentException if the month lies outside
     */
    public MarketIndex withBase(YearMonth month) {
        seen("base", month);
        return new MarketIndex(cars, assumptions, encoder, posterior, evidence, datesTellNothing, month, held, line);
    }

    private void seen(String what, YearMonth month) {
        if (month.isBefore(first()) || month.isAfter(last())) {
            throw new IllegalArgumentException("the " + what + " month " + month + " lies outside the months seen, " + first() + " to "
                    + last());
        }
    }

    /**
     * With something else held still.
     *
     * @param still cars of one age (unless stated), or one and the same car
     * @return a copy
     */
    public MarketIndex holding(Held still) {
        return new MarketIndex(cars, assumptions, encoder, posterior, evidence, datesTellNothing, base,
                requireNonNull(still, "still"), line);
    }

    /**
     * Of one line, whose drift may depart from that of all: the departures are drawn toward zero.
     *
     * @param vehicle a line of the model; case, spaces and hyphens make no other name
     * @return a copy
     * @throws IllegalArgumentException if no car is of that line
     */
    public MarketIndex ofLine(String vehicle) {
        Set<String> lines = encoder.carsOfLine().keySet();
        String known = encoder.names().line(vehicle);
        if (!lines.contains(known)) {
            throw encoder.names().unknown(vehicle, new TreeSet<>(lines));
        }
        return new MarketIndex(cars, assumptions, encoder, posterior, evidence, datesTellNothing, base, held, known);
    }

    /** Whether the listings span so long that a season is told apart from the market. */
    boolean hasSeason() {
        return ChronoUnit.DAYS.between(encoder.begin().orElseThrow(), encoder.end().orElseThrow()) >= Encoder.A_YEAR;
    }

    boolean sees(String vehicle) {
        return encoder.extentOf(vehicle).isPresent();
    }

    /**
     * The month whose level is 100.
     *
     * @return the first month seen unless stated otherwise
     */
    public YearMonth base() {
        return base;
    }

    /**
     * What is held still.
     *
     * @return cars of one age unless stated otherwise
     */
    public Held held() {
        return held;
    }

    /**
     * The line that the index is of.
     *
     * @return empty where it is of all lines together
     */
    public Optional<String> line() {
        return line.isEmpty() ? Optional.empty() : Optional.of(line);
    }

    /**
     * The first month with a sighting whose price is in the fit.
     *
     * @return a month
     */
    public YearMonth first() {
        return YearMonth.from(encoder.begin().orElseThrow());
    }

    /**
     * The last month with a sighting.
     *
     * @return a month
     */
    public YearMonth last() {
        return YearMonth.from(encoder.end().orElseThrow());
    }

    /**
     * The level of each month from the first to the last.
     *
     * @return in order of time
     */
    public List<IndexMonth> months() {
        Map<YearMonth, Integer> counts = carsByMonth(this::ofThisLine);
        List<IndexMonth> months = new ArrayList<>();
        for (YearMonth month = first(); !month.isAfter(last()); month = month.plusMonths(1)) {
            Mixture m = believed(between(LEVEL, base, month));
            int cars = counts.getOrDefault(month, 0);
            months.add(new IndexMonth(month, cars, 100 * Math.exp(m.quantile(0.5)),
                    new Range(100 * Math.exp(m.quantile(0.1)), 100 * Math.exp(m.quantile(0.9))),
                    new Range(100 * Math.exp(m.quantile(0.025)), 100 * Math.exp(m.quantile(0.975))), IndexMonth.Support.of(cars)));
        }
        return List.copyOf(months);
    }

    /**
     * What ageing alone would have made of the level of one and the same car: the middle of what is believed of the slope of age.
     *
     * @return one level for each month from the first to the last, that of the base month being 100
     */
    public double[] ageingAlone() {
        List<Double> levels = new ArrayList<>();
        for (YearMonth month = first(); !month.isAfter(last()); month = month.plusMonths(1)) {
            levels.add(100 * Math.exp(posterior.estimate(ageing(base, month)).mean()));
        }
        return levels.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** How many cars have a price of each month in the fit, of those that count. */
    private Map<YearMonth, Integer> carsByMonth(Predicate<Evidence> counts) {
        Map<YearMonth, Set<Integer>> cars = new TreeMap<>();
        for (Evidence e : evidence) {
            if (counts.test(e)) {
                e.subject().on().ifPresent(day -> cars.computeIfAbsent(YearMonth.from(day), m -> new HashSet<>()).add(e.car()));
            }
        }
        Map<YearMonth, Integer> byMonth = new TreeMap<>();
        cars.forEach((month, set) -> byMonth.put(month, set.size()));
        return byMonth;
    }

    private boolean ofThisLine(Evidence e) {
        return line.isEmpty() || e.subject().facts().vehicle().equals(line);
    }

    /**
     * How fast the level moved over the last months.
     *
     * @param months length of the window; all months seen where there are fewer
     * @return the drift over the window; with one month seen, why there is none
     * @throws IllegalArgumentException if the window is shorter than one month
     */
    public Answer<Drift> drift(int months) {
        if (months < 1) {
            throw new IllegalArgumentException("a window is at least 1 month long, not " + months);
        }
        YearMonth from = last().minusMonths(months);
        return drift(from.isBefore(first()) ? first() : from, last());
    }

    /**
     * How fast the level moved from one month to another: its change between the middles of the two, or where the days seen begin and end
     * within them, by the days between.
     *
     * @param from the first month, within {@link #first()} and {@link #last()}
     * @param to the last month, likewise and not before the first
     * @return the drift; why there is none where the two are one month or lie less than 20 days apart
     * @throws IllegalArgumentException if a month lies outside, or the last before the first
     */
    public Answer<Drift> drift(YearMonth from, YearMonth to) {
        seen("first", from);
        seen("last", to);
        if (to.isBefore(from)) {
            throw new IllegalArgumentException("the last month " + to + " lies before the first, " + from);
        }
        if (from.equals(to)) {
            return new Answer.NotTold<>(new CannotTell("the level is that of a month, and all days lie in one, " + from + ": a drift needs"
                    + " two", 0, dated(evidence), "listings seen in another month too"));
        }
        long days = ChronoUnit.DAYS.between(middle(from), middle(to));
        if (days < LEAST_DAYS) {
            return new Answer.NotTold<>(new CannotTell("a drift needs at least " + LEAST_DAYS + " days, and between the middle days seen of"
                    + " the two months lie " + days + " (" + middle(from) + " to " + middle(to) + ")", 0, dated(evidence),
                    "listings seen over a longer time"));
        }
        SparseRow contrast = scaled(Days.PER_MONTH / days, between(TREND, from, to));
        Mixture m = believed(contrast);
        return new Answer.Told<>(new Drift(from, to, held, Figures.percent(m.quantile(0.5)),
                new Range(Figures.percent(m.quantile(0.1)), Figures.percent(m.quantile(0.9))),
                new Range(Figures.percent(m.quantile(0.025)), Figures.percent(m.quantile(0.975))), m.cumulative(0), m.sd(),
                Math.sqrt(posterior.priorVariance(contrast)), priorShare(contrast)));
    }

    /**
     * What is believed of a change of the level. Of cars of one age only the assumption speaks where the dates tell nothing; of one and the
     * same car the prices are what they are on those dates.
     */
    private Mixture believed(SparseRow contrast) {
        Mixture told = posterior.estimate(contrast);
        return held == Held.MODEL_YEAR || datesTellNothing < 1e-3 ? told
                : told.or(datesTellNothing, posterior.priorMean(contrast), posterior.priorVariance(contrast));
    }

    private double priorShare(SparseRow contrast) {
        double share = Math.min(1, posterior.priorShare(contrast));
        return held == Held.MODEL_YEAR ? share : datesTellNothing + (1 - datesTellNothing) * share;
    }

    /**
     * How probable it is that the dates of the listings are not the days on which their prices were asked: one and the same car should grow
     * older and cheaper, or the market rise, but the prices know nothing of their dates.
     *
     * @return from 0 to 1
     */
    public double chanceThatDatesTellNothing() {
        return datesTellNothing;
    }

    private static SparseRow scaled(double factor, SparseRow row) {
        return SparseRow.of(new int[0], new double[0]).plus(factor, row);
    }

    /**
     * In which month the level stood highest, without the season where that is known: by how many joint draws each month is the highest.
     *
     * @return one chance for each month from the first to the last, adding up to 1
     */
    public Peak peak() {
        JointDraws draws = posterior.draws(PEAK_DRAWS, PEAK_SEED);
        List<YearMonth> months = new ArrayList<>();
        List<double[]> levels = new ArrayList<>();
        for (YearMonth month = first(); !month.isAfter(last()); month = month.plusMonths(1)) {
            months.add(month);
            levels.add(draws.of(between(TREND, base, month)));
        }
        double[] chances = new double[months.size()];
        double even = held == Held.MODEL_YEAR ? 0 : datesTellNothing;
        Arrays.fill(chances, even / chances.length);
        for (int i = 0; i < PEAK_DRAWS; i++) {
            int best = 0;
            for (int k = 1; k < chances.length; k++) {
                best = levels.get(k)[i] > levels.get(best)[i] ? k : best;
            }
            chances[best] += (1 - even) / PEAK_DRAWS;
        }
        return new Peak(months, chances);
    }

    /**
     * Joint draws of the level over the months to come.
     *
     * @return the outlook; with less than {@link Outlook#LEAST_MONTHS} months, {@link Outlook#LEAST_CARS} cars or
     *     {@link Outlook#LEAST_CARS_SPREAD} of them spread over the months, why there is none
     */
    public Answer<Outlook> outlook() {
        int cars = dated(evidence);
        long days = ChronoUnit.DAYS.between(encoder.begin().orElseThrow(), encoder.end().orElseThrow());
        int spread = carsByMonth(e -> true).values().stream().mapToInt(n -> Math.min(n, IndexMonth.SEEN_FROM)).sum();
        if (days < LEAST_DAYS_OF_OUTLOOK || cars < Outlook.LEAST_CARS || spread < Outlook.LEAST_CARS_SPREAD) {
            return new Answer.NotTold<>(new CannotTell("an outlook from " + cars + (cars == 1 ? " car" : " cars") + " over " + days
                    + (days == 1 ? " day" : " days") + (spread < Math.min(cars, Outlook.LEAST_CARS_SPREAD) ? ", most of them of few months,"
                    : "") + " would be an assumption dressed as a finding", 0, cars, "at least " + Outlook.LEAST_CARS
                    + " cars with a date over at least " + Outlook.LEAST_MONTHS + " months (" + LEAST_DAYS_OF_OUTLOOK + " days), "
                    + Outlook.LEAST_CARS_SPREAD + " of them where no month counts for more than " + IndexMonth.SEEN_FROM));
        }
        if (datesTellNothing > 0.5) {
            return new Answer.NotTold<>(new CannotTell("the prices know nothing of the dates beside them, neither of ageing nor of a "
                    + "market", 0,
                    cars, "in seen_on the days on which the prices were asked"));
        }
        return new Answer.Told<>(new Outlook(encoder, encoder.walk().orElseThrow(), OUTLOOK_SEED, posterior,
                datesTellNothing));
    }

    /**
     * What a reader must know before he relies on the index: what the listings cannot tell apart, and what they lack.
     *
     * @return whole sentences
     */
    public List<String> cautions() {
        List<String> sentences = new ArrayList<>();
        encoder.undated().ifPresent(sentences::add);
        sentences.add(apart() ? "Ageing is told from the difference between model years, as if these differed by age alone; were newer ones"
                + " dearer for other reasons too, by 1 % a year, cars of the same age would have moved by 0.1 % a month less than is shown."
                + " How one and the same car moved needs no such assumption: cars of one model year are seen at several dates"
                : "All dated cars are of about one model year: by these listings ageing and the market cannot be told apart. The index of"
                + " cars of the same age stands by the assumption that a car loses "
                + -assumptions.get("age_slope").middle()
                + " % a year with age (age_slope, spread " + assumptions.get("age_slope").spread() + ");"
                + " one and the same car needs no such assumption");
        if (datesTellNothing >= WORTH_SAYING) {
            long percent = Math.round(100 * datesTellNothing);
            sentences.add(0, "Are these the days on which the prices were asked? With a chance of "
                    + (percent == 100 ? "more than 99" : percent)
                    + " % the prices know nothing of their dates, neither of ageing nor of a market; so far the level of cars of the same "
                    + "age is what the assumption says (market_drift), within its spread");
        }
        sentences.addAll(new MixOverTime(encoder, posterior, evidence).cautions());
        if (!hasSeason()) {
            sentences.add("The listings span less than a year: a season is not told apart from the market, and prices of the summer stand "
                    + "2 to 4 % above the mean of the year in some years");
        }
        List<IndexMonth> months = months();
        long bridged = months.stream().filter(m -> m.support() == IndexMonth.Support.BRIDGED).count();
        long thin = months.stream().filter(m -> m.support() == IndexMonth.Support.THIN).count();
        if (bridged + thin > 0) {
            sentences.add("Of each car the last ask counts, on the day from which it stood so, and its sale. Of " + months.size()
                    + " months " + bridged + " have no such price and " + thin + " those of fewer than five cars: there the months beside"
                    + " them speak");
        }
        atFirstLook().ifPresent(sentences::add);
        sentences.add("Asking prices follow what is paid with a lag, so that a turn of the last months is shown late and too small, and "
                + "dear cars stay on offer: " + (encoder.setsOnOfferApart()
                ? "cars still on offer at the last look are set apart in the model, the further the longer they have stood, by a step that"
                + " is assumed (still_on_offer) until your rows tell it"
                : "too few of these were looked for again, or have an outcome, to tell those still on offer from those that are gone"));
        return List.copyOf(sentences);
    }

    /**
     * That a collection of less than a year began with cars that had stood for a time. Nobody knows since when, and of cars that stand the
     * dear ones are left: the first month is shown too high.
     */
    private Optional<String> atFirstLook() {
        LocalDate begin = encoder.begin().orElseThrow();
        double days = ChronoUnit.DAYS.between(begin, encoder.end().orElseThrow());
        if (hasSeason() || days < 2 * WEEK) {
            return Optional.empty();
        }
        long asks = 0;
        long first = 0;
        for (Evidence e : evidence) {
            if (e.listing().price().kind() == PriceKind.ASKING && e.subject().on().isPresent()) {
                asks++;
                first += e.subject().on().get().isBefore(begin.plusDays(WEEK)) ? 1 : 0;
            }
        }
        double since = (asks - first) / (days / WEEK - 1);
        return first < IndexMonth.SEEN_FROM || first < STANDING * since ? Optional.empty() : Optional.of(first + " of " + asks
                + " asks are of the first week, " + STANDING + " times as many as of a week since or more: most of these cars"
                + " had stood for a time, and of cars that stand it is the dear ones that stay. Where they were asked 2 % more than cars"
                + " just come up, the movement from the first month on is shown "
                + Cell.format(2 / (days / Days.PER_MONTH), 1) + " % a month too low");
    }

    /** Whether the ages of the cars are more than their dates, so that ageing and the market can be told apart. */
    private boolean apart() {
        double[] sums = new double[6];
        for (Evidence e : evidence) {
            if (e.subject().on().isPresent()) {
                double t = -encoder.walk().orElseThrow().monthsBefore(e.subject().on().get()) / 12;
                double age = encoder.measured(e.subject()).age();
                double[] terms = {1, t, age, t * t, t * age, age * age};
                for (int k = 0; k < sums.length; k++) {
                    sums[k] += terms[k];
                }
            }
        }
        double n = sums[0];
        double tt = sums[3] - sums[1] * sums[1] / n;
        double ta = sums[4] - sums[1] * sums[2] / n;
        double aa = sums[5] - sums[2] * sums[2] / n;
        return Math.sqrt(Math.max(0, aa - (tt > 0 ? ta * ta / tt : 0)) / n) > LEAST_SPREAD_OF_AGES;
    }

    /**
     * The level of one month by two plainer methods, as a check on the index.
     *
     * @param month the month
     * @param cars cars of the month
     * @param monthAlone the median of the month's prices, each adjusted by the model to one and the same car, against that of the base
     *     month: no month speaks for another; not a number where either month has no car
     * @param repeats the level from cars seen in several months alone, by the change of their asks: it may fall faster than the market,
     *     for dear ones are cut, or hardly at all where asks stay as they are; not a number where no chain of such cars links the month
     *     with the base, and in no month where so few were seen again that the months linked are more than the pairs of asks
     */
    public record Comparison(YearMonth month, int cars, double monthAlone, double repeats) {
    }

    /**
     * The level of each month by two plainer methods.
     *
     * @return in order of time; that of the base month is 100
     */
    public List<Comparison> comparison() {
        Map<YearMonth, List<Double>> adjusted = new TreeMap<>();
        double[] mean = posterior.mean();
        for (Evidence e : evidence) {
            if (ofThisLine(e) && e.bound() == Bound.NONE && e.subject().on().isPresent()) {
                YearMonth month = YearMonth.from(e.subject().on().get());
                double fitted = encoder.encode(e.subject()).row().dot(mean);
                double time = row(encoder, LEVEL, line, e.subject().on().get()).dot(mean);
                adjusted.computeIfAbsent(month, m -> new ArrayList<>()).add(e.logPrice() - fitted + time);
            }
        }
        Map<YearMonth, Double> repeats = repeats();
        Map<YearMonth, Integer> counts = carsByMonth(this::ofThisLine);
        double level = median(adjusted.get(base));
        List<Comparison> rows = new ArrayList<>();
        for (YearMonth month = first(); !month.isAfter(last()); month = month.plusMonths(1)) {
            rows.add(new Comparison(month, counts.getOrDefault(month, 0), 100 * Math.exp(median(adjusted.get(month)) - level),
                    repeats.getOrDefault(month, Double.NaN)));
        }
        return List.copyOf(rows);
    }

    private static double median(@Nullable List<Double> values) {
        return values == null ? Double.NaN : Quantiles.of(values.stream().mapToDouble(Double::doubleValue).toArray(), 0.5);
    }

    /** By the asks of cars seen in two months or more; months that no chain of such cars links with the base are not in it. */
    private Map<YearMonth, Double> repeats() {
        List<YearMonth> months = new ArrayList<>();
        for (YearMonth month = first(); !month.isAfter(last()); month = month.plusMonths(1)) {
            months.add(month);
        }
        List<RepeatPrices.Pair> pairs = new ArrayList<>();
        for (Car car : cars) {
            List<Listing> asks = car.sightings().stream().filter(s -> s.price().kind() == PriceKind.ASKING && s.seenOn().isPresent())
                    .toList();
            for (int k = 1; k < asks.size() && (line.isEmpty() || car.facts().vehicle().equals(line)); k++) {
                int from = months.indexOf(YearMonth.from(asks.get(k - 1).seenOn().orElseThrow()));
                int to = months.indexOf(YearMonth.from(asks.get(k).seenOn().orElseThrow()));
                double change = Math.log(asks.get(k).price().amount() / asks.get(k - 1).price().amount());
                // An ask that is half or twice the one before is a slip of the pen.
                if (from >= 0 && to > from && Math.abs(change) < Math.log(2)) {
                    pairs.add(new RepeatPrices.Pair(from, to, change));
                }
            }
        }
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

    /** The difference of the level between two months, each in its middle, or where its days seen end. */
    private SparseRow between(Set<Group> groups, YearMonth from, YearMonth to) {
        SparseRow difference = row(encoder, groups, line, middle(to)).plus(-1, row(encoder, groups, line, middle(from)));
        return held == Held.MODEL_YEAR ? difference.plus(1, ageing(from, to)) : difference;
    }

    /** What one and the same car, of middle age on the last day seen, loses by age from the middle of one month to that of another. */
    private SparseRow ageing(YearMonth from, YearMonth to) {
        double years = ChronoUnit.DAYS.between(middle(from), middle(to)) / Days.PER_YEAR;
        double ahead = ChronoUnit.DAYS.between(encoder.end().orElseThrow(), middle(to)) / Days.PER_YEAR;
        return ageing(ahead).plus(-1, ageing(ahead - years));
    }

    /** The part of age in the price of a car that is of middle age on the last day seen, so many years after it. */
    private SparseRow ageing(double yearsAhead) {
        Subject subject = subject(line, encoder.end().orElseThrow());
        return encoder.part(AGEING, subject,
                Measures.Measured.stated(encoder.middleAge() + yearsAhead, encoder.middleMiles()));
    }

    private LocalDate middle(YearMonth month) {
        LocalDate day = month.atDay(15);
        LocalDate begin = encoder.begin().orElseThrow();
        LocalDate end = encoder.end().orElseThrow();
        return day.isBefore(begin) ? begin : day.isAfter(end) ? end : day;
    }

    /** The time terms of a line on a day. */
    static SparseRow row(Encoder encoder, Set<Group> groups, String line, LocalDate day) {
        return encoder.part(groups, subject(line, day), Measures.Measured.stated(encoder.middleAge(), encoder.middleMiles()));
    }

    private static Subject subject(String line, LocalDate day) {
        return new Subject(CarFacts.of(line).build(), LevelOfTrade.PRIVATE_ASKING, PriceIncludes.NEITHER, Optional.of(day));
    }

    /** How the market moved, as {@link IndexTables#summary(MarketIndex)} says. */
    @Override
    public String toString() {
        return IndexTables.summary(this);
    }
}
