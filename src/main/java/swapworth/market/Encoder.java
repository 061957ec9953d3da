package swapworth.market;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Days;
import swapworth.listing.LevelOfTrade;
import swapworth.market.BodiesAndGears.Fact;
import swapworth.market.Measures.Measured;
import swapworth.market.Stock.Kind;
import swapworth.statistics.Bound;
import swapworth.statistics.Design;
import swapworth.statistics.PriorBlock;
import swapworth.statistics.PriorBlock.Role;
import swapworth.statistics.Quantiles;
import swapworth.statistics.Ranges;
import swapworth.statistics.SparseRow;

/** Turns subjects into rows of numbers: which terms there are, in which columns, and what is assumed of them. */
final class Encoder {
    private static final ToDoubleBiFunction<Subject, Measured> ONE = (s, m) -> 1;
    /** Days that listings must span before a season is asked of them. */
    static final int A_YEAR = 360;
    /** The name of the term that holds the drift of the market. */
    static final String DRIFT = "drift of the market";
    /** The name of the term that holds how prices without a date stand to the last day seen. */
    static final String UNDATED = "day not stated";
    /** The median of a half-normal law of scale 1. */
    private static final double HALF_NORMAL_MEDIAN = 0.6745;

    /** So many states of cars are remembered with the columns that they have. */
    private static final int STATES = 1 << 10;

    private final List<Term> terms = new ArrayList<>();
    /** The terms on the state of a car stand together: the first, and the one behind the last. */
    private final int firstOnState;
    private final int endOnState;
    /** What these terms made of states seen lately. Several threads may ask; at worst a thing is found twice. */
    private final @Nullable InState[] inStates = new InState[STATES];
    /** Terms that are in each row the sum of others, as an age is of the ages by line. */
    private final List<Design.Sum> sums = new ArrayList<>();
    private final Map<String, LineExtent> extents = new HashMap<>();
    private final Set<LevelOfTrade> levels;
    /** The level of cars that state no trim, of each line of which others do. */
    private final Map<String, Optional<String>> unstatedTrims = new HashMap<>();
    /** The words of each trim of each line. */
    private final Map<String, Map<String, Optional<String>>> trims = new ConcurrentHashMap<>();
    private final List<String> furtherTaken = new ArrayList<>();
    private final NamesSeen names;
    private final Measures measures;
    private final BodiesAndGears pairs;
    /** What rows may leave open. */
    private final List<Scatter.Gap> gaps = new ArrayList<>();
    /** As assumed, until the fit has told it. */
    private volatile Scatter scatter;
    private final double middleAge;
    private final double middleMiles;
    private final Optional<LocalDate> begin;
    private final Optional<LocalDate> end;
    private final int undated;
    /**
     * On what part of the step of cars still on offer at the last look each price stands, 0 to 1: the dear ones stay, so that the longer a
     * car has stood the further it stands above the market. Empty where no price stands on it.
     */
    private final float[] stepOnOffer;
    private int onOfferColumn = -1;
    /**
     * How many months after the first price of its car each later one was made, at another level of trade: what is paid may have stayed
     * with the ask that it was haggled down from, or have followed the market since. Empty where all were made at once.
     */
    private final float[] monthsAfterAsk;
    private int afterAskColumn = -1;
    private Optional<Terms.Levels> pairTerm = Optional.empty();
    private final List<String> ofAgeAndMileage = new ArrayList<>();
    private int columns;
    private int[] termOfColumn = new int[0];

