package swapworth.chart;

import java.awt.AWTError;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.table.Html;
import swapworth.table.Table;

/**
 * Puts a picture together: the painter's plot area in a box that clips it, and around it frame, grid, ticks, titles and legend as
 * lines and text of our own. Not for sharing between threads.
 */
final class Plot {

    /** Width of every picture, in its own units: so few that text can be read where the picture is as wide as a telephone. */
    static final int WIDTH = 440;

    /** Line height of text, and widest mean width of its characters, at the narrow screen's size. */
    private static final double ROW = 22;
    private static final double CHARACTER = 0.58 * ChartStyle.NARROW_TYPE;
    private static final int SWATCH = 24;
    private static final int RIGHT = 14;
    /** Names of rows take no more of the width than this, and so much more height than their lines. */
    private static final double NAMES = 0.5 * WIDTH;
    private static final int BETWEEN_ROWS = 8;
    private static final int LINE = 20;

    private final int leastHeight;
    private final Axis x;
    private final Axis y;
    private final String xLabel;
    private final String yLabel;
    private final List<Layer> layers = new ArrayList<>();
    private final List<Entry> legend = new ArrayList<>();
    private final List<Hover> hovers = new ArrayList<>();
    private final RowNames rowNames = new RowNames((int) (NAMES / CHARACTER));
    private String note = "";

    private record Entry(Layer.Form form, Ink ink, String text) {
    }

    private record Hover(double x, double y, String text) {
    }

    Plot(int leastHeight, Axis x, Axis y, String xLabel, String yLabel) {
        this.leastHeight = leastHeight;
        this.x = x;
        this.y = y;
        this.xLabel = xLabel;
        this.yLabel = yLabel;
    }

    /** Adds a layer in front of the others; one without any place that can be drawn is left out. */
    void add(Layer layer) {
        for (double place : layer.y()) {
            if (!Double.isNaN(place)) {
                layers.add(layer);
                return;
            }
        }
    }

    void explain(Layer.Form form, Ink ink, String text) {
        legend.add(new Entry(form, ink, text));
    }

    /** A text that shows when a pointer rests at a place. */
    void hover(double placeX, double placeY, String text) {
        hovers.add(new Hover(placeX, placeY, text));
    }

    /** Names the next row, from the top, beside the plot. */
    void nameRow(String name) {
        rowNames.add(name, "");
    }

    /** The same with a figure behind the name. */
    void nameRow(String name, String figure) {
        rowNames.add(name, figure);
    }

    /** A sentence under the picture. */
    void note(String text) {
        note = text;
    }

    /** The picture of a chart without data. */
    static String empty(String alt, String why) {
        StringBuilder out = begin(alt, 120);
        out.append("<path class=\"axis\" d=\"m1 1h").append(WIDTH - 2).append("v118h-").append(WIDTH - 2).append("z\"/>");
        return text(out, WIDTH / 2.0, 65, "mid", fitted(why, (int) (WIDTH / CHARACTER))).append("</svg>").toString();
    }

    /**
     * The chart. On a machine whose Java cannot paint, numbers and words still stand: what is caught are the errors by which
     * Java's graphics say that a library or a font of the system is missing, none of which is an exception.
     */
    Chart chart(String title, String alt, Table data, Painter painter) {
        try {
            return new Chart(title, alt, svg(alt, painter), data, Optional.empty());
        } catch (LinkageError | InternalError | AWTError missing) {
            return withoutPicture(title, alt, data, missing);
        } catch (Error missing) {
            // The font engine throws the bare class.
            if (missing.getClass() == Error.class) {
                return withoutPicture(title, alt, data, missing);
            }
            throw missing;
        }
    }

    private static Chart withoutPicture(String title, String alt, Table data, Error missing) {
        return new Chart(title, alt, "", data, Optional.of("no picture: this machine has no font, or lacks a graphics library of"
                + " Java; on Debian install fontconfig and fonts-dejavu-core (" + missing + ")"));
    }

