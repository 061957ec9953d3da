package swapworth.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.Locale;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.XYSeries.XYSeriesRenderStyle;
import org.knowm.xchart.style.Styler.LegendPosition;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.lines.SeriesLines;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;

/**
 * Lets XChart paint the plot area. Its titles, legend, ticks and labels are turned off: XChart fills text as outlines of glyphs,
 * for which it needs a font of the machine and the slow start of Java's font engine, and which nobody can search or read aloud.
 * {@link Plot} writes them as text.
 */
final class XChartPainter implements Painter {

    @Override
    public String paint(List<Layer> layers, Axis x, Axis y, int width, int height) {
        XYChart chart = new XYChart(width, height);
        XYStyler styler = chart.getStyler();
        styler.setChartTitleVisible(false).setLegendVisible(false).setLegendPosition(LegendPosition.InsideNE);
        styler.setPlotBorderVisible(false).setPlotContentSize(1).setChartPadding(0).setLocale(Locale.ROOT);
        styler.setChartBackgroundColor(SvgGraphics.NOTHING).setPlotBackgroundColor(SvgGraphics.NOTHING);
        styler.setAxisTicksVisible(false).setAxisTitlesVisible(false).setPlotGridLinesVisible(false)
                .setPlotTicksMarksVisible(false).setPlotMargin(0);
        // No room for any tick: so XChart measures no label, and asks for no font.
        styler.setXAxisTickMarkSpacingHint(Integer.MAX_VALUE).setYAxisTickMarkSpacingHint(Integer.MAX_VALUE);
        // Nor does it load the number formats of a language.
        styler.setXAxisTickLabelsFormattingFunction(place -> "").setYAxisTickLabelsFormattingFunction(place -> "");
        styler.setXAxisMin(x.min()).setXAxisMax(x.max()).setYAxisMin(y.min()).setYAxisMax(y.max());
        for (int i = 0; i < layers.size(); i++) {
            add(chart, Integer.toString(i), layers.get(i));
        }
        SvgGraphics graphics = new SvgGraphics();
        chart.paint(graphics, width, height);
        return graphics.elements();
    }

    private static void add(XYChart chart, String name, Layer layer) {
        double[] x = layer.x().clone();
        double[] y = layer.y().clone();
        for (int i = 0; i < x.length; i++) {
            if (Double.isNaN(x[i])) {
                // XChart lifts the pen at an unknown height, not at an unknown side.
                x[i] = 0;
                y[i] = Double.NaN;
            }
        }
        XYSeries series = chart.addSeries(name, x, y);
        Color colour = new SvgGraphics.Classes(layer.ink().classes());
        series.setMarkerColor(colour).setMarker(SeriesMarkers.NONE);
        series.setLineColor(colour).setLineStyle(SeriesLines.NONE);
        series.setFillColor(colour);
        switch (layer.form()) {
            case POLYGON -> series.setXYSeriesRenderStyle(XYSeriesRenderStyle.PolygonArea);
            case LINE -> {
                series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Line);
                series.setLineStyle(SeriesLines.SOLID);
            }
            case DOT, SQUARE, TRIANGLE, DIAMOND -> {
                series.setXYSeriesRenderStyle(XYSeriesRenderStyle.Scatter);
                series.setMarker(new ShapeMarker(layer.form()));
            }
        }
    }

    /** The shapes of the groups; all but the dot are open, so that what lies behind stays visible. */
    private static final class ShapeMarker extends Marker {
        private final Layer.Form form;

        ShapeMarker(Layer.Form form) {
            this.form = form;
        }

        @Override
        public void paint(Graphics2D g, double x, double y, int size) {
            double[] corners = form.corners();
            if (corners.length == 0) {
                g.fill(new Ellipse2D.Double(x - 3, y - 3, 6, 6));
                return;
            }
            Path2D path = new Path2D.Double();
            path.moveTo(x + corners[0], y + corners[1]);
            for (int i = 2; i < corners.length; i += 2) {
                path.lineTo(x + corners[i], y + corners[i + 1]);
            }
            path.closePath();
            g.draw(path);
        }
    }
}