    Encoder(EvidenceList evidence, Stock stock, Assumptions assumptions, List<String> further) {
        this.begin = stock.begin();
        this.end = stock.end();
        this.undated = stock.undated();
        this.levels = stock.levels();
        this.pairs = new BodiesAndGears(stock.kinds());
        this.measures = new Measures(stock, assumptions);
        double[] ages = new double[stock.rows()];
        double[] miles = new double[stock.rows()];
        for (LineExtent[] some : Ranges.make(ages.length, (first, end) -> measure(evidence, stock, first, end, ages, miles))) {
            for (int line = 0; line < some.length; line++) {
                extents.computeIfAbsent(stock.lines().get(line), l -> new LineExtent()).take(some[line]);
            }
        }
        double[] middles = Stream.of(ages, miles, evidence.logPrices()).parallel()
                .mapToDouble(values -> Quantiles.ofPartlyOrdered(values, 0.5)).toArray();
        this.middleAge = middles[0];
        this.middleMiles = middles[1];
        double level = middles[2];
        List<Subject> seen = stock.examples();
        this.names = new NamesSeen(seen);

        Term all = add(new Terms.Measure("level of all cars", Group.LEVEL_OF_LINE, "", 1, level, 2, Role.PRIMARY, ONE));
        this.stepOnOffer = stepsOnOffer(evidence, stock, assumptions);
        this.monthsAfterAsk = monthsAfterAsk(evidence, stock);
        lines(all, seen, stock.kinds(), assumptions);
        ageAndMileage(seen, ages, miles, assumptions);
        time(seen, assumptions);
        StepTerms.trade(assumptions).forEach(this::add);
        this.firstOnState = terms.size();
        StepTerms.ofState(assumptions).forEach(this::add);
        this.endOnState = terms.size();
        group("region", Group.REGION, assumptions.get("spread_regions").middle(), seen, Terms::region);
        if (seen.stream().map(s -> s.facts().region().isPresent()).distinct().count() == 2) {
            gap("region", 1, s -> s.facts().region().isEmpty(), "");
        }
        // Many columns cannot all count much: together they are assumed to tell no more than so many would.
        double full = assumptions.get("further_columns_full").middle();
        double share = Math.sqrt(Math.min(1, full / further.stream().filter(c -> !stock.texts(c).isEmpty()).count()));
        for (String column : further) {
            further(column, stock.texts(column), seen, assumptions, share);
        }
        this.scatter = Scatter.assumed(assumptions, gaps, priors());
    }

    /** Something that rows may leave open, where there is such a term. */
    private void gap(String term, double size, Predicate<Subject> isOpen, String remark) {
        if (terms.stream().anyMatch(t -> t.name().equals(term))) {
            gaps.add(new Scatter.Gap(term, size, isOpen, remark));
        }
    }

    Scatter scatter() {
        return scatter;
    }

    /** From now on factors on the error scale are as the fit has told them. Called while the model is being fitted. */
    void scatterAs(Scatter found) {
        scatter = found;
    }

    /** Writes the ages and mileages of some rows, and says how far they reach line by line. */
    private LineExtent[] measure(EvidenceList evidence, Stock stock, int first, int end, double[] ages, double[] miles) {
        LineExtent[] reached = Stream.generate(LineExtent::new).limit(stock.lines().size()).toArray(LineExtent[]::new);
        for (int i = first; i < end; i++) {
            int line = stock.line(i);
            Measured measured = measures.of(stock.lines().get(line), stock.age(i), stock.miles(i));
            ages[i] = measured.age();
            miles[i] = measured.miles();
            reached[line].take(measured);
            reached[line].cars += i == 0 || evidence.car(i) != evidence.car(i - 1) ? 1 : 0;
        }
        return reached;
    }

    /** How many cars of a line have prices, and from which age and mileage to which they reach. */
    static final class LineExtent {
        private int cars;
        private double leastAge = Double.POSITIVE_INFINITY;
        private double mostAge = Double.NEGATIVE_INFINITY;
        private double leastMiles = Double.POSITIVE_INFINITY;
        private double mostMiles = Double.NEGATIVE_INFINITY;

        /** What was filled in has not been seen. */
        private void take(Measured car) {
            if (car.isAgeStated()) {
                leastAge = Math.min(leastAge, car.age());
                mostAge = Math.max(mostAge, car.age());
            }
            if (car.isMileageStated()) {
                leastMiles = Math.min(leastMiles, car.miles());
                mostMiles = Math.max(mostMiles, car.miles());
            }
        }

        private void take(LineExtent more) {
            cars += more.cars;
            leastAge = Math.min(leastAge, more.leastAge);
            mostAge = Math.max(mostAge, more.mostAge);
            leastMiles = Math.min(leastMiles, more.leastMiles);
            mostMiles = Math.max(mostMiles, more.mostMiles);
        }

        /** Whether a car's age is stated, and lies more than half a year outside of those that others state. */
        boolean isOutsideAges(Measured car) {
            return car.isAgeStated() && leastAge <= mostAge && (car.age() < leastAge - 0.5 || car.age() > mostAge + 0.5);
        }

