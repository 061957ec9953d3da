package swapworth.chart;

/** The style sheet that the classes of an SVG picture refer to. */
final class ChartStyle {

    /** Hues of the groups on a light ground; index 0 is the neutral one. */
    static final String[] LIGHT = {"#4d5560", "#025290", "#c26e2d", "#63324b", "#019f75"};

    /** The same hues on a dark ground. */
    static final String[] DARK = {"#aab3be", "#b3cdff", "#eeb772", "#9d779d", "#65e1bd"};

    /** Type size of a chart in units of its own width of {@value Plot#WIDTH}, on wide and on narrow screens. */
    static final double TYPE = 10.7;
    static final double NARROW_TYPE = 17;

    static final String CSS = ".chart{--chart-text:#2a2f36;--chart-grid:#dde1e6;--chart-axis:#8a929c;" + hues(LIGHT)
            + "display:block;width:100%;max-width:36rem;height:auto;font:" + TYPE + "px system-ui,sans-serif}"
            + "@media screen and (prefers-color-scheme:dark){"
            + ".chart{--chart-text:#dfe3e8;--chart-grid:#363c44;--chart-axis:#7c8590;"
            + hues(DARK) + "}}"
            + "@media screen and (max-width:600px){.chart{font-size:" + NARROW_TYPE + "px}}"
            + ".chart text{fill:var(--chart-text,#2a2f36);stroke:none}"
            + ".chart .end{text-anchor:end}.chart .mid{text-anchor:middle}"
            + ".chart .grid{fill:none;stroke:var(--chart-grid,#dde1e6)}.chart .axis{fill:none;stroke:var(--chart-axis,#8a929c)}"
            + classes()
            + ".chart path{fill:none;stroke:currentColor}"
            + ".chart .dot{stroke-width:4.6;stroke-linecap:round;opacity:.7}.chart .mark{stroke-width:1.2;stroke-linejoin:round}"
            + ".chart .line{stroke-width:1.8;stroke-linejoin:round}.chart .dash{stroke-width:1.1;stroke-dasharray:5 3}"
            + ".chart .long{stroke-dasharray:9 3}.chart .short{stroke-dasharray:2.5 2.5}.chart .mixed{stroke-dasharray:8 2.5 2 2.5}"
            + ".chart .hair{stroke-width:.8;opacity:.45}.chart .reach{stroke-width:1.4}"
            + ".chart .core{stroke-width:6;opacity:.42}"
            + ".chart .area,.chart .faint,.chart .bar{fill:currentColor;stroke:currentColor;stroke-width:.8}"
            + "@media screen and (prefers-color-scheme:dark){.chart .dot{opacity:.9}}"
            // A tint stands out from its ground too little: its edge is of the hue itself.
            + ".chart .area{fill-opacity:.2}.chart .faint{fill-opacity:.11;stroke-opacity:.35}"
            + ".chart .bar{fill-opacity:.62}.chart .full{fill-opacity:.92}.chart .half{fill-opacity:.4}"
            + ".chart .hit{fill:transparent;stroke:none}";

    /** The ground of a picture that stands alone, where no page gives it one. */
    static final String GROUND = ":root{background:#fff}@media screen and (prefers-color-scheme:dark){:root{background:#16191d}}";

    private ChartStyle() {
    }

    private static String hues(String[] colours) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < colours.length; i++) {
            out.append("--chart-").append(i).append(':').append(colours[i]).append(';');
        }
        return out.toString();
    }

    private static String classes() {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < LIGHT.length; i++) {
            out.append(".chart .h").append(i).append("{color:var(--chart-").append(i).append(',').append(LIGHT[i]).append(")}");
        }
        return out.toString();
    }
}
