package swapworth.market;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.assumptions.Assumptions;
import swapworth.statistics.Posterior;
import swapworth.table.Cell;

/** What cars are worth by a fitted model, or why it cannot tell. */
final class Values {
    /**
     * An 80 % range whose upper end is more than this many times its lower end says too little to judge by. The less is refused the better:
     * it is refused by how far prices seem to scatter, so that of wild lines those values are left whose ranges came out too narrow.
     */
    private static final double WIDEST = 12;
    /** Beyond so many times nobody asks how many. */
    private static final double MOST_TIMES = 1000;

    private final PriceModel model;
    private final Assumptions assumptions;
    private final Encoder encoder;
    private final Stretches stretches;
    private final Map<String, Integer> carsOfLine;
    private final int cars;

    Values(PriceModel model, Encoder encoder, Stretches stretches, Map<String, Integer> carsOfLine) {
        this.model = model;
        this.assumptions = model.assumptions();
        this.encoder = encoder;
        this.stretches = stretches;
        this.carsOfLine = carsOfLine;
        this.cars = model.cars().size();
    }

    /**
     * What a car is worth.
     *
     * @param row the subject in the numbers of the model
     * @param by what is believed
     * @param withoutCar the number of the car that this was not to know; -1 for none
     * @param outside where the subject lies outside what the model has seen
     */
    Valuation of(Subject subject, Encoded row, Posterior by, int withoutCar, List<String> outside) {
        String line = subject.facts().vehicle();
        int itself = withoutCar >= 0 ? 1 : 0;
        int ofLine = carsOfLine.getOrDefault(line, 0) - itself;
        int inFile = cars - itself;
        PairStanding pair = encoder.pairs().standing(subject.facts(), itself);
        if (pair == PairStanding.APART) {
            return ofLine <= 0
                    ? new CannotTell("no other car of the line '" + line + "' is in the files"
                            + encoder.names().meant(line).map(near -> " (did you mean " + near + "?)").orElse(""), 0, inFile,
                            "listings of this line")
                    : new CannotTell("no car in the files has this body with this running gear, and nothing links the two", ofLine,
                            inFile, "listings that share this body or this running gear, or power_kw and cylinders of three gears");
        }
        if (subject.facts().mileage().isEmpty() && !encoder.measured(subject).isAgeStated()) {
            return new CannotTell("neither age nor mileage of the car is known", ofLine, inFile, "its model year, or its mileage");
        }
        List<String> open = Figures.joined(row.remarks(), encoder.leftOpen(subject));
        List<String> remarks = Figures.joined(open, pair == PairStanding.SEEN ? outside
                : Figures.joined(List.of(unseen(subject, pair)), outside));
        if (subject.on().isEmpty() && encoder.hasUndated()) {
            remarks = Figures.joined(remarks, List.of("no date: valued on no known day, by the step of the prices without one"));
        }
        double factor = stretch(subject, pair);
        FairValue value = new FairValue(model, by, withoutCar, subject, row, factor, ofLine, inFile, remarks);
        Range range = value.range(0.80);
        double times = range.high() / range.low();
        if (!(times <= WIDEST)) {
            return new CannotTell("the 80 % range is too wide to say anything: its upper end is "
                    + (times < MOST_TIMES ? Cell.format(times, 1) : "more than " + Cell.format(MOST_TIMES, 0))
                    + " times its lower end", ofLine, inFile, value.narrowedBy());
        }
        return value;
    }

    /** By how much the range of a price is stretched; the car is one that nobody has seen. */
    double stretch(Subject subject) {
        return stretch(subject, encoder.pairs().standing(subject.facts()));
    }

    private double stretch(Subject subject, PairStanding pair) {
        return exchangeable(subject, pair) ? stretches.of(subject.facts()) : 1;
    }

    /** Whether a subject is one like those whose left-out residuals the ranges are stretched by. */
    private boolean exchangeable(Subject subject, PairStanding pair) {
        return pair == PairStanding.SEEN && encoder.levels().contains(subject.level())
                && (subject.on().isEmpty() || encoder.end().isEmpty() || !subject.on().get().isAfter(encoder.end().get()));
    }

    private String unseen(Subject subject, PairStanding pair) {
        String assumed = " is an assumption (spread_pairs, " + assumptions.get("spread_pairs").middle() + " log points)";
        if (encoder.pairs().areInAnotherLine(subject.facts())) {
            return "this body with this running gear is in the files as another line alone: how far one of this line departs from those"
                    + assumed;
        }
        return "no other car in the files has this body with this running gear: "
                + (pair == PairStanding.LINKED ? "the two are valued by cars that have the one or the other"
                        : "the running gear is valued by its measured facts alone")
                + ", and how far they depart together" + assumed;
    }

    /** Where a subject lies outside what the model has seen of its line. */
    List<String> outside(Subject subject) {
        List<String> remarks = new ArrayList<>();
        Optional<LineExtent> extent = encoder.extentOf(subject.facts().vehicle());
        if (extent.isEmpty()) {
            return remarks;
        }
        Measures.Measured m = encoder.measured(subject);
        if (extent.get().isOutsideAges(m)) {
            remarks.add("its age lies outside the ages seen of this line: the value is carried on beyond them");
        }
        if (extent.get().isOutsideMiles(m)) {
            remarks.add("its mileage lies outside the mileages seen of this line: the value is carried on beyond them");
        }
        if (subject.on().isPresent() && encoder.begin().isPresent() && encoder.end().isPresent()) {
            LocalDate day = subject.on().get();
            if (day.isBefore(encoder.begin().get())) {
                remarks.add("valued before " + encoder.begin().get() + ", the first day of the prices that count (of each car the last):"
                        + " the market's drift is carried back");
            }
            if (day.isAfter(encoder.end().get())) {
                remarks.add("valued after the last day seen, " + encoder.end().get() + ": the market's drift is carried on");
            }
        }
        return remarks;
    }
}