        /** Whether a car's mileage is stated, and lies more than 2,000 miles outside of those that others state. */
        boolean isOutsideMiles(Measured car) {
            return car.isMileageStated() && leastMiles <= mostMiles && (car.miles() < leastMiles - 2000 || car.miles() > mostMiles + 2000);
        }
    }

    /** How many cars of each line have prices. */
    Map<String, Integer> carsOfLine() {
        Map<String, Integer> cars = new HashMap<>();
        extents.forEach((line, extent) -> cars.put(line, extent.cars));
        return cars;
    }

    /** How far the cars of a line reach; nothing of a line that no row is of. */
    Optional<LineExtent> extentOf(String line) {
        return Optional.ofNullable(extents.get(line));
    }

    /** The names that the listings have. */
    NamesSeen names() {
        return names;
    }

    /** The levels of trade of which there are prices. */
    Set<LevelOfTrade> levels() {
        return levels;
    }

    /**
     * The trim of a car with its line, put together once for all that have it. Where other cars of the line state theirs, one that does not
     * is of a level of its own: it is of some trim, and nobody knows of which.
     */
    private Optional<String> trim(Subject subject) {
        Optional<String> trim = subject.facts().trim();
        String line = subject.facts().vehicle();
        if (trim.isEmpty()) {
            return unstatedTrims.getOrDefault(line, trim);
        }
        Map<String, Optional<String>> ofLine = trims.get(line);
        Optional<String> known = ofLine == null ? null : ofLine.get(trim.get());
        return known != null ? known : trims.computeIfAbsent(line, l -> new ConcurrentHashMap<>())
                .computeIfAbsent(trim.get(), t -> Optional.of(line + " " + t.toLowerCase(Locale.ROOT)));
    }

    /** The line of a subject; none where it stands for all lines together. */
    private static Optional<String> line(Subject subject) {
        String line = subject.facts().vehicle();
        return line.isEmpty() ? Optional.empty() : Optional.of(line);
    }

    private Term add(Term term) {
        if (term.count() > 0) {
            term.place(columns);
            columns += term.count();
            int before = termOfColumn.length;
            termOfColumn = Arrays.copyOf(termOfColumn, columns);
            Arrays.fill(termOfColumn, before, columns, terms.size());
            terms.add(term);
        }
        return term;
    }

    /** Says that a term of one column is in each row the sum of another one, which has an entry in each row. */
    private void parts(Term sum, Term parts) {
        sums.add(new Design.Sum(sum.from(), parts.from(), parts.count()));
    }

    private double age(Subject s, Measured m) {
        return m.age() - middleAge;
    }

    private double tenThousands(Subject s, Measured m) {
        return (m.miles() - middleMiles) / 10_000;
    }

    /** The mileage as slopes take it, by what a mile of such a car counts. */
    private double weighted(Subject s, Measured m) {
        return tenThousands(s, m) * m.weightOfMile();
    }

    /** By how much more a mile counts of a line than of the usual car of all listings. */
    double weightOfMile(String line) {
        return measures.weightOfMile(line);
    }

    private void lines(Term all, List<Subject> seen, List<Kind> kinds, Assumptions assumptions) {
        if (pairs.linked()) {
            parts(all, levels("how far bodies differ", "spread_bodies", Role.PRIMARY, seen, s -> Optional.of(pairs.body(s.facts())),
                    assumptions));
            levels("how far running gears differ", "spread_gears", Role.PRIMARY, seen, s -> Optional.of(pairs.gear(s.facts())),
                    assumptions);
            // Pairs are few and tell little of their spread: the stated one is the middle of its prior, not the scale.
            Terms.Levels departures = new Terms.Levels("how far a body and a running gear depart together", Group.LEVEL_OF_LINE,
                    assumptions.get("spread_pairs").middle() / HALF_NORMAL_MEDIAN, Role.PRIMARY, seen,
                    s -> Optional.of(pairs.pair(s.facts())), ONE);
            add(departures);
            pairTerm = Optional.of(departures);
        } else {
            parts(all, levels("how far lines differ", "spread_lines", Role.PRIMARY, seen, s -> Optional.of(s.facts().vehicle()),
                    assumptions));
        }
        for (Subject subject : seen) {
            if (subject.facts().trim().isPresent()) {
                unstatedTrims.put(subject.facts().vehicle(), Optional.of(subject.facts().vehicle() + " "));
            }
        }
        levels("how far trims differ", "spread_trims", Role.SECONDARY, seen,
                this::trim, assumptions);
        // A level that no row is of has the whole spread by itself; one that rows of several trims share does not say how far these differ.
        Set<String> mixed = seen.stream().filter(s -> s.facts().trim().isEmpty()).map(s -> s.facts().vehicle())
                .filter(unstatedTrims::containsKey).collect(Collectors.toSet());
        gap("how far trims differ", 1, s -> s.facts().trim().isEmpty() && mixed.contains(s.facts().vehicle()), "");
        measuredFact("power", "% per 10 % more power", Fact.POWER, Math.log(1.1), "power_slope", kinds, assumptions);
        measuredFact("cylinders", "% per cylinder", Fact.CYLINDERS, 1, "cylinder_slope", kinds, assumptions);
        measuredFact("weight", "% per 10 % more weight", Fact.WEIGHT, Math.log(1.1), "weight_slope", kinds, assumptions);
        measuredFact("all wheels driven", "%", Fact.ALL_WHEELS, 1, "all_wheels_driven", kinds, assumptions);
    }

