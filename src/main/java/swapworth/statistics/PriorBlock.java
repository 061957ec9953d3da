package swapworth.statistics;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;

/**
 * What is assumed of some neighbouring coefficients before the rows speak.
 *
 * @param name the name under which its share of an answer is reported
 * @param from the first coefficient, from 0
 * @param kind how its coefficients are held
 * @param role whether the common scale of the secondary spreads applies
 * @param mean one prior mean a coefficient
 * @param spread for {@link Kind#STATED} one standard deviation a coefficient; for {@link Kind#COMMON}, {@link Kind#COMMON_AND_UNSEEN}
 *     and {@link Kind#WALK} one number, the scale of the half-normal prior of the common spread, infinite where nothing is assumed of
 *     it; for {@link Kind#STATED_WALK} one number, the standard deviation of a step; for {@link Kind#TREND_WALK} three, the middle of the
 *     ln-normal prior of the standard deviation of a step, the spread of its logarithm, and the correlation of neighbouring steps; for
 *     {@link Kind#FLAT} empty
 */
public record PriorBlock(String name, int from, Kind kind, Role role, double[] mean, double[] spread) {

    /** How the coefficients of a block are held. */
    public enum Kind {
        /** Not at all: any value is as likely as any other. */
        FLAT,
        /** Each is normal about its mean with a stated standard deviation. */
        STATED,
        /** All are normal about their means with one common standard deviation, which the rows help to find. */
        COMMON,
        /**
         * As {@link #COMMON}, and the last coefficient, which no row has, stands for every level not seen: what is unsure of the
         * common standard deviation itself makes its own wider.
         */
        COMMON_AND_UNSEEN,
        /** A random walk: each differs from the next, and the last from zero, by a normal step with one common standard deviation. */
        WALK,
        /** A random walk whose steps have a stated standard deviation. */
        STATED_WALK,
        /**
         * A walk that tends to go on as it went: neighbouring steps have a stated correlation, and their common standard deviation, with
         * a ln-normal prior, is averaged over as the other hyperparameters are.
         */
        TREND_WALK
    }

    /** Whether a block belongs to the main lines of the model or to its finer departures. */
    public enum Role {
        /** Its spread stands as it is. */
        PRIMARY,
        /** Its spread is multiplied by the common scale of the secondary spreads. */
        SECONDARY
    }

    /** Copies the arrays in and checks that they fit together. */
    public PriorBlock {
        requireNonNull(name, "name");
        requireNonNull(kind, "kind");
        requireNonNull(role, "role");
        mean = mean.clone();
        spread = spread.clone();
        int needed = switch (kind) {
            case FLAT -> 0;
            case STATED -> mean.length;
            case TREND_WALK -> 3;
            case COMMON, COMMON_AND_UNSEEN, WALK, STATED_WALK -> 1;
        };
        if (spread.length != needed) {
            throw new IllegalArgumentException("the block '" + name + "' needs " + needed + " spreads, not " + spread.length);
        }
        for (double s : spread) {
            if (!(s > 0)) {
                throw new IllegalArgumentException("a spread of the block '" + name + "' is " + s + ", not above 0");
            }
        }
        if (kind == Kind.TREND_WALK && !(spread[2] < 1)) {
            throw new IllegalArgumentException("the steps of the block '" + name + "' have a correlation of " + spread[2]
                    + ", not below 1");
        }
    }

    /**
     * Coefficients of which nothing is assumed.
     *
     * @param name name of the block
     * @param from first coefficient
     * @param count number of coefficients
     * @return the block
     */
    public static PriorBlock flat(String name, int from, int count) {
        return new PriorBlock(name, from, Kind.FLAT, Role.PRIMARY, new double[count], new double[0]);
    }

    /**
     * One coefficient that is normal about a stated mean.
     *
     * @param name name of the block
     * @param from the coefficient
     * @param mean its prior mean
     * @param sd its prior standard deviation
     * @return the block
     */
    public static PriorBlock stated(String name, int from, double mean, double sd) {
        return new PriorBlock(name, from, Kind.STATED, Role.PRIMARY, new double[] {mean}, new double[] {sd});
    }

