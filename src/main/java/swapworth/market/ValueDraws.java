package swapworth.market;

import java.util.OptionalInt;
import swapworth.statistics.Draws;
import swapworth.statistics.JointDraws;
import swapworth.statistics.Quantiles;
import swapworth.statistics.SparseRow;

/**
 * Joint draws from a fitted model: draw i of every car's value belongs to the same state of the market, so that values are added,
 * compared and carried on draw by draw. Ranges of single values cannot be put together in any other way, for they share listings and
 * assumptions.
 *
 * <p>They answer for every subject, also where {@link PriceModel#value} says that it cannot tell: of a line that the collection does not
 * hold the assumptions alone speak then. Who shows such an amount asks for the value first.
 */
public final class ValueDraws {
    private final Encoder encoder;
    private final JointDraws draws;
    private final Values values;

    ValueDraws(Encoder encoder, JointDraws draws, Values values) {
        this.encoder = encoder;
        this.draws = draws;
        this.values = values;
    }

    /**
     * The number of draws, m.
     *
     * @return at least 1
     */
    public int count() {
        return draws.count();
    }

    /**
     * Draws of the middle price of such cars.
     *
     * @param subject the car, the day and the level of trade
     * @return m amounts in the base currency
     */
    public double[] level(Subject subject) {
        return amounts(draws.of(encoder.encode(encoder.names().of(subject)).row()));
    }

    /**
     * Draws of the middle price of such cars where the pair of body and running gear was never seen and is not that of another unseen
     * pair asked for by {@link #level}: its departure is drawn anew. For a pair that was seen they are those of {@link #level}.
     *
     * @param subject the car, the day and the level of trade
     * @param seed seed of the departures: another one for another pair
     * @return m amounts in the base currency
     */
    public double[] levelOfAnotherPair(Subject subject, long seed) {
        Subject asked = encoder.names().of(subject);
        Encoded row = encoder.encode(asked);
        double[] logs = draws.of(row.row());
        OptionalInt unseen = encoder.unseenPair(asked);
        if (unseen.isPresent()) {
            double[] departure = draws.of(SparseRow.of(new int[] {unseen.getAsInt()}, new double[] {1}));
            double[] another = Draws.shuffled(departure, seed);
            for (int i = 0; i < logs.length; i++) {
                logs[i] += another[i] - departure[i];
            }
        }
        return amounts(logs);
    }

    /**
     * Draws of the price of one such car, each with its own departure from the middle: the level of draw i is that of {@link #level}, and
     * departures go as far as makes the range of all that of {@link FairValue#range}, which is stretched where single prices ask it.
     *
     * @param subject the car, the day and the level of trade
     * @param seed seed of the departures: another one for another car
     * @return m amounts in the base currency
     */
    public double[] price(Subject subject, long seed) {
        Subject asked = encoder.names().of(subject);
        Encoded row = encoder.encode(asked);
        double[] logs = draws.responses(row.row(), row.inflation(), row.growth(), seed);
        double stretch = values.stretch(asked);
        if (stretch != 1) {
            double[] level = draws.of(row.row());
            double[] own = new double[logs.length];
            for (int i = 0; i < own.length; i++) {
                own[i] = logs[i] - level[i];
            }
            double further = furtherApart(level, own, stretch);
            for (int i = 0; i < logs.length; i++) {
                logs[i] = level[i] + further * own[i];
            }
        }
        return amounts(logs);
    }

    /** By how much departures from the level have to grow for the two together to be as much wider; the level stays as it is. */
    private static double furtherApart(double[] level, double[] own, double stretch) {
        double ofLevel = spread(level);
        double ofOwn = spread(own);
        double ofBoth = stretch * stretch * (ofLevel * ofLevel + ofOwn * ofOwn);
        return ofOwn > 0 ? Math.sqrt(Math.max(0, ofBoth - ofLevel * ofLevel)) / ofOwn : 1;
    }

    private static double spread(double[] draws) {
        return Quantiles.of(draws, 0.9) - Quantiles.of(draws, 0.1);
    }

    /**
     * What one car loses by growing older at the same mileage, the market standing still: 0.95 where it loses 5 %.
     *
     * @param subject the car as it is now; where nobody states its age it is taken to be of the age that its mileage tells, else of middle
     *     age
     * @param years by how much it grows older; below 0, by how much it was younger
     * @return m factors
     * @throws IllegalArgumentException if the years are not a finite number
     */
    public double[] ageing(Subject subject, double years) {
        if (!Double.isFinite(years)) {
            throw new IllegalArgumentException("a car grows older by a finite number of years, not by " + years);
        }
        Subject asked = encoder.names().of(subject);
        Measures.Measured now = encoder.measured(asked);
        return amounts(draws.of(aged(asked, now.age() + years, now.miles()).plus(-1, aged(asked, now.age(), now.miles()))));
    }

    private SparseRow aged(Subject subject, double age, double miles) {
        return encoder.part(TimeContrast.AGEING, subject, Measures.Measured.stated(age, miles));
    }

    boolean areOf(Encoder of) {
        return of == encoder;
    }

    /** The draws themselves, for rows of that encoder. */
    JointDraws joint(Encoder of) {
        if (!areOf(of)) {
            throw new IllegalArgumentException("these draws are of another model");
        }
        return draws;
    }

    private static double[] amounts(double[] logs) {
        for (int i = 0; i < logs.length; i++) {
            logs[i] = StrictMath.exp(logs[i]);
        }
        return logs;
    }

    /** How many draws there are. */
    @Override
    public String toString() {
        return count() + " joint draws of the price model";
    }
}