    private Term levels(String name, String spread, Role role, List<Subject> seen, Function<Subject, Optional<String>> key,
            Assumptions assumptions) {
        return add(new Terms.Levels(name, Group.LEVEL_OF_LINE, assumptions.get(spread).middle(), role, seen, key, ONE));
    }

    /** A slope on a measured fact, where the rows differ in it; a car of which it is unknown stands at the mean, its range widened. */
    private void measuredFact(String name, String unit, Fact fact, double one, String slope, List<Kind> kinds, Assumptions assumptions) {
        double sum = 0;
        double squares = 0;
        double rows = 0;
        double first = Double.NaN;
        boolean differs = false;
        for (Kind kind : kinds) {
            OptionalDouble value = pairs.fact(fact, kind.facts());
            if (value.isPresent()) {
                first = rows == 0 ? value.getAsDouble() : first;
                differs |= Math.abs(value.getAsDouble() - first) > 1e-9;
                sum += kind.rows() * (value.getAsDouble() - first);
                squares += kind.rows() * Math.pow(value.getAsDouble() - first, 2);
                rows += kind.rows();
            }
        }
        if (differs) {
            double mean = first + sum / rows;
            add(new Terms.Measure(name, Group.LEVEL_OF_LINE, unit, 1, assumptions.logMiddle(slope), assumptions.logSpread(slope),
                    Role.PRIMARY, (s, m) -> {
                        OptionalDouble value = pairs.fact(fact, s.facts());
                        return value.isPresent() ? (value.getAsDouble() - mean) / one : 0;
                    }));
            gap(name, Math.sqrt(Math.max(0, squares / rows - Math.pow(sum / rows, 2))) / one,
                    s -> pairs.fact(fact, s.facts()).isEmpty(), name + " not stated: the average taken, range widened");
        }
    }

    private void ageAndMileage(List<Subject> seen, double[] ages, double[] miles, Assumptions assumptions) {
        int first = terms.size();
        Term age = add(new Terms.Measure("age", Group.AGE, "% per year", 1, assumptions.logMiddle("age_slope"),
                assumptions.logSpread("age_slope"), Role.PRIMARY, this::age));
        double weight = measures.weightOfMile();
        Term mileage = add(new Terms.Measure("mileage", Group.MILEAGE, TermEffect.PER_10000_MILES, 1,
                weight * assumptions.logMiddle("mileage_slope"), weight * assumptions.logSpread("mileage_slope"), Role.PRIMARY,
                this::weighted));
        parts(age, add(new Terms.Levels("how far the age slopes of lines differ", Group.AGE,
                assumptions.get("spread_line_age_slopes").middle(), Role.SECONDARY, seen, Encoder::line, this::age)));
        parts(mileage, add(new Terms.Levels("how far the mileage slopes of lines differ", Group.MILEAGE,
                weight * assumptions.get("spread_line_mileage_slopes").middle(), Role.SECONDARY, seen, Encoder::line, this::weighted)));
        add(new Terms.Curve("curve of age", Group.AGE, assumptions.get("curve_age").middle(), middleAge, 5, ages,
                (s, m) -> m.age()));
        add(new Terms.Curve("curve of mileage", Group.MILEAGE, assumptions.get("curve_mileage").middle(), middleMiles, 50_000, miles,
                (s, m) -> m.miles()));
        add(new Terms.Measure("age times mileage", Group.MILEAGE, "", 1, 0, assumptions.get("product_age_mileage").middle(),
                Role.SECONDARY, (s, m) -> age(s, m) / 5 * tenThousands(s, m) / 5));
        terms.subList(first, terms.size()).forEach(term -> term.priors().forEach(block -> ofAgeAndMileage.add(block.name())));
        group("how far model years differ", Group.AGE, assumptions.get("spread_vintage").middle(), seen, Terms::vintage);
    }

