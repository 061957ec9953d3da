package swapworth.market;

import java.util.List;
import java.util.function.Function;
import swapworth.listing.Facts;
import swapworth.statistics.Mixture;
import swapworth.statistics.Posterior;
import swapworth.statistics.PriorBlock;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * What one such car sells for: the middle and the ranges of the predictive distribution of its price, at a stated day and level of
 * trade, with how much of what is unsure is held by assumptions. Immutable.
 */
public final class FairValue implements Valuation {
    /** A model knows amounts, not what they are counted in. */
    static final String CURRENCY = "in the currency of the listings";

    private final PriceModel model;
    private final Posterior posterior;
    private final int withoutCar;
    private final Subject subject;
    private final Encoded encoded;
    private final Posterior.Belief level;
    private final Mixture predicted;
    private final double stretch;
    private final double logMedian;
    private final double median;
    private final Range range80;
    private final Range range95;
    private final int carsOfLine;
    private final int carsInFile;
    private final List<String> remarks;

    /** The value by a posterior that has not seen the car with the stated number; -1 for one that has seen all. */
    FairValue(PriceModel model, Posterior posterior, int withoutCar, Subject subject, Encoded encoded, double stretch, int carsOfLine,
            int carsInFile, List<String> remarks) {
        this.model = model;
        this.posterior = posterior;
        this.withoutCar = withoutCar;
        this.subject = subject;
        this.encoded = encoded;
        this.level = posterior.of(encoded.row());
        this.predicted = level.predict(encoded.inflation(), encoded.growth());
        this.stretch = stretch;
        this.logMedian = predicted.quantile(0.5);
        this.median = Math.exp(logMedian);
        this.range80 = rangeOf(0.80);
        this.range95 = rangeOf(0.95);
        this.carsOfLine = carsOfLine;
        this.carsInFile = carsInFile;
        this.remarks = List.copyOf(remarks);
    }

    private Range rangeOf(double probability) {
        double[] ends = predicted.range(probability);
        double low = Math.exp(stretched(ends[0]));
        double high = Math.exp(stretched(ends[1]));
        // A day or a mileage beyond all reckoning, where nothing is known.
        return low <= high ? new Range(low, high) : new Range(0, Double.POSITIVE_INFINITY);
    }

    private double stretched(double logPrice) {
        return logMedian + stretch * (logPrice - logMedian);
    }

    /**
     * What the value is for.
     *
     * @return car, day and level of trade
     */
    public Subject subject() {
        return subject;
    }

    /**
     * The median of the predicted price: half of such cars cost less.
     *
     * @return in the base currency
     */
    public double median() {
        return median;
    }

    /**
     * The range that holds the price of one such car with a stated probability, as much left out above as below.
     *
     * @param probability above 0 and below 1, for instance 0.80
     * @return in the base currency
     */
    public Range range(double probability) {
        return probability == 0.80 ? range80 : probability == 0.95 ? range95 : rangeOf(probability);
    }

    /**
     * The range of the middle price of such cars: what is unsure of the level itself, not how one car differs from another.
     *
     * @param probability above 0 and below 1, for instance 0.80
     * @return in the base currency
     */
    public Range level(double probability) {
        double[] ends = level.estimate().range(probability);
        return new Range(Math.exp(ends[0]), Math.exp(ends[1]));
    }

    /**
     * The share of such cars that cost less than an amount.
     *
     * @param amount in the base currency
     * @return in per cent, between 0 and 100; 0 where the amount is 0 or less
     * @throws IllegalArgumentException if the amount is not a number
     */
    public double percentile(double amount) {
        if (Double.isNaN(amount)) {
            throw new IllegalArgumentException("an amount that is not a number has no place among prices");
        }
        if (amount <= 0) {
            return 0;
        }
        if (Double.isInfinite(amount)) {
            return 100;
        }
        return 100 * predicted.cumulative(logMedian + (Math.log(amount) - logMedian) / stretch);
    }

    /**
     * How much of what is unsure about the level of such cars is held by assumptions and not by listings: 0 where the listings decide,
     * 1 where nothing but assumptions speak. Every common spread of a group counts as an assumption.
     *
     * @return between 0 and 1
     */
    public double priorShare() {
        return level.priorShare();
    }

    /**
     * The assumption that holds the largest part of {@link #priorShare()}.
     *
     * @return its name and its part
     */
    public HeldBy largestAssumption() {
        return HeldBy.largest(model.blocks(), posterior.priorShares(encoded.row()));
    }

    /**
     * A part of an answer and what holds it.
     *
     * @param assumption name of the assumption
     * @param share its part, between 0 and 1
     */
    public record HeldBy(String assumption, double share) {

        static HeldBy largest(List<PriorBlock> blocks, double[] shares) {
            int largest = 0;
            for (int b = 1; b < shares.length; b++) {
                largest = shares[b] > shares[largest] ? b : largest;
            }
            return new HeldBy(blocks.get(largest).name(), shares[largest]);
        }
    }

    /**
     * The share of the variance of the price that is how one car differs from another of the same description, which no further
     * listing can narrow.
     *
     * @return between 0 and 1
     */
    public double shareOfSingleCar() {
        double whole = predicted.sd() * predicted.sd();
        return Math.max(0, Math.min(1, 1 - level.variance() / whole));
    }

    /** Whether further listings would narrow the range little. */
    boolean isAsNarrowAsItGets() {
        return shareOfSingleCar() > 0.8;
    }

