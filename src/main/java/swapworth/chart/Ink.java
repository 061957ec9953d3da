package swapworth.chart;

/**
 * How a layer of a plot is drawn: a hue and a manner, both classes of the style sheet.
 *
 * @param hue 0 for neutral, 1 to 4 for groups
 * @param manner the manner of drawing
 */
record Ink(int hue, Manner manner) {

    /** Hues that groups take in turn. */
    static final int HUES = ChartStyle.LIGHT.length - 1;

    /** Ways to draw a path. */
    enum Manner {
        /** Round dots, one a zero-length stroke. */
        DOT("dot"),
        /** The outline of a small shape. */
        MARK("mark"),
        /** A main line. */
        LINE("line"),
        /** A main line in long strokes. */
        LONG("line long"),
        /** A main line in short strokes. */
        SHORT("line short"),
        /** A main line in long and short strokes. */
        MIXED("line mixed"),
        /** A line for reference. */
        DASH("dash"),
        /** A thin bar behind many points. */
        HAIR("hair"),
        /** The wide range of a row. */
        REACH("reach"),
        /** The narrow range of a row. */
        CORE("core"),
        /** A band. */
        AREA("area"),
        /** A wider band behind a band. */
        FAINT("faint"),
        /** A filled bar. */
        BAR("bar"),
        /** A filled bar that is dark in grey too. */
        FULL("bar full"),
        /** A filled bar that is light in grey too. */
        HALF("bar half");

        private final String css;

        Manner(String css) {
            this.css = css;
        }
    }

    /** The classes of the style sheet. */
    String classes() {
        return "h" + hue + ' ' + manner.css;
    }
}