    private void time(List<Subject> seen, Assumptions assumptions) {
        if (end.isEmpty()) {
            return;
        }
        Terms.Walk months = new Terms.Walk("steps of the market from month to month", assumptions, begin.orElseThrow(), end.get());
        if (months.months() == 0) {
            return;
        }
        ToDoubleBiFunction<Subject, Measured> time = (s, m) -> s.on().isPresent() ? -months.monthsBefore(s.on().get()) : 0;
        Term drift = add(new Terms.Measure(DRIFT, Group.TIME, "% per month", 1, assumptions.logMiddle("market_drift"),
                assumptions.logSpread("market_drift"), Role.PRIMARY, time));
        add(months);
        Terms.Levels lines = new Terms.Levels("how far the drifts of lines differ", Group.TIME,
                assumptions.get("spread_line_drifts").middle(), Role.SECONDARY, seen, Encoder::line, time);
        if (lines.varied()) {
            parts(drift, add(lines));
        }
        if (hasUndated()) {
            // The market may stand anywhere on such a day that it can have moved to between the first day seen and the last.
            add(new Terms.Measure(UNDATED, Group.TIME, "%", 1, 0, months.change(Math.hypot(assumptions.logMiddle("market_drift"),
                    assumptions.logSpread("market_drift"))), Role.PRIMARY, (s, m) -> s.on().isEmpty() ? 1 : 0));
            // Days spread evenly lie about their middle, half a step from the last one, with a standard deviation of a step over root 3.
            gap(UNDATED, 1 / Math.sqrt(3), s -> s.on().isEmpty(), "");
        }
        if (stepOnOffer.length > 0) {
            add(new Terms.Measure("still on offer at the last look", Group.TIME, "%", 1, assumptions.logMiddle("still_on_offer"),
                    assumptions.logSpread("still_on_offer"), Role.PRIMARY, (s, m) -> 0));
            onOfferColumn = columns - 1;
        }
        if (monthsAfterAsk.length > 0) {
            add(new Terms.Measure("a sale stays with its ask", Group.TIME, "% per month", 1, assumptions.logMiddle("sale_stays_with_ask"),
                    assumptions.logSpread("sale_stays_with_ask"), Role.PRIMARY, (s, m) -> 0));
            afterAskColumn = columns - 1;
        }
        if (end.get().toEpochDay() - begin.get().toEpochDay() >= A_YEAR) {
            seasonal("season, winter against summer", Math.PI / 2, assumptions);
            seasonal("season, spring against autumn", 0, assumptions);
        }
    }

    /** One part of a wave through the year, zero on the last day seen, so that levels are stated as of that day. */
    private void seasonal(String name, double ahead, Assumptions assumptions) {
        double[] wave = IntStream.rangeClosed(0, 366).mapToDouble(day -> StrictMath.sin(2 * Math.PI * day / Days.PER_YEAR + ahead))
                .toArray();
        double atEnd = wave[end.orElseThrow().getDayOfYear()];
        add(new Terms.Measure(name, Group.SEASON, "", 1, 0, assumptions.get("spread_season").middle(), Role.PRIMARY,
                (s, m) -> s.on().isPresent() ? wave[s.on().get().getDayOfYear()] - atEnd : 0));
    }

    /**
     * The part of a subject's row that belongs to some groups of terms.
     *
     * @param measured its age and mileage, which need not be those of the subject's facts
     */
    SparseRow part(Set<Group> groups, Subject subject, Measured measured) {
        SparseRow.Writer row = new SparseRow.Writer();
        for (Term term : terms) {
            if (groups.contains(term.group())) {
                term.encode(subject, measured, row);
            }
        }
        return row.row();
    }

    /** The columns in which each car of a state has a 1. */
    private record InState(State state, int[] columns) {
    }