    /**
     * What would narrow the range most.
     *
     * @return one sentence
     */
    public String narrowedBy() {
        if (isAsNarrowAsItGets()) {
            return "further listings would narrow this range little: most of it is how one such car differs from another";
        }
        HeldBy held = largestAssumption();
        String what = held.assumption();
        return what.startsWith("how far trims") && subject.facts().trim().isEmpty() ? "to know its trim would narrow this range most"
                : what.startsWith("how far trims") ? "more listings of the same trim would narrow this range most"
                : what.equals("region") && subject.facts().region().isEmpty() ? "to know its region would narrow this range most"
                        : what.startsWith("how far a body and a running gear")
                        ? "prices of cars with this body and this running gear would narrow it"
                : what.startsWith("how far bodies") || what.startsWith("how far running gears")
                        ? "more lines that share a body or a running gear would narrow this range most"
                : what.startsWith("how far lines") ? "more listings of this line would narrow this range most"
                : what.contains("slopes of lines") ? "more listings of this line, further apart in age and mileage, would narrow it most"
                        : what.startsWith("level of trade")
                        ? "prices at this level of trade, best beside the asks of the same cars, would narrow it"
                : what.startsWith("steps of the market") || what.startsWith("drift") ? "listings nearer to this day would narrow it most"
                : what.endsWith("mileage") ? "listings that differ more in mileage would narrow this range most"
                : what.equals("age") || what.equals("curve of age") || what.startsWith("how far model years")
                        ? "listings that differ more in age would narrow this range most"
                : what.startsWith("still on offer") ? "to look again which cars are still on offer would narrow this range most"
                : model.hasBoundsOnly() ? "sales or asking prices would narrow this range most: a bid that was not met only says what is "
                        + "too little"
                : what.equals(TimeTerms.UNDATED) ? "to know its date would narrow this range most"
                : what.startsWith("level of all") ? "more listings of any line would narrow this range most"
                : "more listings that tell of '" + what + "' would narrow this range most";
    }

    /**
     * The other cars of the same line behind the value.
     *
     * @return a number of cars, not of rows
     */
    public int carsOfLine() {
        return carsOfLine;
    }

    /**
     * All other cars behind the value.
     *
     * @return a number of cars, not of rows
     */
    public int carsInFile() {
        return carsInFile;
    }

    /**
     * What a reader must know of the value: what was filled in, what lies outside the listings.
     *
     * @return sentences
     */
    public List<String> remarks() {
        return remarks;
    }

    /**
     * The cars whose difference from this one is least unsure, each adjusted toward it line by line.
     *
     * @return the grid
     */
    public Comparables comparables() {
        return model.comparables(this);
    }

    @Override
    public <T> T match(Function<FairValue, T> value, Function<CannotTell, T> cannotTell) {
        return value.apply(this);
    }

    /**
     * The value with its ranges and what they rest on.
     *
     * @return one row a figure, in the base currency; what a reader must know of it stands above the rows
     */
    public Table table() {
        Facts car = subject.facts();
        Table.Builder table = Table.titled(car.words() + car.mileage().map(m -> ", " + m.words()).orElse("") + ": "
                + subject.level().words() + subject.on().map(day -> " on " + day).orElse(" on no known day") + ", " + CURRENCY)
                .columns(Column.words("figure"), Column.number("found", ""), Column.sentences("what it says"));
        remarks.forEach(r -> table.note(Figures.capital(r) + "."));
        return held(ranges(table));
    }

    /** The first rows of a table of it. */
    Table.Builder ranges(Table.Builder table) {
        String other = withoutCar >= 0 ? " other" : "";
        String own = withoutCar >= 0 ? ", its own car left out" : "";
        return table.row(Cell.words("fair value"), Figures.money(median), Cell.words("half of such cars cost less; by " + carsOfLine + other
                        + (carsOfLine == 1 ? " car" : " cars") + " of the line and " + carsInFile + " in all" + own))
                .row(Cell.words("80 % range"), Cell.words(Figures.range(range80)), Cell.words("holds the price of one such car eight times"
                        + " in ten"))
                .row(Cell.words("95 % range"), Cell.words(Figures.range(range95)), Cell.words("holds the price of one such car nineteen"
                        + " times in twenty"));
    }

    /** The last row of a table of it: what assumptions hold. */
    Table held(Table.Builder table) {
        HeldBy most = largestAssumption();
        return table.row(Cell.words("held by assumptions"), Figures.share(priorShare()), Cell.words("of what is unsure about the level of"
                + " such cars; most by '" + most.assumption() + "', " + Math.round(100 * most.share()) + " %")).build();
    }

    /** The value on one line, with what must stand beside it. */
    @Override
    public String toString() {
        return Cell.format(median, 0) + ", 80 % range " + Cell.format(range80.low(), 0) + " to " + Cell.format(range80.high(), 0) + ", "
                + subject.level().words() + " " + subject.on().map(day -> "on " + day).orElse("on no known day") + ", by " + carsOfLine
                + (carsOfLine == 1 ? " car" : " cars") + " of the line '" + subject.facts().vehicle() + "' and " + carsInFile + " in all";
    }

    Posterior posterior() {
        return posterior;
    }

    int withoutCar() {
        return withoutCar;
    }

    Encoded encoded() {
        return encoded;
    }

}
