package swapworth.market;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import swapworth.assumptions.Assumptions;
import swapworth.listing.LevelOfTrade;
import swapworth.market.Measures.Measured;
import swapworth.statistics.Design;
import swapworth.statistics.PriorBlock;
import swapworth.statistics.PriorBlock.Role;
import swapworth.statistics.Quantiles;
import swapworth.statistics.SparseRow;

/** Turns subjects into rows of numbers: which terms there are, in which columns, and what is assumed of them. */
final class Encoder {
    /** So many states of cars are remembered with the columns that they have. */
    private static final int STATES = 1 << 10;

    private final ModelTerms made;
    private final List<Term> terms;
    /** The terms on the state of a car stand together: the first, and the one behind the last. */
    private final int firstOnState;
    private final int endOnState;
    /** What these terms made of states seen lately. Several threads may ask; at worst a thing is found twice. */
    private final @Nullable InState[] inStates = new InState[STATES];
    private final Map<String, LineExtent> extents;
    private final Set<LevelOfTrade> levels;
    private final List<String> furtherTaken = new ArrayList<>();
    private final NamesSeen names;
    private final Measures measures;
    private final LineTerms lines;
    private final OfferTime offer;
    /** As assumed, until the fit has told it. */
    private volatile Scatter scatter;
    private final double middleAge;
    private final double middleMiles;
    private final Optional<LocalDate> begin;
    private final Optional<LocalDate> end;
    private final int undated;
    private final List<String> ofAgeAndMileage;

    Encoder(EvidenceList evidence, Stock stock, Assumptions assumptions, List<String> further) {
        this.begin = stock.begin();
        this.end = stock.end();
        this.undated = stock.undated();
        this.levels = stock.levels();
        this.measures = new Measures(stock, assumptions);
        MeasuredRows rows = MeasuredRows.of(evidence, stock, measures);
        this.extents = rows.extents();
        double[] middles = Stream.of(rows.ages(), rows.miles(), evidence.logPrices()).parallel()
                .mapToDouble(values -> Quantiles.ofPartlyOrdered(values, 0.5)).toArray();
        this.middleAge = middles[0];
        this.middleMiles = middles[1];
        this.names = new NamesSeen(stock.examples());
        this.offer = new OfferTime(evidence, stock, assumptions);
        this.made = new ModelTerms(stock.examples(), assumptions);
        this.terms = made.all();
        Term all = made.add(new Terms.Measure("level of all cars", Group.LEVEL_OF_LINE, "", new Terms.Prior(middles[2], 2, Role.PRIMARY),
                ModelTerms.ONE));
        this.lines = new LineTerms(made, all, stock.kinds());
        this.ofAgeAndMileage = new AgeTerms(middleAge, middleMiles).addTo(made, measures.weightOfMile(), rows.ages(), rows.miles());
        TimeTerms.addTo(made, stock, offer);
        StepTerms steps = new StepTerms(assumptions);
        steps.trade().forEach(made::add);
        this.firstOnState = terms.size();
        steps.ofState().forEach(made::add);
        this.endOnState = terms.size();
        made.group("region", Group.REGION, made.assumed("spread_regions"), LevelWords::region);
        if (made.seen().stream().map(s -> s.facts().region().isPresent()).distinct().count() == 2) {
            made.gap("region", 1, s -> s.facts().region().isEmpty(), "");
        }
        // Many columns cannot all count much: together they are assumed to tell no more than so many would.
        double full = made.assumed("further_columns_full");
        double share = Math.sqrt(Math.min(1, full / further.stream().filter(c -> !stock.texts(c).isEmpty()).count()));
        for (String column : further) {
            further(column, stock.texts(column), share);
        }
        this.scatter = Scatter.assumed(assumptions, made.gaps(), priors());
    }

    Scatter scatter() {
        return scatter;
    }

    /** From now on factors on the error scale are as the fit has told them. Called while the model is being fitted. */
    void scatterAs(Scatter found) {
        scatter = found;
    }