    private String svg(String alt, Painter painter) {
        double left = left();
        int width = (int) (WIDTH - left - RIGHT);
        int plotHeight = plotHeight();
        StringBuilder key = new StringBuilder();
        double top = legend(key);
        if (!yLabel.isEmpty()) {
            List<String> yLines = RowNames.broken(yLabel, (int) (WIDTH / CHARACTER));
            for (int l = 0; l < yLines.size(); l++) {
                text(key, 0, top + 16 + l * LINE, "", yLines.get(l));
            }
            top += ROW + 4 + (yLines.size() - 1) * LINE;
        }
        List<String> xLines = xLabel.isEmpty() ? List.of() : RowNames.broken(xLabel, (int) ((left + width) / CHARACTER));
        List<String> noteLines = note.isEmpty() ? List.of() : RowNames.broken(note, (int) (WIDTH / CHARACTER));
        double below = ROW + (xLines.isEmpty() ? 0 : ROW + (xLines.size() - 1) * LINE);
        double height = top + plotHeight + below + noteLines.size() * LINE + 6;
        StringBuilder out = begin(alt, height).append(key);
        grid(out, left, top, width, plotHeight);
        painted(out, left, top, width, plotHeight, painter);
        ticks(out, left, top + plotHeight, width);
        double bottom = top + plotHeight + 19;
        for (int l = 0; l < xLines.size(); l++) {
            text(out, left + width, bottom + ROW + l * LINE, "end", xLines.get(l));
        }
        for (int l = 0; l < noteLines.size(); l++) {
            text(out, 0, bottom + below + l * LINE, "", noteLines.get(l));
        }
        return out.append("</svg>").toString();
    }

    /** What the painter makes of the layers, and the texts that a pointer finds. */
    private void painted(StringBuilder out, double left, double top, int width, int plotHeight, Painter painter) {
        out.append("<svg x=\"").append(shorter(left)).append("\" y=\"").append(shorter(top)).append("\" width=\"").append(width)
                .append("\" height=\"").append(plotHeight).append("\">").append(painter.paint(layers, x, y, width, plotHeight));
        for (Hover hover : hovers) {
            out.append("<circle class=\"hit\" r=\"6\" cx=\"").append(shorter(x.fraction(hover.x) * width)).append("\" cy=\"")
                    .append(shorter((1 - y.fraction(hover.y)) * plotHeight)).append("\"><title>").append(Html.escape(hover.text))
                    .append("</title></circle>");
        }
        out.append("</svg>");
    }

    /** The words of the horizontal axis. */
    private void ticks(StringBuilder out, double left, double bottom, int width) {
        double free = 0;
        for (int i = 0; i < x.ticks().length; i++) {
            double place = left + x.fraction(x.ticks()[i]) * width;
            double half = x.labels().get(i).length() * CHARACTER / 2;
            // A label that would stick out at the right is written toward the left; one that would run into the one before is left out.
            boolean sticksOut = place + half > WIDTH;
            if ((sticksOut ? WIDTH - 2 * half : place - half) < free) {
                continue;
            }
            text(out, sticksOut ? WIDTH : place, bottom + 19, sticksOut ? "end" : "mid", x.labels().get(i));
            free = (sticksOut ? WIDTH : place + half) + CHARACTER;
        }
    }

    private double left() {
        int longest = rowNames.longest();
        for (String label : y.labels()) {
            longest = Math.max(longest, label.length());
        }
        return Math.min(NAMES, longest * CHARACTER) + 10;
    }

    /** As high as was asked for, or as the lines of the names of rows take. */
    private int plotHeight() {
        return Math.max(leastHeight, rowNames.rows().size() * (rowNames.mostLines() * LINE + BETWEEN_ROWS));
    }

