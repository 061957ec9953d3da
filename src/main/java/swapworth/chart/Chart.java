package swapworth.chart;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import swapworth.table.Html;
import swapworth.table.Table;

/**
 * A picture, what it says in words, and the numbers behind it, so that nothing depends on seeing it.
 *
 * @param title what the chart shows; it stands above the picture, not inside it
 * @param alt the picture in words: what is drawn, how much of it, from where to where
 * @param svg an {@code svg} element for use inside an HTML page that holds {@link #STYLE} once; empty if there is trouble
 * @param data every number that is drawn, as a table
 * @param trouble why there is no picture, as a sentence for the reader; empty if there is one
 */
public record Chart(String title, String alt, String svg, Table data, Optional<String> trouble) {

    /**
     * The style sheet of every chart: four hues told apart by all common kinds of colour vision, for light and dark screens and
     * for paper. A page states it once.
     */
    public static final String STYLE = ChartStyle.CSS;

    /** Checks that nothing is missing. */
    public Chart {
        requireNonNull(title, "title");
        requireNonNull(alt, "alt");
        requireNonNull(svg, "svg");
        requireNonNull(data, "data");
        requireNonNull(trouble, "trouble");
    }

    /**
     * The picture as a document of its own, with title and style sheet inside, for a file or a notebook cell.
     *
     * @return an SVG document; empty if there is trouble
     */
    public String document() {
        if (svg.isEmpty()) {
            return "";
        }
        int end = svg.indexOf('>');
        return "<svg xmlns=\"http://www.w3.org/2000/svg\"" + svg.substring("<svg".length(), end) + "><title>" + Html.escape(title)
                + "</title><style>" + ChartStyle.GROUND + STYLE + "</style>" + svg.substring(end + 1);
    }
}