    private int[] columns(State state, Subject subject, Measured measured) {
        int place = state.hashCode() & STATES - 1;
        InState known = inStates[place];
        if (known == null || !known.state.equals(state)) {
            SparseRow.Writer row = new SparseRow.Writer();
            for (int t = firstOnState; t < endOnState; t++) {
                terms.get(t).encode(subject, measured, row);
            }
            SparseRow entries = row.row();
            known = new InState(state, IntStream.range(0, entries.size()).map(entries::index).toArray());
            inStates[place] = known;
        }
        return known.columns;
    }

    private void group(String name, Group group, double spread, List<Subject> seen, Function<Subject, Optional<String>> key) {
        Terms.Levels levels = new Terms.Levels(name, group, spread, Role.SECONDARY, seen, key, ONE);
        if (levels.varied()) {
            add(levels);
        }
    }

    /**
     * A further column: one slope on its standardised value where its cells are numbers, else a group of its words.
     *
     * @param share how much of the stated spread it is assumed to have beside the others
     */
    private void further(String column, Map<String, Integer> texts, List<Subject> seen, Assumptions assumptions, double share) {
        FurtherColumn taken = new FurtherColumn(column, texts);
        furtherTaken.add(taken.sentence());
        if (texts.isEmpty()) {
            return;
        }
        String remark = column + " not stated: the average taken, range widened";
        if (!taken.isNumbers()) {
            group(column, Group.FURTHER, share * assumptions.get("spread_further_words").middle(), seen, s -> taken.word(s.facts()));
            gap(column, 1, s -> !s.facts().further().containsKey(column), remark);
        } else if (taken.sd() > 0) {
            add(Terms.Measure.ofUnknownSize(column, Group.FURTHER, "% per unit", 1 / taken.sd(),
                    share * assumptions.get("slope_further_number").middle(), (s, m) -> taken.standardised(s.facts())));
            gap(column, 1, s -> !taken.isTold(s.facts()), remark);
        }
    }

    /** How each further column is taken, in words. */
    List<String> furtherTaken() {
        return furtherTaken;
    }

    /** Half of the step after so many days, three quarters after twice as many: nobody knows of a car just listed that nobody takes it. */
    private static float[] stepsOnOffer(EvidenceList evidence, Stock stock, Assumptions assumptions) {
        double half = assumptions.get("still_on_offer_half").middle();
        double lately = assumptions.get("still_on_offer_days").middle();
        float[] steps = new float[evidence.isWatched() ? evidence.size() : 0];
        boolean any = false;
        for (int i = 0; i < steps.length; i++) {
            if (evidence.onOffer(i) && stock.seenLately(i, lately)) {
                steps[i] = (float) (1 - StrictMath.pow(2, -stock.stood(i) / half));
                any |= steps[i] > 0;
            }
        }
        return any ? steps : new float[0];
    }

    /** A bid that missed says nothing of it: it stands with the price that it is compared with. */
    private static float[] monthsAfterAsk(EvidenceList evidence, Stock stock) {
        float[] months = new float[evidence.size()];
        boolean any = false;
        for (int i = 0; i < months.length; i++) {
            int before = evidence.bound(i) == Bound.NONE ? evidence.comparedWith(i) : -1;
            if (before >= 0) {
                months[i] = months[before] + (float) (stock.daysBetween(before, i) / Days.PER_MONTH);
                any |= months[i] != 0;
            }
        }
        for (int i = 0; i < months.length; i++) {
            int with = evidence.bound(i) == Bound.NONE ? -1 : evidence.comparedWith(i);
            months[i] = with >= 0 ? months[with] : months[i];
        }
        return any ? months : new float[0];
    }

    /** Whether the cars still on offer at the last look stand on a step of their own. */
    boolean setsOnOfferApart() {
        return onOfferColumn >= 0;
    }

    /** Whether a price is encoded with what came of its time on offer, which no value is asked for. */
    boolean isOfItsOffer(int evidence) {
        return stepOnOffer(evidence) != 0 || monthsAfterAsk(evidence) != 0;
    }

    private double stepOnOffer(int evidence) {
        return onOfferColumn >= 0 ? stepOnOffer[evidence] : 0;
    }

    private double monthsAfterAsk(int evidence) {
        return afterAskColumn >= 0 ? monthsAfterAsk[evidence] : 0;
    }

