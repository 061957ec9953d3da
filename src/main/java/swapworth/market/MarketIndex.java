package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import swapworth.listing.Days;
import swapworth.statistics.Draws;
import swapworth.statistics.JointDraws;
import swapworth.statistics.Mixture;
import swapworth.statistics.Posterior;
import swapworth.statistics.SparseRow;

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
    /** Over fewer days between the middles of two months a change a month would be an extrapolation. */
    private static final long LEAST_DAYS = 20;
    private static final long LEAST_DAYS_OF_OUTLOOK = Math.round(Outlook.LEAST_MONTHS * Days.PER_MONTH);
    private static final int PEAK_DRAWS = 4000;
    /** Seeds of the peak's draws and of the outlook: any fixed numbers would do. */
    private static final long PEAK_SEED = 20_260_102;
    private static final long OUTLOOK_SEED = 20_260_103;

    private final IndexBasis basis;
    private final YearMonth base;
    private final Held held;
    private final String line;
    private final TimeContrast contrast;

    private MarketIndex(IndexBasis basis, YearMonth base, Held held, String line) {
        this.basis = basis;
        this.base = base;
        this.held = held;
        this.line = line;
        this.contrast = new TimeContrast(basis.encoder(), line, held);
    }

    /** The index of a fitted model, base in its first month. */
    static Answer<MarketIndex> of(IndexBasis basis) {
        Encoder encoder = basis.encoder();
        if (encoder.walk().isEmpty()) {
            return new Answer.NotTold<>(new CannotTell(encoder.end().isEmpty() ? "no listing has a date"
                    : "the prices that count (of each car the last ask, on the day from which it stood so, and the sale) are all of one"
                    + " day, " + encoder.end().get(), 0, basis.datedCars(), "listings seen in several months, with seen_on"));
        }
        return new Answer.Told<>(new MarketIndex(basis, basis.first(), Held.AGE, ""));
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
        return new MarketIndex(basis, month, held, line);
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
        return new MarketIndex(basis, base, requireNonNull(still, "still"), line);
    }

    /**
     * Of one line, whose drift may depart from that of all: the departures are drawn toward zero.
     *
     * @param vehicle a line of the model; case, spaces and hyphens make no other name
     * @return a copy
     * @throws IllegalArgumentException if no car is of that line
     */
    public MarketIndex ofLine(String vehicle) {
        Set<String> lines = basis.encoder().carsOfLine().keySet();
        NamesSeen names = basis.encoder().names();
        String known = names.line(vehicle);
        if (!lines.contains(known)) {
            throw names.unknown(vehicle, new TreeSet<>(lines));
        }
        return new MarketIndex(basis, base, held, known);
    }

    /** Whether the listings span so long that a season is told apart from the market. */
    boolean hasSeason() {
        return basis.hasSeason();
    }

    boolean sees(String vehicle) {
        return basis.encoder().extentOf(vehicle).isPresent();
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
        return basis.first();
    }

    /**
     * The last month with a sighting.
     *
     * @return a month
     */
    public YearMonth last() {
        return basis.last();
    }

    /**
     * The level of each month from the first to the last.
     *
     * @return in order of time
     */
    public List<IndexMonth> months() {
        Map<YearMonth, Integer> counts = basis.carsByMonth(contrast::isOfLine);
        List<IndexMonth> months = new ArrayList<>();
        for (YearMonth month : basis.months()) {
            Mixture m = believed(contrast.between(TimeContrast.LEVEL, base, month));
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
        return basis.months().stream()
                .mapToDouble(month -> 100 * Math.exp(basis.posterior().estimate(contrast.ageing(base, month)).mean())).toArray();
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
                    + " two", 0, basis.datedCars(), "listings seen in another month too"));
        }
        LocalDate begin = contrast.middle(from);
        LocalDate end = contrast.middle(to);
        long days = ChronoUnit.DAYS.between(begin, end);
        if (days < LEAST_DAYS) {
            return new Answer.NotTold<>(new CannotTell("a drift needs at least " + LEAST_DAYS + " days, and between the middle days seen of"
                    + " the two months lie " + days + " (" + begin + " to " + end + ")", 0, basis.datedCars(),
                    "listings seen over a longer time"));
        }
        SparseRow perMonth = scaled(Days.PER_MONTH / days, contrast.between(TimeContrast.TREND, from, to));
        Mixture m = believed(perMonth);
        return new Answer.Told<>(new Drift(from, to, held, Figures.percent(m.quantile(0.5)),
                new Range(Figures.percent(m.quantile(0.1)), Figures.percent(m.quantile(0.9))),
                new Range(Figures.percent(m.quantile(0.025)), Figures.percent(m.quantile(0.975))), m.cumulative(0), m.sd(),
                Math.sqrt(basis.posterior().priorVariance(perMonth)), priorShare(perMonth)));
    }

    /**
     * What is believed of a change of the level. Of cars of one age only the assumption speaks where the dates tell nothing; of one and the
     * same car the prices are what they are on those dates.
     */
    private Mixture believed(SparseRow change) {
        Posterior posterior = basis.posterior();
        double nothing = basis.datesTellNothing();
        Mixture told = posterior.estimate(change);
        return held == Held.MODEL_YEAR || nothing < 1e-3 ? told
                : told.or(nothing, posterior.priorMean(change), posterior.priorVariance(change));
    }

    private double priorShare(SparseRow change) {
        double share = Math.min(1, basis.posterior().priorShare(change));
        double nothing = basis.datesTellNothing();
        return held == Held.MODEL_YEAR ? share : nothing + (1 - nothing) * share;
    }

    /**
     * How probable it is that the dates of the listings are not the days on which their prices were asked: one and the same car should grow
     * older and cheaper, or the market rise, but the prices know nothing of their dates.
     *
     * @return from 0 to 1
     */
    public double chanceThatDatesTellNothing() {
        return basis.datesTellNothing();
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
        JointDraws draws = basis.posterior().draws(PEAK_DRAWS, PEAK_SEED);
        List<YearMonth> months = basis.months();
        List<double[]> levels = months.stream().map(month -> draws.of(contrast.between(TimeContrast.TREND, base, month))).toList();
        double even = held == Held.MODEL_YEAR ? 0 : basis.datesTellNothing();
        double[] chances = Arrays.stream(Draws.shareHighest(levels)).map(share -> even / months.size() + (1 - even) * share).toArray();
        return new Peak(months, chances);
    }

    /**
     * Joint draws of the level over the months to come.
     *
     * @return the outlook; with less than {@link Outlook#LEAST_MONTHS} months, {@link Outlook#LEAST_CARS} cars or
     *     {@link Outlook#LEAST_CARS_SPREAD} of them spread over the months, why there is none
     */
    public Answer<Outlook> outlook() {
        int cars = basis.datedCars();
        long days = basis.days();
        int spread = basis.carsByMonth(e -> true).values().stream().mapToInt(n -> Math.min(n, IndexMonth.SEEN_FROM)).sum();
        if (days < LEAST_DAYS_OF_OUTLOOK || cars < Outlook.LEAST_CARS || spread < Outlook.LEAST_CARS_SPREAD) {
            return new Answer.NotTold<>(new CannotTell("an outlook from " + cars + (cars == 1 ? " car" : " cars") + " over " + days
                    + (days == 1 ? " day" : " days") + (spread < Math.min(cars, Outlook.LEAST_CARS_SPREAD) ? ", most of them of few months,"
                    : "") + " would be an assumption dressed as a finding", 0, cars, "at least " + Outlook.LEAST_CARS
                    + " cars with a date over at least " + Outlook.LEAST_MONTHS + " months (" + LEAST_DAYS_OF_OUTLOOK + " days), "
                    + Outlook.LEAST_CARS_SPREAD + " of them where no month counts for more than " + IndexMonth.SEEN_FROM));
        }
        if (basis.datesTellNothing() > 0.5) {
            return new Answer.NotTold<>(new CannotTell("the prices know nothing of the dates beside them, neither of ageing nor of a "
                    + "market", 0, cars, "in seen_on the days on which the prices were asked"));
        }
        return new Answer.Told<>(new Outlook(basis.encoder(), OUTLOOK_SEED, basis.posterior(), basis.datesTellNothing()));
    }

    /**
     * What a reader must know before he relies on the index: what the listings cannot tell apart, and what they lack.
     *
     * @return whole sentences
     */
    public List<String> cautions() {
        return new IndexCautions(basis).all(months());
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
        return new IndexCheck(basis, contrast, base).months();
    }

    /** How the market moved, as {@link IndexTables#summary(MarketIndex)} says. */
    @Override
    public String toString() {
        return IndexTables.summary(this);
    }
}