    /** How many cars of each line have prices. */
    Map<String, Integer> carsOfLine() {
        Map<String, Integer> cars = new HashMap<>();
        extents.forEach((line, extent) -> cars.put(line, extent.cars()));
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

    /** By how much more a mile counts of a line than of the usual car of all listings. */
    double weightOfMile(String line) {
        return measures.weightOfMile(line);
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

    /**
     * A further column: one slope on its standardised value where its cells are numbers, else a group of its words.
     *
     * @param share how much of the stated spread it is assumed to have beside the others
     */
    private void further(String column, Map<String, Integer> texts, double share) {
        FurtherColumn taken = new FurtherColumn(column, texts);
        furtherTaken.add(taken.sentence());
        if (texts.isEmpty()) {
            return;
        }
        String remark = column + " not stated: the average taken, range widened";
        if (!taken.isNumbers()) {
            made.group(column, Group.FURTHER, share * made.assumed("spread_further_words"), s -> taken.word(s.facts()));
            made.gap(column, 1, s -> !s.facts().further().containsKey(column), remark);
        } else if (taken.sd() > 0) {
            made.add(Terms.Measure.ofUnknownSize(column, Group.FURTHER, "% per unit", 1 / taken.sd(),
                    share * made.assumed("slope_further_number"), (s, m) -> taken.standardised(s.facts())));
            made.gap(column, 1, s -> !taken.isTold(s.facts()), remark);
        }
    }

    /** How each further column is taken, in words. */
    List<String> furtherTaken() {
        return furtherTaken;
    }

    /** Whether the cars still on offer at the last look stand on a step of their own. */
    boolean setsOnOfferApart() {
        return offer.setsOnOfferApart();
    }

    /** Whether a price is encoded with what came of its time on offer, which no value is asked for. */
    boolean isOfItsOffer(int evidence) {
        return offer.tellsOf(evidence);
    }

    /** The same car were it not on offer any more, or sold when it was asked for. */
    Encoded withoutItsOffer(Encoded one) {
        return new Encoded(offer.without(one.row()), termOfColumn(), one.inflation(), one.growth(), one.remarks());
    }

    /** A price of the fit in the numbers of the model. */
    Encoded encode(int evidence, Subject subject) {
        Measured measured = measures.of(subject);
        SparseRow.Writer row = written(subject, measured);
        offer.encode(evidence, row);
        return encoded(row, subject, measured);
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
        Measured measured = measures.of(subject);
        return encoded(written(subject, measured), subject, measured);
    }

    private SparseRow.Writer written(Subject subject, Measured measured) {
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
        return row;
    }

    private Encoded encoded(SparseRow.Writer row, Subject subject, Measured measured) {
        return new Encoded(row.row(), termOfColumn(), scatter.of(subject, measured), (measured.age() - middleAge) / 10,
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
        for (Scatter.Gap gap : made.gaps()) {
            if (!gap.remark().isEmpty() && gap.isOpen().test(car)) {
                remarks = Figures.joined(remarks, List.of(gap.remark()));
            }
        }
        return remarks;
    }

    /** The column that stands for the departure of every pair never seen, where the pair of a subject is one of them. */
    OptionalInt unseenPair(Subject subject) {
        return lines.unseenPair(subject);
    }

    /** What is assumed of how far pairs depart, where they are taken apart. */
    Optional<PriorBlock> pairBlock() {
        return lines.pairBlock();
    }

    BodiesAndGears pairs() {
        return lines.pairs();
    }

    Measured measured(Subject subject) {
        return measures.of(subject);
    }

    /** The columns that are sums of others in the row of each listing. */
    List<Design.Sum> sums() {
        return made.sums();
    }

    List<Term> terms() {
        return terms;
    }

    int columns() {
        return made.columns();
    }

    /** For each column the number of its term. */
    int[] termOfColumn() {
        return made.termOfColumn();
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