    /** Frame, grid lines and the words of the vertical axis. */
    private void grid(StringBuilder out, double left, double top, int width, int plotHeight) {
        PathData lines = new PathData();
        for (double tick : y.ticks()) {
            double place = top + (1 - y.fraction(tick)) * plotHeight;
            lines.move(left, place);
            lines.line(left + width, place);
        }
        for (double tick : x.ticks()) {
            double place = left + x.fraction(tick) * width;
            lines.move(place, top);
            lines.line(place, top + plotHeight);
        }
        PathData frame = new PathData();
        frame.move(left, top);
        frame.line(left, top + plotHeight);
        frame.line(left + width, top + plotHeight);
        out.append("<path class=\"grid\" d=\"").append(lines).append("\"/>");
        out.append("<path class=\"axis\" d=\"").append(frame).append("\"/>");
        for (int i = 0; i < y.ticks().length; i++) {
            text(out, left - 7, top + (1 - y.fraction(y.ticks()[i])) * plotHeight + 5, "end", y.labels().get(i));
        }
        List<List<String>> rows = rowNames.rows();
        for (int i = 0; i < rows.size(); i++) {
            List<String> words = rows.get(i);
            double middle = top + (i + 0.5) * plotHeight / rows.size() + 5;
            for (int l = 0; l < words.size(); l++) {
                text(out, left - 7, middle + (l - (words.size() - 1) / 2.0) * LINE, "end", words.get(l));
            }
        }
    }

    /** Writes the legend in columns, as many lines as it takes, and returns how high it is. */
    private double legend(StringBuilder out) {
        if (legend.isEmpty()) {
            return 0;
        }
        double wide = 0;
        for (Entry entry : legend) {
            wide = Math.max(wide, SWATCH + 6 + entry.text.length() * CHARACTER + 14);
        }
        int most = (int) ((WIDTH - SWATCH - 6) / CHARACTER);
        int columns = (int) Math.max(1, Math.min(legend.size(), WIDTH / wide));
        double top = 0;
        double next = 0;
        for (int i = 0; i < legend.size(); i++) {
            double left = i % columns * wide;
            if (i % columns == 0) {
                top = next;
            }
            // A text that takes more than a line stands alone in its row.
            List<String> words = RowNames.broken(legend.get(i).text, most);
            swatch(out, legend.get(i), left, top + 11);
            for (int l = 0; l < words.size(); l++) {
                text(out, left + SWATCH + 6, top + 16 + l * LINE, "", words.get(l));
            }
            next = top + ROW + (words.size() - 1) * LINE;
        }
        return next + 6;
    }

    private static void swatch(StringBuilder out, Entry entry, double left, double middle) {
        PathData d = new PathData();
        double centre = left + SWATCH / 2.0;
        switch (entry.form) {
            case POLYGON -> {
                d.move(left, middle - 6);
                d.line(left + SWATCH, middle - 6);
                d.line(left + SWATCH, middle + 6);
                d.line(left, middle + 6);
                d.close();
            }
            case LINE -> {
                d.move(left, middle);
                d.line(left + SWATCH, middle);
            }
            case DOT -> {
                d.move(centre, middle);
                d.line(centre, middle);
            }
            default -> {
                double[] corners = entry.form.corners();
                d.move(centre + corners[0], middle + corners[1]);
                for (int i = 2; i < corners.length; i += 2) {
                    d.line(centre + corners[i], middle + corners[i + 1]);
                }
                d.close();
            }
        }
        out.append("<path class=\"").append(entry.ink.classes()).append("\" d=\"").append(d).append("\"/>");
    }

    /** The text, cut off where it would be longer than this many characters. */
    private static String fitted(String text, int most) {
        if (text.length() <= most) {
            return text;
        }
        int end = Character.isHighSurrogate(text.charAt(most - 2)) ? most - 2 : most - 1;
        return text.substring(0, end) + "…";
    }

    private static StringBuilder begin(String alt, double height) {
        return new StringBuilder(16_384).append("<svg class=\"chart\" viewBox=\"0 0 ").append(WIDTH).append(' ')
                .append(shorter(height)).append("\" role=\"img\" aria-label=\"").append(Html.escape(alt)).append("\">");
    }

    private static StringBuilder text(StringBuilder out, double x, double y, String classes, String text) {
        out.append("<text x=\"").append(shorter(x)).append("\" y=\"").append(shorter(y));
        if (!classes.isEmpty()) {
            out.append("\" class=\"").append(classes);
        }
        return out.append("\">").append(Html.escape(text)).append("</text>");
    }

    /** A coordinate with at most one decimal. */
    private static String shorter(double place) {
        long tenths = Math.round(place * 10);
        return tenths % 10 == 0 ? Long.toString(tenths / 10) : Double.toString(tenths / 10.0);
    }
}