    /**
     * Coefficients about zero with a common spread that the rows help to find.
     *
     * @param name name of the block
     * @param from first coefficient
     * @param count number of coefficients
     * @param scale scale of the half-normal prior of the common standard deviation
     * @param role whether the common scale of the secondary spreads applies
     * @return the block
     */
    public static PriorBlock common(String name, int from, int count, double scale, Role role) {
        return new PriorBlock(name, from, Kind.COMMON, role, new double[count], new double[] {scale});
    }

    /**
     * Levels about zero with a common spread that the rows help to find, and one coefficient more for a level that no row has.
     *
     * @param name name of the block
     * @param from first coefficient
     * @param levels number of levels that rows have; the block has one coefficient more
     * @param scale scale of the half-normal prior of the common standard deviation
     * @param role whether the common scale of the secondary spreads applies
     * @return the block
     */
    public static PriorBlock levels(String name, int from, int levels, double scale, Role role) {
        return new PriorBlock(name, from, Kind.COMMON_AND_UNSEEN, role, new double[levels + 1], new double[] {scale});
    }

    /**
     * A random walk that ends at zero after its last coefficient, with a stated standard deviation of one step.
     *
     * @param name name of the block
     * @param from first coefficient
     * @param count number of coefficients
     * @param sd standard deviation of one step
     * @return the block
     */
    public static PriorBlock statedWalk(String name, int from, int count, double sd) {
        return new PriorBlock(name, from, Kind.STATED_WALK, Role.PRIMARY, new double[count], new double[] {sd});
    }

    /**
     * A walk that ends at zero after its last coefficient and tends to go on as it went.
     *
     * @param name name of the block
     * @param from first coefficient
     * @param count number of coefficients
     * @param sd middle of the ln-normal prior of the standard deviation of one step
     * @param logSpread standard deviation of its logarithm
     * @param correlation of one step with the next, above 0 and below 1
     * @return the block
     */
    public static PriorBlock trendWalk(String name, int from, int count, double sd, double logSpread, double correlation) {
        return new PriorBlock(name, from, Kind.TREND_WALK, Role.PRIMARY, new double[count], new double[] {sd, logSpread, correlation});
    }

    /**
     * Coefficients about zero with a common variance of which nothing is assumed: it is held where the marginal likelihood of the rows is
     * largest, which for normal errors and otherwise flat priors is its restricted maximum likelihood (REML) estimate.
     *
     * @param name name of the block
     * @param from first coefficient
     * @param count number of coefficients
     * @return the block
     */
    public static PriorBlock varianceComponent(String name, int from, int count) {
        return common(name, from, count, Double.POSITIVE_INFINITY, Role.PRIMARY);
    }

    /**
     * The number of coefficients.
     *
     * @return at least 0
     */
    public int count() {
        return mean.length;
    }

    /** Whether its coefficients are the levels of a random walk. */
    boolean walks() {
        return kind == Kind.WALK || kind == Kind.STATED_WALK || kind == Kind.TREND_WALK;
    }

    /** The correlation of neighbouring steps, where it is a walk. */
    double correlation() {
        return kind == Kind.TREND_WALK ? spread[2] : 0;
    }

    /** How unsure the logarithm of the standard deviation of a step is, where it is a walk that tends to go on as it went. */
    double logSpread() {
        return kind == Kind.TREND_WALK ? spread[1] : 0;
    }

    /** Whether the common spread of the block is found with the help of the rows. */
    boolean learned() {
        return kind == Kind.COMMON || kind == Kind.COMMON_AND_UNSEEN || kind == Kind.WALK;
    }

    /** The number of coefficients that rows can tell of. */
    int seen() {
        return kind == Kind.COMMON_AND_UNSEEN ? mean.length - 1 : mean.length;
    }

    @Override
    public double[] mean() {
        return mean.clone();
    }

    @Override
    public double[] spread() {
        return spread.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PriorBlock block && name.equals(block.name) && from == block.from && kind == block.kind
                && role == block.role && Arrays.equals(mean, block.mean) && Arrays.equals(spread, block.spread);
    }

    @Override
    public int hashCode() {
        return name.hashCode() * 31 + from;
    }

    @Override
    public String toString() {
        return name + " (" + kind + ", " + count() + " from " + from + ")";
    }

    double meanAt(int offset) {
        return mean[offset];
    }

    double spreadAt(int offset) {
        return spread[kind == Kind.STATED ? offset : 0];
    }
}