    /** The same car were it not on offer any more, or sold when it was asked for. */
    Encoded withoutItsOffer(Encoded one) {
        return new Encoded(one.row().without(onOfferColumn).without(afterAskColumn), termOfColumn, one.inflation(), one.growth(),
                one.remarks());
    }

    /** A price of the fit in the numbers of the model. */
    Encoded encode(int evidence, Subject subject) {
        return encode(subject, stepOnOffer(evidence), monthsAfterAsk(evidence));
    }

    /** Whether some prices have no date where others have one. */
    boolean hasUndated() {
        return undated > 0 && end.isPresent();
    }

    /** How many these are, and what is done with them: a sentence or two without the last full stop. */
    Optional<String> undated() {
        return hasUndated() ? Optional.of((undated == 1 ? "1 price has" : undated + " prices have") + " no date (seen_on). "
                + (walk().isEmpty() ? "All others are of one day, and these are taken to be of it too"
                : "Such prices tell what one car costs against another, but nothing of the market in time: one step, 'day not stated',"
                + " sets them apart from those of the last day")) : Optional.empty();
    }

    /** The walk of the market over months; empty where all listings are of one day or have none. */
    Optional<Terms.Walk> walk() {
        return terms.stream().filter(Terms.Walk.class::isInstance).map(Terms.Walk.class::cast).findFirst();
    }

    Encoded encode(Subject subject) {
        return encode(subject, 0, 0);
    }

    private Encoded encode(Subject subject, double stillOnOffer, double monthsAfterAsk) {
        Measured measured = measures.of(subject);
        SparseRow.Writer row = new SparseRow.Writer();
        for (int t = 0; t < firstOnState; t++) {
            terms.get(t).encode(subject, measured, row);
        }
        for (int column : columns(State.of(subject.facts()), subject, measured)) {
            row.add(column, 1);
        }
        for (int t = endOnState; t < terms.size(); t++) {
            terms.get(t).encode(subject, measured, row);
        }
        row.add(onOfferColumn, stillOnOffer);
        row.add(afterAskColumn, monthsAfterAsk);
        return new Encoded(row.row(), termOfColumn, scatter.of(subject, measured), (measured.age() - middleAge) / 10,
                measured.remarks());
    }

    /** The factor on the error scale of a subject. */
    double inflation(Subject subject) {
        return scatter.of(subject, measures.of(subject));
    }

    /** How unsure the price of a car is by what is not stated of it: a variance, square log points. */
    double open(Subject subject) {
        return scatter.open(subject, measures.of(subject));
    }

    /** What a car leaves open that is not said elsewhere. */
    List<String> leftOpen(Subject car) {
        List<String> remarks = List.of();
        for (Scatter.Gap gap : gaps) {
            if (!gap.remark().isEmpty() && gap.isOpen().test(car)) {
                remarks = Figures.joined(remarks, List.of(gap.remark()));
            }
        }
        return remarks;
    }

    /** The column that stands for the departure of every pair never seen, where the pair of a subject is one of them. */
    OptionalInt unseenPair(Subject subject) {
        return pairTerm.flatMap(t -> t.level(subject).filter(pair -> t.coefficient(pair).isEmpty()).map(pair -> t.unseen()))
                .map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    /** What is assumed of how far pairs depart, where they are taken apart. */
    Optional<PriorBlock> pairBlock() {
        return pairTerm.map(t -> t.priors().get(0));
    }

    BodiesAndGears pairs() {
        return pairs;
    }

    Measured measured(Subject subject) {
        return measures.of(subject);
    }

    /** The columns that are sums of others in the row of each listing. */
    List<Design.Sum> sums() {
        return sums;
    }

    List<Term> terms() {
        return terms;
    }

    int columns() {
        return columns;
    }

    /** For each column the number of its term. */
    int[] termOfColumn() {
        return termOfColumn;
    }

    /** The names of the blocks that say how prices go with age and distance, slopes, curves and their product. */
    List<String> ofAgeAndMileage() {
        return ofAgeAndMileage;
    }

    List<PriorBlock> priors() {
        return terms.stream().flatMap(t -> t.priors().stream()).toList();
    }

    double middleAge() {
        return middleAge;
    }

    double middleMiles() {
        return middleMiles;
    }

    /** The first day seen. */
    Optional<LocalDate> begin() {
        return begin;
    }

    /** The last day seen, from which the market's time is counted. */
    Optional<LocalDate> end() {
        return end;
    }
}
