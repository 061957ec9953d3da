package swapworth.market;

import java.time.LocalDate;
import java.util.Optional;
import swapworth.listing.CarFacts;
import swapworth.listing.Days;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.statistics.Posterior;
import swapworth.statistics.RandomNumbers;
import swapworth.statistics.SparseRow;

/**
 * Where the level of the market may go over the coming 1 to 12 months: joint draws from the fitted walk and drift. The drift is drawn
 * toward zero by its prior, and what no listing can tell, the months to come, makes the ranges wide. As far as the dates of the listings
 * may tell nothing, draws are of a market of which only the assumption speaks.
 *
 * <p>Draw i belongs to the same state of the market as draw i of the {@link ValueDraws} asked, whichever line and however many months:
 * the moves to come are the same for all lines but for the lines' own departures of drift, and one month's draw goes on from the month
 * before.
 */
public final class Outlook {
    /** An outlook needs prices over so many months, counted by days. */
    public static final int LEAST_MONTHS = 6;
    /** An outlook needs so many cars with a date. */
    public static final int LEAST_CARS = 30;
    /** An outlook needs so many cars where no month counts for more than five, from which on a month is seen and not thin. */
    public static final int LEAST_CARS_SPREAD = 20;
    /** An outlook reaches so many months ahead. */
    public static final int MOST_AHEAD = 12;

    private final Encoder encoder;
    private final Terms.Walk walk;
    private final long seed;
    private final Posterior posterior;
    private final double datesTellNothing;
    private final double weightOfAssumption;

    /** Of a model whose prices are of several months. */
    Outlook(Encoder encoder, long seed, Posterior posterior, double datesTellNothing) {
        this.encoder = encoder;
        this.walk = encoder.walk().orElseThrow();
        this.seed = seed;
        this.posterior = posterior;
        this.datesTellNothing = datesTellNothing;
        this.weightOfAssumption = datesTellNothing + (1 - datesTellNothing) * weightWhereDatesTell();
    }

    /**
     * How far the level to be expected in a year follows when another drift is assumed: its covariance with the drift, of what was unsure
     * of the drift before.
     */
    private double weightWhereDatesTell() {
        SparseRow drift = TimeContrast.on(day(MOST_AHEAD), encoder, TimeContrast.TREND, "")
                .plus(-1, TimeContrast.on(day(0), encoder, TimeContrast.TREND, ""));
        SparseRow expected = drift.plus(wearsOff(MOST_AHEAD), lastStep());
        double covariance = (posterior.variance(expected.plus(1, drift)) - posterior.variance(expected.plus(-1, drift))) / 4;
        return Math.max(0, Math.min(1, covariance / posterior.priorVariance(drift)));
    }

    /** How far the walk still goes on from its last step, in such steps. */
    private double wearsOff(int months) {
        return walk.correlation() * (1 - Math.pow(walk.correlation(), months)) / (1 - walk.correlation());
    }

    private SparseRow lastStep() {
        return SparseRow.of(new int[] {walk.from() + walk.count() - 1}, new double[] {-1});
    }

    /**
     * How far this outlook, a year ahead, is the assumption of the drift (market_drift) and not the listings: by so much of itself it
     * follows when another drift is assumed. The moves to come beyond drift and last month's move are assumed altogether.
     *
     * @return 0 where the listings alone speak, 1 where they say nothing
     */
    public double weightOfAssumption() {
        return weightOfAssumption;
    }

    /**
     * Whether the assumption weighs as much as the listings or more.
     *
     * @return true from a weight of one half on
     */
    public boolean isMostlyAssumed() {
        return weightOfAssumption >= 0.5;
    }

    /** How far it reaches. */
    @Override
    public String toString() {
        return "outlook of the market, 1 to " + MOST_AHEAD + " months ahead";
    }

    /**
     * The level for one line after so many months, relative to the last day seen, for cars of the same age: 0.93 where it stands 7 %
     * lower. Ageing is not in it; the season is where the listings span a year.
     *
     * @param draws joint draws from the model that this is the outlook of
     * @param line a line of the model, or the empty text for all lines together; another line stands like one never seen
     * @param months months ahead, 1 to {@link #MOST_AHEAD}
     * @return one factor a draw, in the order of the draws
     * @throws IllegalArgumentException if the months lie outside, or the draws are of another model
     */
    public double[] factors(ValueDraws draws, String line, int months) {
        if (months < 1 || months > MOST_AHEAD) {
            throw new IllegalArgumentException("an outlook reaches 1 to " + MOST_AHEAD + " months ahead, not " + months);
        }
        double[] logs = logs(draws, line, months);
        for (int i = 0; i < logs.length; i++) {
            logs[i] = StrictMath.exp(logs[i]);
        }
        return logs;
    }

