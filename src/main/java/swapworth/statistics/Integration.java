package swapworth.statistics;

/** What becomes of the three hyperparameters: error scale, its growth, and the common scale of the secondary spreads. */
public enum Integration {
    /** They are averaged over, on a central composite design of points about their mode. */
    POINTS,
    /** They are held at their mode, which is enough where rows are many. */
    MODE
}
