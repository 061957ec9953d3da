package swapworth.chart;

/** How values become places along an axis. */
public enum ValueScale {
    /** Equal differences are equally far apart. */
    LINEAR,
    /** Equal ratios are equally far apart; values of zero or less are not drawn. */
    LOGARITHMIC
}