    /** How the logarithm of the level moves: in the draws in which the dates tell nothing by what is assumed of any market. */
    private double[] logs(ValueDraws draws, String line, int months) {
        SparseRow drift = at(line, months).plus(-1, at(line, 0));
        double[] logs = draws.joint(encoder).of(drift);
        double[] steps = steps(draws, months);
        double[] last = draws.joint(encoder).of(lastStep());
        double wearsOff = wearsOff(months);
        double assumed = posterior.priorMean(drift);
        double spread = Math.sqrt(posterior.priorVariance(drift));
        double spreadOfStep = Math.sqrt(posterior.priorVariance(lastStep()));
        RandomNumbers random = RandomNumbers.of(seed, "dates that tell nothing");
        for (int i = 0; i < logs.length; i++) {
            boolean tellsNothing = random.uniform() < datesTellNothing;
            double anyDrift = assumed + spread * random.normal();
            double anyStep = spreadOfStep * random.normal();
            logs[i] = steps[i] + (tellsNothing ? anyDrift + wearsOff * (anyStep - last[i]) : logs[i]);
        }
        return logs;
    }

    /**
     * What one car loses by growing older by so many months, at the same mileage: 0.95 where it loses 5 %. The movement of the market is
     * not in it: the two together, draw by draw, are that of cars of one model year.
     *
     * @param draws joint draws from the model that this is the outlook of
     * @param facts the car; where its model year is not stated it is taken to be of the age that its mileage tells, else of middle age
     * @param months months ahead, 0 to {@link #MOST_AHEAD}
     * @return one factor a draw, in the order of the draws
     * @throws IllegalArgumentException if the months lie outside, or the draws are of another model
     */
    public double[] ageing(ValueDraws draws, CarFacts facts, int months) {
        if (months < 0 || months > MOST_AHEAD) {
            throw new IllegalArgumentException("ageing is told for 0 to " + MOST_AHEAD + " months ahead, not " + months);
        }
        draws.joint(encoder);
        return draws.ageing(new Subject(facts, LevelOfTrade.PRIVATE_ASKING, PriceIncludes.NEITHER, Optional.of(day(0))), months / 12.0);
    }

    /**
     * The middle price of a car, so many months after the last day seen: the level to come and the car's own ageing, its mileage as the
     * subject states it.
     *
     * @param draws joint draws from the model that this is the outlook of
     * @param subject the car and the level of trade; its day does not count
     * @param months months ahead, 0 to {@link #MOST_AHEAD}
     * @return one amount a draw in the base currency, in the order of the draws
     * @throws IllegalArgumentException if the months lie outside, or the draws are of another model
     */
    public double[] levels(ValueDraws draws, Subject subject, int months) {
        if (months < 0 || months > MOST_AHEAD) {
            throw new IllegalArgumentException("a price to come is 0 to " + MOST_AHEAD + " months ahead, not " + months);
        }
        double[] levels = draws.level(on(subject, 0));
        if (months > 0) {
            double[] logs = logs(draws, subject.facts().vehicle(), months);
            double[] ageing = draws.ageing(on(subject, 0), months / 12.0);
            for (int i = 0; i < levels.length; i++) {
                levels[i] *= ageing[i] * StrictMath.exp(logs[i]);
            }
        }
        return levels;
    }

    private Subject on(Subject subject, int months) {
        return new Subject(subject.facts(), subject.level(), subject.includes(), Optional.of(day(months)));
    }

    private LocalDate day(int months) {
        return encoder.end().orElseThrow().plusDays(Math.round(months * Days.PER_MONTH));
    }

    private SparseRow at(String line, int months) {
        return TimeContrast.on(day(months), encoder, TimeContrast.LEVEL, encoder.names().line(line));
    }

    /** The moves of the walk to come, beyond the drift: they go on from the last month's. */
    private double[] steps(ValueDraws draws, int months) {
        return draws.joint(encoder).onward(lastStep(), walk.sd(), walk.correlation(), months, seed);
    }
}
